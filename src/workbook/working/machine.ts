import { figure, inGroup, working, type WorkingColumn } from './column';
import { straightLabor } from '../../takeoff/ownCost';
import { cutsOfStraight } from '../../takeoff/ownFigures';
import { FEED, STRAIGHT_FEED } from './formulas';
import { ofKnife } from './onHand';
import { RUN_MINUTES, SMALLEST_RADIUS } from './ringGroups';
import { piecesOf } from './shared';

export const MACHINE_COLUMNS: readonly WorkingColumn[] = inGroup('Machine', [
  working('cutsPerInch', 'Cuts per inch, center', 'cuts', {
    value: (row) => row.own?.cutsPerInch,
    formula: `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED})`,
  }),
  working('straightCuts', 'Cuts per inch, straight', 'cuts', {
    value: (row, { standards }) => {
      const cuts = cutsOfStraight(standards);
      return row.own && cuts.ok ? cuts.value : null;
    },
    formula: `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${STRAIGHT_FEED})`,
  }),
  figure('cuts', 'Cuts per inch, outside edge', 'cuts', {
    value: (row) => row.own?.cutsOutside,
    formula:
      'IF({radius}="",{straightCuts},' +
      `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED},${SMALLEST_RADIUS}+{face}/2,${SMALLEST_RADIUS}+{face}))`,
  }),
  working('cutsFewest', 'Fewest cuts per inch', 'cuts', {
    value: (row) => row.own?.cutsFewest,
    formula: 'IF({straightPieces}>0,MIN({cuts},{straightCuts}),{cuts})',
  }),
  figure('grade', 'Grade met (AWS)', 'text', {
    value: (row) => row.own?.grade,
    formula: 'IF({cutsFewest}>=20,"Custom",IF({cutsFewest}>=15,"Economy","below Economy"))',
  }),
  working('passes', 'Passes', 'count', {
    value: (row) => row.own?.passes,
    formula: ofKnife('passes', `ROUNDUP(${ofKnife('depth', 'Shop_profile_depth')}/Shop_deepest_cut-0.000000001,0)`),
  }),
  working('straightMinutes', 'Run minutes, straight', 'minutes', {
    value: (row, { standards }) => row.own && straightLabor(row.own, piecesOf(row), standards).running,
    formula:
      'IF({straightPieces}=0,0,' +
      `ARCH.RUNTIME({counted}*{straightLength}/Shop_per_inch,${STRAIGHT_FEED},{passes},{straightPieces}*Shop_handling))`,
  }),
  figure('run minutes', 'Run minutes', 'minutes', {
    value: (row) => row.ownCost?.runMinutes,
    formula: RUN_MINUTES,
  }),
  working('knife', 'Knife', 'text', {
    width: 24,
    value: (row) => row.own?.knife,
    formula: 'ROUND({face},3)&" x "&ROUND({thickness},3)&" "&{profile}',
  }),
]);
