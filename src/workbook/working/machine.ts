import { inGroup, plain, working, type WorkingColumns } from './column';
import { straightLabor } from '../../takeoff/ownCost';
import { cutsOfStraight } from '../../takeoff/ownFigures';
import { FEED, STRAIGHT_FEED } from './formulas';
import { its, type MachineStep } from './keys';
import { ofKnife } from './onHand';
import { RUN_MINUTES, SMALLEST_RADIUS } from './ringGroups';
import { piecesOf } from './shared';

export const MACHINE_COLUMNS: WorkingColumns<
  MachineStep | 'center cuts' | 'cuts' | 'grade' | 'passes' | 'run minutes' | 'knife'
> = inGroup('Machine', {
  'center cuts': plain('center cuts', `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED})`),
  straightCuts: working('Cuts per inch, straight', 'cuts', {
    value: (row, { standards }) => {
      const cuts = cutsOfStraight(standards);
      return row.own && cuts.ok ? cuts.value : null;
    },
    formula: `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${STRAIGHT_FEED})`,
  }),
  cuts: plain(
    'cuts',
    `IF(${its.radius}="",${its.straightCuts},` +
      `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED},${SMALLEST_RADIUS}+${its.face}/2,${SMALLEST_RADIUS}+${its.face}))`,
  ),
  cutsFewest: working('Fewest cuts per inch', 'cuts', {
    value: (row) => row.own?.cutsFewest,
    formula: `IF(${its.straightPieces}>0,MIN(${its.cuts},${its.straightCuts}),${its.cuts})`,
  }),
  grade: plain('grade', `IF(${its.cutsFewest}>=20,"Custom",IF(${its.cutsFewest}>=15,"Economy","below Economy"))`),
  passes: plain(
    'passes',
    ofKnife('passes', `ROUNDUP(${ofKnife('depth', 'Shop_profile_depth')}/Shop_deepest_cut-0.000000001,0)`),
  ),
  straightMinutes: working('Run minutes, straight', 'minutes', {
    value: (row, { standards }) => row.own && straightLabor(row.own, piecesOf(row), standards).running,
    formula:
      `IF(${its.straightPieces}=0,0,` +
      `ARCH.RUNTIME(${its.counted}*${its.straightLength}/Shop_per_inch,${STRAIGHT_FEED},${its.passes},${its.straightPieces}*Shop_handling))`,
  }),
  'run minutes': plain('run minutes', RUN_MINUTES),
  knife: plain('knife', `ROUND(${its.face},3)&" x "&ROUND(${its.thickness},3)&" "&${its.profile}`, 24),
});
