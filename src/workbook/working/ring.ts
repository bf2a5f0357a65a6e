import type { RingKind } from '../../takeoff/curve';
import type { RingPlan } from '../../takeoff/ownFigures';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { figureNamed, OF_BLANK, OF_RING } from '../../takeoff/figures';
import { roundTo } from '../../rounding';
import type { Unit } from '../../unit';
import { quote } from '../../formulaText';
import { lengthTextFormula } from '../sharedFormulas';
import type { ColumnMeasure } from '../format';
import { inGroup, plain, working, type WorkingColumn, type WorkingColumns } from './column';
import { its, type RingBefore, type RingFigure, type RingKey, type RingStep } from './keys';
import type { GuideSet } from '../../takeoff/guideSets';
import { benchMinutes } from '../../takeoff/labor';
import { ringCost } from '../../takeoff/ownCost';
import { boardFeet, FEED, narrowestBoard, priceAt } from './formulas';
import { piecesOf, type WorkingTakeoff } from './shared';
import { pieceBench } from './price';
import { arcPieces, type ArcPieces } from '../../takeoff/arcPieces';
import {
  blankAngleFormula,
  CROWN,
  grainLimit,
  HAUNCH,
  inRing,
  type InGroup,
  ownAngleFormula,
  partsFormula,
  piecesThrough,
  RING_GROUPS,
  SECOND_HAUNCH,
  THIRD_HAUNCH,
  type RingGroup,
} from './ringGroups';

function ringColumns<Before extends RingBefore>(group: RingGroup<Before>): WorkingColumns<RingKey<Before>> {
  const at = inRing(group);
  const heading = (text: string) =>
    group.headingStart === '' ? text : group.headingStart + text.charAt(0).toLowerCase() + text.slice(1);
  const written = (guarded: string) => (row: OpeningTakeoff) => (group.written(row) ? guarded : null);

  /** A figure of the curve: blank unless the opening has such a ring. */
  const curveStep = (
    title: string,
    measure: ColumnMeasure,
    value: (ring: RingKind, made: ArcPieces) => number,
    text: string,
    whole = `IF(${at('radius')}="","",${text})`,
  ) =>
    working(heading(title), measure, {
      value: (row, { standards }) => {
        const ring = group.ring(row);
        return ring && value(ring, arcPieces(ring, row.known.face!, standards));
      },
      formula: written(whole),
    });
  /** A figure of the blank: blank, too, while wood or price still lack something. */
  const step = (
    title: string,
    measure: ColumnMeasure,
    value: (plan: RingPlan, row: OpeningTakeoff, takeoff: WorkingTakeoff) => number | string | undefined,
    text: string | ((takeoff: WorkingTakeoff) => string),
  ) =>
    working(heading(title), measure, {
      width: measure === 'text' ? 28 : 11,
      value: (row, takeoff) => {
        const plan = group.plan(row);
        return plan && value(plan, row, takeoff);
      },
      formula: (row, takeoff) => {
        if (!group.written(row)) return null;
        return `IF(OR(${its.missing}<>"",${at('radius')}=""),"",${typeof text === 'string' ? text : text(takeoff)})`;
      },
    });
  /** What a figure of that name is called and measures, of every kind of ring. */
  const described = (name: RingFigure) => figureNamed(name)!;
  const plainOfRing = (name: keyof typeof OF_RING, text: string, whole?: string) => {
    const { heading: title, measure } = described(name);
    return curveStep(title, measure, OF_RING[name], text, whole);
  };
  const plainOfBlank = (name: keyof typeof OF_BLANK, text: string) => {
    const { heading: title, measure } = described(name);
    return step(title, measure, (plan) => OF_BLANK[name](plan.blank.chosen), text);
  };
  const blank = (count: string) => `${at('inside radius')},${its.face},${at('madeAngle')},${count},Shop_margin`;

  /** Wood and joints of one ring with the fewest segments, one more or two more. */
  const weighed = (more: 0 | 1 | 2, title: string) => {
    const count = more === 0 ? at('segmentsFewest') : `(${at('segmentsFewest')}+${more})`;
    const board = narrowestBoard(`ARCH.BLANKWIDTH(${blank(count)})`);
    const wood = `${boardFeet(board, `ARCH.BLANKLENGTH(${blank(count)})`, count)}*${priceAt(board)}*(1+Shop_waste)`;
    const joints = `(${count}-IF(${at('madeAngle')}=360,0,1))*Shop_joint_minutes/60*Shop_bench_rate`;
    const value = (plan: RingPlan) => plan.blank.weighed[more].cost;
    return step(title, 'money', value, `${wood}+${joints}`);
  };
  const [fewest, oneMore, twoMore] = [at('weigh0'), at('weigh1'), at('weigh2')];
  const cheapest = `IF(${fewest}<=MIN(${oneMore},${twoMore}),0,IF(${oneMore}<=${twoMore},1,2))`;

  /**
   * A figure of the guide set. Which near radii share one is worked out when the workbook is written: a constant, for as long as radius
   * and tolerance are what they were then.
   */
  const ofSet = (
    title: string,
    measure: ColumnMeasure,
    value: (set: GuideSet) => string | number,
    own: string,
  ): WorkingColumn => {
    const setOf = (plan: RingPlan, row: OpeningTakeoff, { sets }: WorkingTakeoff) => sets(row.inputs!, plan);
    const alone = step(title, measure, (plan, row, takeoff) => value(setOf(plan, row, takeoff)), own);
    return {
      ...alone,
      formula: (row, takeoff) => {
        const plan = group.plan(row);
        const set = plan && setOf(plan, row, takeoff);
        if (!plan || !set || set.name === plan.guide) return alone.formula(row, takeoff);
        const then = `AND(ROUND(${at('inside radius')},3)=${roundTo(3, plan.ring.inside)},Shop_guide_tolerance=${takeoff.standards.guideTolerance})`;
        const shared = value(set);
        const constant = typeof shared === 'number' ? String(shared) : quote(shared);
        return `IF(OR(${its.missing}<>"",${at('radius')}=""),"",IF(${then},${constant},${own}))`;
      },
    };
  };

  const columns: WorkingColumns<RingFigure | RingStep> = {
    radius: plainOfRing('radius', '', `IF(${its.missingShape}<>"","",${group.radius})`),
    'inside radius': plainOfRing('inside radius', `${at('radius')}+${its.reveal}`),
    'outside radius': plainOfRing('outside radius', `${at('inside radius')}+${its.face}`),
    angle: plainOfRing('angle', group.angle),
    finishedAngle: curveStep('Finished angle', 'degrees', (ring) => ring.finishedAngle, group.finished),
    parts: curveStep('Pieces of each arc', 'count', (_, made) => made.parts, partsFormula(at)),
    ownAngle: curveStep('Angle of its own blank', 'degrees', (_, made) => made.ownAngle, ownAngleFormula(at)),
    madeAngle: curveStep('Angle as glued up', 'degrees', (_, made) => made.blankAngle, blankAngleFormula(at)),
    'blank angle': step(
      described('blank angle').heading,
      described('blank angle').measure,
      ({ ring }) => ring.blankAngle,
      at('madeAngle'),
    ),
    segmentsFewest: {
      ...step(
        'Fewest segments',
        'count',
        (plan) => plan.blank.weighed[0].segments,
        `ARCH.SEGMENTS(${at('inside radius')},${its.face},${at('madeAngle')},${its.widest},Shop_margin,${grainLimit(at)})`,
      ),
      group: WEIGHED,
    },
    weigh0: { ...weighed(0, 'Wood and joints, fewest joints'), group: WEIGHED },
    weigh1: { ...weighed(1, 'Wood and joints, one more segment'), group: WEIGHED },
    weigh2: { ...weighed(2, 'Wood and joints, two more segments'), group: WEIGHED },
    segments: plainOfBlank(
      'segments',
      `IF(${its.segmentsWanted}="",${at('segmentsFewest')}+${cheapest},${its.segmentsWanted})`,
    ),
    'blank width': plainOfBlank('blank width', `ARCH.BLANKWIDTH(${blank(at('segments'))})`),
    'board width': plainOfBlank('board width', narrowestBoard(at('blank width'))),
    'blank length': plainOfBlank('blank length', `ARCH.BLANKLENGTH(${blank(at('segments'))})`),
    guide: ofSet('Guide set', 'text', ({ name }) => name, guideOf(at)),
    guideRadius: ofSet('Radius of the guide set', 'length', ({ radius }) => radius, at('inside radius')),
    pieces: step(
      'Pieces',
      'count',
      (plan, row) => piecesOf(row) * plan.ring.count,
      `${its.counted}*${group.count}*${at('parts')}`,
    ),
    setupPieces: step(
      'Pieces of the guide set',
      'count',
      (plan, row, { sets, setups }) => setups.get(sets(row.inputs!, plan).name.toLowerCase()),
      ({ ringKinds }) => piecesThrough(at('guide'), ringKinds),
    ),
    guidePart: step(
      'Part of the guide set',
      'number',
      (plan, row, { sets, setups }) =>
        (piecesOf(row) * plan.ring.count) / (setups.get(sets(row.inputs!, plan).name.toLowerCase()) ?? 1),
      `IF(${its.counted}=0,0,${at('pieces')}/${at('setupPieces')})`,
    ),
    pieceRun: step(
      'Run minutes, one piece',
      'minutes',
      (plan, row, { standards }) => ringCost(plan, 1, row.own?.passes ?? 1, standards).minutes.running,
      `ARCH.RUNTIME(RADIANS(${at('madeAngle')})*(${at('inside radius')}+${its.face}/2)/Shop_per_inch,${FEED},${its.passes},Shop_handling)`,
    ),
    pieceBench: step(
      'Bench minutes, one piece',
      'minutes',
      (plan, row, { standards }) => benchMinutes(ringCost(plan, 1, row.own?.passes ?? 1, standards).minutes),
      pieceBench(at),
    ),
    pieceFeet: step(
      'Board feet, one piece',
      'boardFeet',
      (plan, row, { standards }) => ringCost(plan, 1, row.own?.passes ?? 1, standards).boardFeet,
      boardFeet(at('board width'), at('blank length'), at('segments')),
    ),
  };
  const named = Object.entries(inGroup(group.name, columns)).map(([name, column]) => [
    group.key(name as RingFigure | RingStep),
    column,
  ]);
  return Object.fromEntries(named) as WorkingColumns<RingKey<Before>>;
}

const WEIGHED = 'Segments weighed';
/** Guides of the ring's own radius. */
const guideOf = (at: InGroup) => `${its.knife}&", R "&ROUND(${at('inside radius')},3)`;

const ringText = (group: RingGroup, unit: Unit) => {
  const at = inRing(group);
  const size = `${at('segments')}&" of "&${lengthTextFormula(at('blank width'), unit)}&" x "&${lengthTextFormula(at('blank length'), unit)}`;
  const count = `${group.count}*${at('parts')}`;
  return `IF(${count}>1,${count}&" × ","")&${size}`;
};

export const BLANK_TEXT: WorkingColumn = {
  ...plain(
    'blank',
    (row, { standards: { unit } }) => {
      const more = RING_GROUPS.slice(1)
        .filter((group) => group.written(row))
        .map((group) => `&IF(N(${inRing(group)('radius')})>0,"; "&${ringText(group, unit)},"")`);
      return `IF(${its.segments}="","",${ringText(CROWN, unit)}${more.join('')})`;
    },
    22,
  ),
  group: CROWN.name,
};
/** Every ring runs between guides of its own radius; straight molding has a set-up of its own. */
export const SET_UPS: WorkingColumn = {
  ...plain(
    'set-up',
    (row) => {
      const rings = RING_GROUPS.filter((group) => group.written(row)).map((group) => {
        const at = inRing(group);
        return `IF(N(${at('radius')})>0,"; "&${guideOf(at)},"")`;
      });
      const straight = `IF(${its.straightSetup}="","","; "&${its.straightSetup})`;
      return `IF(${its.missing}<>"","",MID(${[...rings, straight].join('&')},3,2000))`;
    },
    28,
  ),
  group: CROWN.name,
};

export const CROWN_COLUMNS = ringColumns(CROWN);
export const HAUNCH_COLUMNS = {
  ...ringColumns(HAUNCH),
  ...ringColumns(SECOND_HAUNCH),
  ...ringColumns(THIRD_HAUNCH),
};
