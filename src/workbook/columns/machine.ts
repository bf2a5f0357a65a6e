import { figure, inGroup, working, type TakeoffColumn } from './column';
import { FEED, overRings } from './formulas';

const SMALLEST_RADIUS = 'MIN({insideRadius},{haunchInsideRadius})';

function runTime(inside: string, angle: string): string {
  return `ARCH.RUNTIME(RADIANS(${angle})*(${inside}+{face}/2)/Shop_per_inch,${FEED},{passes},Shop_handling)`;
}

export const MACHINE_COLUMNS: readonly TakeoffColumn[] = inGroup('Machine', [
  working('cutsPerInch', 'Cuts per inch, center', 'cuts', {
    value: (row) => row.own?.cutsPerInch,
    formula: `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED})`,
  }),
  figure('cutsOutside', 'Cuts per inch, outside edge', 'cuts', {
    value: (row) => row.own?.cutsOutside,
    formula:
      'IF({radius}="",{cutsPerInch},' +
      `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED},${SMALLEST_RADIUS}+{face}/2,${SMALLEST_RADIUS}+{face}))`,
  }),
  figure('grade', 'Grade met (AWS)', 'text', {
    value: (row) => row.own?.grade,
    formula: 'IF({cutsOutside}>=20,"Custom",IF({cutsOutside}>=15,"Economy","below Economy"))',
  }),
  working('passes', 'Passes', 'count', {
    value: (row) => row.own?.passes,
    formula: 'ROUNDUP(Shop_profile_depth/Shop_deepest_cut-0.000000001,0)',
  }),
  figure('runMinutes', 'Run minutes', 'minutes', {
    value: (row) => row.cost?.runMinutes,
    formula:
      overRings(
        `{run}*${runTime('{insideRadius}', '{blankAngle}')}`,
        `{haunchRun}*${runTime('{haunchInsideRadius}', '{haunchBlankAngle}')}`,
      ) +
      '+IF({straightPieces}=0,0,' +
      `ARCH.RUNTIME({counted}*{straightLength}/Shop_per_inch,${FEED},{passes},{straightPieces}*Shop_handling))`,
    total: true,
  }),
  working('knife', 'Knife', 'text', {
    width: 24,
    value: (row) => row.own?.knife,
    formula: 'ROUND({face},3)&" x "&ROUND({thickness},3)&" "&{profile}',
  }),
]);
