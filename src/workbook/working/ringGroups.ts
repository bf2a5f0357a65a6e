import { capital } from '../../schedule/figure';
import { MOST_OVERLONG } from '../../takeoff/arcPieces';
import type { RingKind } from '../../takeoff/curve';
import type { RingPlan } from '../../takeoff/ownFigures';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { ARCS, boardFeet, HAUNCHED_HEADS, headIs, FITTED_HEADS, longestBoardAt } from './formulas';
import { fitted } from './headFormulas';
import { perHead } from './heads';
import { all, its, type RingBefore, type RingFigure, type RingKey, type RingStep } from './keys';

/**
 * The kinds of ring an opening may need, each with a group of columns: the crown's, which is the only one of most heads, the
 * haunches', and two more where 5 or 7 arcs stand for an ellipse. The formulas are templates as in `column.ts`.
 */
export interface RingGroup<Before extends RingBefore = RingBefore> {
  readonly name: string;
  readonly headingStart: string;
  /** A figure's key: `blank width`, or `haunch blank width`. */
  readonly key: (name: RingFigure | RingStep) => RingKey<Before>;
  readonly ring: (row: OpeningTakeoff) => RingKind | null;
  readonly plan: (row: OpeningTakeoff) => RingPlan | null;
  /** Whether the cells of a row hold formulas at all. */
  readonly written: (row: OpeningTakeoff) => boolean;
  readonly radius: string;
  readonly angle: string;
  /** Degrees of the finished arc. */
  readonly finished: string;
  readonly count: string;
}

const FITTED = headIs(...FITTED_HEADS);

export const CROWN: RingGroup<''> = {
  name: 'Ring',
  headingStart: '',
  key: (name) => name,
  ring: (row) => row.curve?.crown ?? null,
  plan: (row) => row.own?.crown ?? null,
  written: () => true,
  radius: perHead(({ crown }) => crown && crown.radius),
  angle: perHead(({ crown }) => crown && crown.angle),
  finished: perHead(({ crown }) => crown && crown.finished),
  count: perHead(({ crown }) => crown && crown.count, '1'),
};

/** Haunch cells are written only where the head has haunches: most have none. */
export function mayHaveHaunch(row: OpeningTakeoff): boolean {
  const { head } = row.known;
  return head === null || HAUNCHED_HEADS.includes(head);
}

export const HAUNCH: RingGroup<'haunch '> = {
  name: 'Haunch rings',
  headingStart: 'Haunch: ',
  key: (name) => `haunch ${name}`,
  ring: (row) => row.curve?.rings[1] ?? null,
  plan: (row) => row.own?.rings[1] ?? null,
  written: mayHaveHaunch,
  radius: perHead(({ haunch }) => haunch && haunch.radius),
  angle: perHead(({ haunch }) => haunch && haunch.angle),
  finished: its['haunch angle'],
  count: perHead(({ haunch }) => haunch && haunch.count, '2'),
};

/** A kind of ring between crown and springing, which only more arcs for an ellipse have. */
function moreArcs<Word extends 'second' | 'third'>(kind: 3 | 4, word: Word): RingGroup<`${Word} haunch `> {
  const key = (name: RingFigure | RingStep) => `${word} haunch ${name}` as const;
  const least = kind === 3 ? 5 : 7;
  return {
    name: `${capital(word)} haunch rings`,
    headingStart: `${capital(word)} haunch: `,
    key,
    ring: (row) => row.curve?.rings[kind - 1] ?? null,
    plan: (row) => row.own?.rings[kind - 1] ?? null,
    written: (row) => (row.known.arcs ?? 3) >= least && FITTED_HEADS.some((head) => head === row.known.head),
    radius: `IF(AND(${FITTED},${ARCS}>=${least}),${fitted(kind, 1)},"")`,
    angle: fitted(kind, 2),
    finished: its[key('angle')],
    count: `IF(${its.head}="quarter ellipse",1,IF(AND(${its.head}="full ellipse",${ARCS}>${least}),4,2))`,
  };
}

export const SECOND_HAUNCH = moreArcs(3, 'second');
export const THIRD_HAUNCH = moreArcs(4, 'third');
export const RING_GROUPS: readonly RingGroup[] = [CROWN, HAUNCH, SECOND_HAUNCH, THIRD_HAUNCH];

/** The cell of a figure of a kind of ring, by its name. */
export type InGroup = (name: RingFigure | RingStep) => string;
export const inRing = (group: RingGroup): InGroup => {
  return (name) => its[group.key(name)];
};

/** The sum over an opening's kinds of ring, of those it has. A ring that a head doesn't have has a blank radius, which N() reads as 0. */
export function overRings(of: (at: InGroup, group: RingGroup) => string): string {
  const kinds = RING_GROUPS.map((group) => {
    const at = inRing(group);
    return `IF(N(${at('radius')})>0,${of(at, group)},0)`;
  });
  return `(${kinds.join('+')})`;
}

/** Board feet of all an opening's rings of one kind. */
export function ringFeet(at: InGroup): string {
  return boardFeet(at('board width'), at('blank length'), `(${at('segments')}*${at('pieces')})`);
}

/** Pieces of every opening that runs between these guides, of kinds that any of them has. */
export function piecesThrough(guide: string, kinds: number): string {
  const sums = RING_GROUPS.slice(0, Math.max(2, kinds)).map(
    ({ key }) => `SUMIFS(${all[key('pieces')]},${all[key('guide')]},${guide})`,
  );
  return `(${sums.join('+')})`;
}

/** The tightest inside radius of an opening. */
export const SMALLEST_RADIUS = `MIN(${RING_GROUPS.map((group) => inRing(group)('inside radius')).join(',')})`;

/** The limit on the blank's angle that comes to the shop's on the finished piece; on all of a blank that is overlong. */
export function grainLimit(at: InGroup): string {
  const blank = at('madeAngle');
  const finished = `${at('finishedAngle')}/${at('parts')}`;
  return `MIN(180,Shop_grain*${blank}/IF(${blank}>${at('ownAngle')},${blank},${finished}))`;
}

/** The blank of a whole arc: the finished one with the end allowances. */
const wholeAngle = (at: InGroup) =>
  `IF(${its.head}="round",360,MIN(360,${at('finishedAngle')}+DEGREES(2*Shop_end_allowance/${at('inside radius')})))`;
const NEARLY = '0.000000001';

/** Whether a blank is larger than the shop carries, as in `takeoff/arcPieces.ts`. */
function isLarge(at: InGroup, blank: string, finished: string): string {
  const half = `RADIANS((${blank})/2)`;
  const [low, high] = [`(${at('inside radius')}-Shop_margin)`, `(${at('outside radius')}+Shop_margin)`];
  return (
    `OR(2*${high}*SIN(MIN(${half},PI()/2))>Shop_largest_across+${NEARLY},` +
    `${high}-${low}*COS(${half})>Shop_largest_high+${NEARLY},` +
    `${high}-${high}*COS(${half})>Shop_largest_high+${NEARLY},` +
    `${finished}>Shop_largest_turn+${NEARLY})`
  );
}

/** Pieces that each arc is made in. */
export const partsFormula = (at: InGroup): string => `IF(${isLarge(at, wholeAngle(at), at('finishedAngle'))},2,1)`;
/** Whether even its halves are too large. */
export const tooLargeFormula = (at: InGroup): string =>
  `IF(${at('parts')}=2,${isLarge(at, at('ownAngle'), `${at('finishedAngle')}/2`)},FALSE)`;
/** The blank of one piece, before it is made longer for the rolls. */
export const ownAngleFormula = (at: InGroup): string =>
  `IF(${at('parts')}=1,${wholeAngle(at)},MIN(360,${at('finishedAngle')}/2+DEGREES(2*Shop_end_allowance/${at('inside radius')})))`;
const CENTER = (at: InGroup) => `(${at('inside radius')}+${its.face}/2)`;
export const blankAngleFormula = (at: InGroup): string =>
  `MAX(${at('ownAngle')},IF(Shop_short_pieces="overlong",MIN(${MOST_OVERLONG},DEGREES(Shop_shortest_piece/${CENTER(at)})),0))`;
/** Whether a piece, as it is glued up, is shorter than the rolls hold. */
export const isShort = (at: InGroup): string =>
  `RADIANS(${at('madeAngle')})*${CENTER(at)}<Shop_shortest_piece-${NEARLY}`;
/** Whether no board is long enough for a segment, as in `takeoff/attention.ts`. */
export const segmentTooLong = (at: InGroup): string =>
  `${at('blank length')}>${longestBoardAt(at('blank width'))}-2*Shop_end_trim+${NEARLY}`;
/** Finished splices of one head. */
export const splicesOfHead = (at: InGroup, { count }: RingGroup): string =>
  `${count}*IF(${at('parts')}=1,0,IF(${its.head}="round",2,1))`;

/** Minutes at the machine. */
export const RUN_MINUTES = `${overRings((at) => `${at('pieces')}*${at('pieceRun')}`)}+${its.straightMinutes}`;
