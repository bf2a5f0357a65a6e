import { figure, inGroup, working, type WorkingColumn } from './column';
import { straightMinutes } from '../../takeoff/ownCost';
import { FEED, overRings } from './formulas';
import { piecesOf } from './shared';

const SMALLEST_RADIUS = 'MIN({insideRadius},{haunchInsideRadius})';

export const MACHINE_COLUMNS: readonly WorkingColumn[] = inGroup('Machine', [
  working('cutsPerInch', 'Cuts per inch, center', 'cuts', {
    value: (row) => row.own?.cutsPerInch,
    formula: `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED})`,
  }),
  figure('cuts', 'Cuts per inch, outside edge', 'cuts', {
    value: (row) => row.own?.cutsOutside,
    formula:
      'IF({radius}="",{cutsPerInch},' +
      `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED},${SMALLEST_RADIUS}+{face}/2,${SMALLEST_RADIUS}+{face}))`,
  }),
  figure('grade', 'Grade met (AWS)', 'text', {
    value: (row) => row.own?.grade,
    formula: 'IF({cuts}>=20,"Custom",IF({cuts}>=15,"Economy","below Economy"))',
  }),
  working('passes', 'Passes', 'count', {
    value: (row) => row.own?.passes,
    formula: 'ROUNDUP(Shop_profile_depth/Shop_deepest_cut-0.000000001,0)',
  }),
  working('straightMinutes', 'Run minutes, straight', 'minutes', {
    value: (row, { standards }) => row.own && straightMinutes(row.own, piecesOf(row), standards),
    formula:
      'IF({straightPieces}=0,0,' +
      `ARCH.RUNTIME({counted}*{straightLength}/Shop_per_inch,${FEED},{passes},{straightPieces}*Shop_handling))`,
  }),
  figure('run minutes', 'Run minutes', 'minutes', {
    value: (row) => row.ownCost?.runMinutes,
    formula: `${overRings('{pieces}*{pieceRun}', '{haunchPieces}*{haunchPieceRun}')}+{straightMinutes}`,
  }),
  working('knife', 'Knife', 'text', {
    width: 24,
    value: (row) => row.own?.knife,
    formula: 'ROUND({face},3)&" x "&ROUND({thickness},3)&" "&{profile}',
  }),
]);
