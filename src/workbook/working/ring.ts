import type { Blank } from '../../takeoff/blankChoice';
import type { RingKind } from '../../takeoff/curve';
import type { RingPlan } from '../../takeoff/ownFigures';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { figureNamed, figureOf } from '../../takeoff/figures';
import { roundTo } from '../../rounding';
import type { Unit } from '../../unit';
import { quote } from '../quote';
import { lengthTextFormula } from '../lengthFormula';
import type { ColumnMeasure } from '../format';
import { figure, inGroup, working, type WorkingColumn } from './column';
import type { GuideSet } from '../../takeoff/guideSets';
import { benchMinutes } from '../../takeoff/labor';
import { ringCost } from '../../takeoff/ownCost';
import { boardFeet, FEED, narrowestBoard, priceAt } from './formulas';
import { piecesOf, type WorkingTakeoff } from './shared';
import { arcPieces, type ArcPieces } from '../../takeoff/arcPieces';
import {
  blankAngleFormula,
  CROWN,
  grainLimit,
  HAUNCH,
  inRing,
  isShort,
  MORE_ARCS,
  ownAngleFormula,
  partsFormula,
  piecesThrough,
  RING_GROUPS,
  type RingGroup,
} from './ringGroups';

function ringColumns(group: RingGroup): WorkingColumn[] {
  const at = inRing(group);
  const heading = (text: string) =>
    group.headingStart === '' ? text : group.headingStart + text.charAt(0).toLowerCase() + text.slice(1);
  const written = (guarded: string) => (row: OpeningTakeoff) => (group.written(row) ? guarded : null);
  const usual = group === CROWN ? figure : working;

  /** A figure of the curve: blank unless the opening has such a ring. */
  const ofRing = (
    name: string,
    title: string,
    measure: ColumnMeasure,
    value: (ring: RingKind, made: ArcPieces) => number,
    text: string,
    make = usual,
  ) =>
    make(group.key(name), heading(title), measure, {
      value: (row, { standards }) => {
        const ring = group.ring(row);
        return ring && value(ring, arcPieces(ring, row.known.face!, standards));
      },
      formula: written(`IF(${at('radius')}="","",${text})`),
    });
  /** A figure of the blank: blank, too, while wood or price still lack something. */
  const column = (
    name: string,
    title: string,
    measure: ColumnMeasure,
    value: (plan: RingPlan, row: OpeningTakeoff, takeoff: WorkingTakeoff) => number | string | undefined,
    text: string | ((takeoff: WorkingTakeoff) => string),
    make = usual,
  ) =>
    make(group.key(name), heading(title), measure, {
      width: measure === 'text' ? 28 : 11,
      value: (row, takeoff) => {
        const plan = group.plan(row);
        return plan && value(plan, row, takeoff);
      },
      formula: (row, takeoff) => {
        if (!group.written(row)) return null;
        return `IF(OR({missing}<>"",${at('radius')}=""),"",${typeof text === 'string' ? text : text(takeoff)})`;
      },
    });
  const blank = (count: string) => `${at('insideRadius')},{face},${at('blankAngle')},${count},Shop_margin`;
  const chosen = (of: (blank: Blank) => number) => (plan: RingPlan) => of(plan.blank.chosen);

  /** Wood and joints of one ring with the fewest segments, one more or two more. */
  const weighed = (more: 0 | 1 | 2, title: string) => {
    const count = more === 0 ? at('segmentsFewest') : `(${at('segmentsFewest')}+${more})`;
    const board = narrowestBoard(`ARCH.BLANKWIDTH(${blank(count)})`);
    const wood = `${boardFeet(board, `ARCH.BLANKLENGTH(${blank(count)})`, count)}*${priceAt(board)}*(1+Shop_waste)`;
    const joints = `(${count}-IF(${at('blankAngle')}=360,0,1))*Shop_joint_minutes/60*Shop_bench_rate`;
    const value = (plan: RingPlan) => plan.blank.weighed[more].cost;
    return column(`weigh${more}`, `Wood and joints, ${title}`, 'money', value, `${wood}+${joints}`, working);
  };
  const [fewest, oneMore, twoMore] = [at('weigh0'), at('weigh1'), at('weigh2')];
  const cheapest = `IF(${fewest}<=MIN(${oneMore},${twoMore}),0,IF(${oneMore}<=${twoMore},1,2))`;

  /**
   * A figure of the guide set. Which near radii share one is worked out when the workbook is written: a constant, for as long as radius
   * and tolerance are what they were then.
   */
  const ofSet = (
    name: string,
    title: string,
    measure: ColumnMeasure,
    value: (set: GuideSet) => string | number,
    own: string,
  ): WorkingColumn => {
    const setOf = (plan: RingPlan, row: OpeningTakeoff, { sets }: WorkingTakeoff) => sets(row.inputs!, plan);
    const alone = column(name, title, measure, (plan, row, takeoff) => value(setOf(plan, row, takeoff)), own, working);
    return {
      ...alone,
      formula: (row, takeoff) => {
        const plan = group.plan(row);
        const set = plan && setOf(plan, row, takeoff);
        if (!plan || !set || set.name === plan.guide) return alone.formula(row, takeoff);
        const then = `AND(ROUND(${at('insideRadius')},3)=${roundTo(3, plan.ring.inside)},Shop_guide_tolerance=${takeoff.standards.guideTolerance})`;
        const shared = value(set);
        const constant = typeof shared === 'number' ? String(shared) : quote(shared);
        return `IF(OR({missing}<>"",${at('radius')}=""),"",IF(${then},${constant},${own}))`;
      },
    };
  };

  return inGroup(group.name, [
    {
      ...ofRing('radius', 'Radius', 'length', (ring) => ring.radius, ''),
      formula: written(`IF({missingShape}<>"","",${group.radius})`),
    },
    ofRing('insideRadius', 'Inside radius', 'length', (ring) => ring.inside, `${at('radius')}+{reveal}`),
    ofRing(
      'outsideRadius',
      'Outside radius',
      'length',
      (ring) => ring.outside,
      `${at('insideRadius')}+{face}`,
      working,
    ),
    ofRing('angle', 'Angle', 'degrees', (ring) => ring.angle, group.angle, working),
    ofRing('finishedAngle', 'Finished angle', 'degrees', (ring) => ring.finishedAngle, group.finished, working),
    ofRing('parts', 'Pieces of each arc', 'count', (_, made) => made.parts, partsFormula(at), working),
    ofRing('ownAngle', 'Angle of its own blank', 'degrees', (_, made) => made.ownAngle, ownAngleFormula(at), working),
    ofRing('blankAngle', 'Blank angle', 'degrees', (_, made) => made.blankAngle, blankAngleFormula(at), working),
    ...inGroup('Segments weighed', [
      column(
        'segmentsFewest',
        'Fewest segments',
        'count',
        (plan) => plan.blank.weighed[0].segments,
        `ARCH.SEGMENTS(${at('insideRadius')},{face},${at('blankAngle')},{widest},Shop_margin,${grainLimit(at)})`,
        working,
      ),
      weighed(0, 'fewest joints'),
      weighed(1, 'one more segment'),
      weighed(2, 'two more segments'),
    ]),
    column(
      'segments',
      'Segments',
      'count',
      chosen((of) => of.segments),
      `IF({segmentsWanted}="",${at('segmentsFewest')}+${cheapest},{segmentsWanted})`,
    ),
    column(
      'blankWidth',
      'Blank width',
      'length',
      chosen((of) => of.width),
      `ARCH.BLANKWIDTH(${blank(at('segments'))})`,
      working,
    ),
    column(
      'boardWidth',
      'Board width',
      'length',
      chosen((of) => of.boardWidth),
      narrowestBoard(at('blankWidth')),
      working,
    ),
    column(
      'blankLength',
      'Blank length',
      'length',
      chosen((of) => of.length),
      `ARCH.BLANKLENGTH(${blank(at('segments'))})`,
      working,
    ),
    ofSet('guide', 'Guide set', 'text', ({ name }) => name, `{knife}&", R "&ROUND(${at('insideRadius')},3)`),
    ofSet('guideRadius', 'Radius of the guide set', 'length', ({ radius }) => radius, at('insideRadius')),
    column(
      'pieces',
      'Pieces',
      'count',
      (plan, row) => piecesOf(row) * plan.ring.count,
      `{counted}*${group.count}*${at('parts')}`,
      working,
    ),
    column(
      'setupPieces',
      'Pieces of the guide set',
      'count',
      (plan, row, { sets, setups }) => setups.get(sets(row.inputs!, plan).name.toLowerCase()),
      ({ ringKinds }) => piecesThrough(at('guide'), ringKinds),
    ),
    column(
      'guidePart',
      'Part of the guide set',
      'number',
      (plan, row, { sets, setups }) =>
        (piecesOf(row) * plan.ring.count) / (setups.get(sets(row.inputs!, plan).name.toLowerCase()) ?? 1),
      `IF({counted}=0,0,${at('pieces')}/${at('setupPieces')})`,
    ),
    column(
      'pieceRun',
      'Run minutes, one piece',
      'minutes',
      (plan, row, { standards }) => ringCost(plan, 1, row.own?.passes ?? 1, standards).minutes.running,
      `ARCH.RUNTIME(RADIANS(${at('blankAngle')})*(${at('insideRadius')}+{face}/2)/Shop_per_inch,${FEED},{passes},Shop_handling)`,
    ),
    column(
      'pieceBench',
      'Bench minutes, one piece',
      'minutes',
      (plan, row, { standards }) => benchMinutes(ringCost(plan, 1, row.own?.passes ?? 1, standards).minutes),
      `(${at('segments')}-IF(${at('blankAngle')}=360,0,1))*Shop_joint_minutes` +
        `+RADIANS(${at('blankAngle')})*${at('outsideRadius')}*(Shop_saw_minutes+Shop_plane_minutes+Shop_trim_minutes+Shop_sand_minutes)/Shop_long_unit` +
        `+IF(${at('blankAngle')}=360,0,2)*Shop_end_cut_minutes+Shop_pack_minutes` +
        `+IF(AND(Shop_short_pieces="carrier",${isShort(at)}),Shop_carrier_minutes,0)`,
    ),
    column(
      'pieceFeet',
      'Board feet, one piece',
      'boardFeet',
      (plan, row, { standards }) => ringCost(plan, 1, row.own?.passes ?? 1, standards).boardFeet,
      boardFeet(at('boardWidth'), at('blankLength'), at('segments')),
    ),
  ]);
}

const ringText = (group: RingGroup, unit: Unit) => {
  const at = inRing(group);
  const size = `${at('segments')}&" of "&${lengthTextFormula(at('blankWidth'), unit)}&" x "&${lengthTextFormula(at('blankLength'), unit)}`;
  const count = `${group.count}*${at('parts')}`;
  return `IF(${count}>1,${count}&" × ","")&${size}`;
};

export const BLANK_TEXT: WorkingColumn = figure('blank', 'Blank', 'length text', {
  group: 'Ring',
  width: 22,
  value: (row, { standards }) => figureOf(figureNamed('blank')!, row, standards.unit),
  formula: (row, { standards: { unit } }) => {
    const more = RING_GROUPS.slice(1)
      .filter((group) => group.written(row))
      .map((group) => `&IF(N(${inRing(group)('radius')})>0,"; "&${ringText(group, unit)},"")`);
    return `IF({segments}="","",${ringText(CROWN, unit)}${more.join('')})`;
  },
});
export const CROWN_COLUMNS: readonly WorkingColumn[] = ringColumns(CROWN);
export const HAUNCH_COLUMNS: readonly WorkingColumn[] = [HAUNCH, ...MORE_ARCS].flatMap(ringColumns);
