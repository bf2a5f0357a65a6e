import type { Blank } from '../../takeoff/blankChoice';
import type { RingKind as CurveRing } from '../../takeoff/curve';
import type { RingPlan } from '../../takeoff/ownFigures';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import { blankText, lengthTextFormula } from '../lengthFormula';
import { figure, inGroup, working, type ColumnMeasure, type TakeoffColumn } from './column';
import { boardFeet, byHead, HALF_SPAN, MULTI_CENTERED, narrowestBoard, piecesThrough, priceAt } from './formulas';

/** One kind of ring an opening may need: the crown's, which is the only one of most heads, or the haunches'. */
interface RingKind {
  readonly group: string;
  readonly headingStart: string;
  /** A figure's column key: `blankWidth`, or `haunchBlankWidth`. */
  readonly key: (name: string) => string;
  readonly ring: (row: OpeningTakeoff) => CurveRing | null;
  readonly plan: (row: OpeningTakeoff) => RingPlan | null;
  readonly run: (row: OpeningTakeoff) => number | undefined;
  /** Whether the cells of a row hold formulas at all. */
  readonly written: (row: OpeningTakeoff) => boolean;
  readonly radius: string;
  readonly angle: string;
  readonly blankAngle: string;
  readonly count: string;
}

const DIAGONAL = `SQRT(${HALF_SPAN}^2+{rise}^2)`;
/** A figure of the arcs that best fit an ellipse: row 1 is a haunch, row 2 the crown. */
const ellipse = (row: 1 | 2, column: 1 | 2) => `INDEX(ARCH.HEADARCS({head},{span},{rise}),${row},${column})`;

const CROWN: RingKind = {
  group: 'Ring',
  headingStart: '',
  key: (name) => name,
  ring: (row) => row.curve?.crown ?? null,
  plan: (row) => row.own?.crown ?? null,
  run: (row) => row.cost?.crownPieces,
  written: () => true,
  radius: byHead([
    ['segmental', 'ARCH.RADIUS({span},{rise})'],
    ['half round', HALF_SPAN],
    ['quarter round', '{span}'],
    ['round', HALF_SPAN],
    ['pointed', `(${HALF_SPAN}^2+{rise}^2)/{span}`],
    ['elliptical', ellipse(2, 1)],
    ['three-centered', `(${DIAGONAL}^2+(${HALF_SPAN}-{rise})*${DIAGONAL})/(2*{rise})`],
  ]),
  angle: byHead([
    ['segmental', 'ARCH.ANGLE({span},{rise})'],
    ['half round', '180'],
    ['quarter round', '90'],
    ['round', '360'],
    ['pointed', `DEGREES(ATAN2({radius}-${HALF_SPAN},{rise}))`],
    ['elliptical', ellipse(2, 2)],
    ['three-centered', '180-2*{haunchAngle}'],
  ]),
  blankAngle:
    'IF({head}="round",360,MIN(360,' +
    `IF(${MULTI_CENTERED},{angle},DEGREES({length}/{outsideRadius})/IF({head}="pointed",2,1))` +
    '+DEGREES(2*Shop_end_allowance/{insideRadius})))',
  count: 'IF({head}="pointed",2,1)',
};

/** Haunch cells are written only where the head has haunches: most have none. */
export function mayHaveHaunch(row: OpeningTakeoff): boolean {
  const { head } = row.known;
  return head === 'elliptical' || head === 'three-centered' || head === null;
}

const HAUNCH: RingKind = {
  group: 'Haunch rings',
  headingStart: 'Haunch: ',
  key: (name) => 'haunch' + name.charAt(0).toUpperCase() + name.slice(1),
  ring: (row) => row.curve?.haunch ?? null,
  plan: (row) => row.own?.haunch ?? null,
  run: (row) => row.cost?.haunchPieces,
  written: mayHaveHaunch,
  radius: byHead([
    ['elliptical', ellipse(1, 1)],
    ['three-centered', `(${DIAGONAL}^2-(${HALF_SPAN}-{rise})*${DIAGONAL})/{span}`],
  ]),
  angle: `IF({head}="elliptical",${ellipse(1, 2)},DEGREES(ATAN2(${HALF_SPAN}-{haunchRadius},{radius}-{rise})))`,
  blankAngle: 'MIN(360,{haunchAngle}+DEGREES(2*Shop_end_allowance/{haunchInsideRadius}))',
  count: '2',
};

function ringColumns(kind: RingKind): TakeoffColumn[] {
  const at = (name: string) => `{${kind.key(name)}}`;
  const heading = (text: string) =>
    kind.headingStart === '' ? text : kind.headingStart + text.charAt(0).toLowerCase() + text.slice(1);
  const written = (guarded: string) => (row: OpeningTakeoff) => (kind.written(row) ? guarded : null);
  const usual = kind === CROWN ? figure : working;

  /** A figure of the curve: blank unless the opening has such a ring. */
  const ofRing = (
    name: string,
    title: string,
    measure: ColumnMeasure,
    value: (ring: CurveRing) => number,
    text: string,
    make = usual,
  ) =>
    make(kind.key(name), heading(title), measure, {
      value: (row) => {
        const ring = kind.ring(row);
        return ring && value(ring);
      },
      formula: written(`IF(${at('radius')}="","",${text})`),
    });
  /** A figure of the blank: blank, too, while wood or price still lack something. */
  const column = (
    name: string,
    title: string,
    measure: ColumnMeasure,
    value: (plan: RingPlan, row: OpeningTakeoff, takeoff: Takeoff) => number | string | undefined,
    text: string,
    make = usual,
  ) =>
    make(kind.key(name), heading(title), measure, {
      width: measure === 'text' ? 28 : 11,
      value: (row, takeoff) => {
        const plan = kind.plan(row);
        return plan && value(plan, row, takeoff);
      },
      formula: written(`IF(OR({missing}<>"",${at('radius')}=""),"",${text})`),
    });
  const blank = (count: string) => `${at('insideRadius')},{face},${at('blankAngle')},${count},Shop_margin`;
  const chosen = (of: (blank: Blank) => number) => (plan: RingPlan) => of(plan.blank.chosen);

  /** Wood and joints of one ring with the fewest segments, one more or two more. */
  const weighed = (more: 0 | 1 | 2, title: string) => {
    const count = more === 0 ? at('segmentsFewest') : `(${at('segmentsFewest')}+${more})`;
    const board = narrowestBoard(`ARCH.BLANKWIDTH(${blank(count)})`);
    const wood = `${boardFeet(board, `ARCH.BLANKLENGTH(${blank(count)})`, count)}*${priceAt(board)}*(1+Shop_waste)`;
    const joints = `(${count}-IF(${at('blankAngle')}=360,0,1))*Shop_joint_minutes/60*Shop_shop_rate`;
    const value = (plan: RingPlan) => plan.blank.weighed[more].cost;
    return column(`weigh${more}`, `Wood and joints, ${title}`, 'money', value, `${wood}+${joints}`, working);
  };
  const [fewest, oneMore, twoMore] = [at('weigh0'), at('weigh1'), at('weigh2')];
  const cheapest = `IF(${fewest}<=MIN(${oneMore},${twoMore}),0,IF(${oneMore}<=${twoMore},1,2))`;

  return inGroup(kind.group, [
    {
      ...ofRing('radius', 'Radius', 'length', (ring) => ring.radius, ''),
      formula: written(`IF({missingShape}<>"","",${kind.radius})`),
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
    ofRing('angle', 'Angle', 'degrees', (ring) => ring.angle, kind.angle, working),
    ofRing('blankAngle', 'Blank angle', 'degrees', (ring) => ring.blankAngle, kind.blankAngle, working),
    ...inGroup('Segments weighed', [
      column(
        'segmentsFewest',
        'Fewest segments',
        'count',
        (plan) => plan.blank.weighed[0].segments,
        `ARCH.SEGMENTS(${at('insideRadius')},{face},${at('blankAngle')},{widest},Shop_margin,Shop_grain)`,
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
      `${at('segmentsFewest')}+${cheapest}`,
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
    column(
      'guide',
      'Guide set',
      'text',
      (plan) => plan.guide,
      `{knife}&", R "&ROUND(${at('insideRadius')},3)`,
      working,
    ),
    column(
      'pieces',
      'Pieces',
      'count',
      (plan, row) => (row.inputs?.quantity ?? 0) * plan.ring.count,
      `{counted}*${kind.count}`,
      working,
    ),
    column(
      'runLength',
      'Run length, all pieces',
      'length',
      (plan, row) => (row.inputs?.quantity ?? 0) * plan.ring.count * plan.runLength,
      `${at('pieces')}*RADIANS(${at('blankAngle')})*(${at('insideRadius')}+{face}/2)`,
      working,
    ),
    column(
      'setupPieces',
      'Pieces of the guide set',
      'count',
      (plan, _row, { shares }) => shares.setups.get(plan.guide.toLowerCase()),
      piecesThrough(at('guide')),
      working,
    ),
    column(
      'run',
      'Pieces with spares',
      'number',
      (_plan, row) => kind.run(row),
      `${at('pieces')}*(1+Shop_spare_pieces/${at('setupPieces')})`,
      working,
    ),
  ]);
}

export const BLANK_TEXT: TakeoffColumn = figure('blank', 'Blank', 'length text', {
  group: 'Ring',
  width: 22,
  value: (row, { standards }) => row.own?.crown && blankText(row.own.crown.blank.chosen, standards.unit),
  formula: (_row, { standards: { unit } }) =>
    `IF({segments}="","",{segments}&" of "&${lengthTextFormula('{blankWidth}', unit)}&" x "&${lengthTextFormula('{blankLength}', unit)})`,
});
export const CROWN_COLUMNS: readonly TakeoffColumn[] = ringColumns(CROWN);
export const HAUNCH_COLUMNS: readonly TakeoffColumn[] = ringColumns(HAUNCH);
