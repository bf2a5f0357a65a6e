import { radians } from '../angle';
import { boardFeet } from '../lumber';
import { cutsPerInch, finishGrade } from '../machine';
import { knifeListed, type KnifeSize } from '../onHand';
import { ok, refuse, type Result } from '../result';
import type { Standards } from '../standards';
import { feetPerMinute, inches } from '../unit';
import { arcPieces, type ArcPieces } from './arcPieces';
import { chooseBlank, type BlankChoice } from './blankChoice';
import type { Curve, RingKind } from './curve';
import { NEEDS, type Inputs } from './inputs';
import { roundTo } from '../rounding';
import { straightPieces, type StraightPieces } from './straightPieces';
import { boardFor, stockName } from './wood';

/** A ring with the blank chosen for it and the guide set it runs between. */
export interface RingPlan {
  /** As it is glued up: of an arc made in halves, one of them. */
  readonly ring: RingKind;
  /** How each arc is made. */
  readonly made: ArcPieces;
  readonly blank: BlankChoice;
  readonly knife: string;
  /** Guides of its own radius: alike where profile, width, thickness and inside radius are. Near radii may share: see `guideSets.ts`. */
  readonly guide: string;
  /** Length of one blank along the molding's center, the length the rolls carry. */
  readonly runLength: number;
}

/** Straight molding that belongs to an opening: a straight head, legs. */
export interface StraightPlan {
  readonly pieces: readonly StraightPieces[];
  /** Of one opening. */
  readonly length: number;
  readonly count: number;
  readonly width: number;
  readonly boardFeet: number;
  /** Straight molding of one profile shares one set-up, without guides. */
  readonly setup: string;
}

/** What follows from one opening alone, for one head and its legs, before anything is shared with others. */
export interface OwnFigures extends Blanks, Running {}

/** What is glued up and ripped. */
export interface Blanks {
  readonly curve: Curve;
  /** Every kind of ring, the crown first. */
  readonly rings: readonly RingPlan[];
  readonly crown: RingPlan | null;
  readonly haunch: RingPlan | null;
  readonly straight: StraightPlan | null;
  readonly knife: string;
  /** The board straight stock is ripped from. */
  readonly ripWidth: number;
  /** Board feet of one set-up's test piece. */
  readonly testBoardFeet: number;
  readonly ripPrice: number;
  /** The wood as the stock list names it, with its dressed thickness: what is planned together. */
  readonly stock: string;
}

export function blanksOf(inputs: Inputs, curve: Curve, standards: Standards): Result<Blanks> {
  const knife = knifeName(inputs);
  const rings: RingPlan[] = [];
  for (const ring of curve.rings) {
    const plan = ringPlan(ring, inputs, standards, knife);
    if (!plan.ok) return plan;
    rings.push(plan.value);
  }

  const ripped = boardFor(inputs.face + 2 * standards.margin, inputs.wood);
  if (ripped === null) return refuse(NEEDS.width);
  const straight = straightPlan(inputs, standards, curve, knife);
  if (!straight.ok) return straight;
  const test =
    standards.testPiece === 0
      ? ok(0)
      : boardFeet(
          inches(inputs.wood.quarters / 4, 'in'),
          inches(inputs.face + 2 * standards.margin, standards.unit),
          inches(standards.testPiece, standards.unit),
        );
  if (!test.ok) return test;
  return ok({
    curve,
    rings,
    crown: rings[0] ?? null,
    haunch: rings[1] ?? null,
    straight: straight.value,
    knife,
    ripWidth: ripped.width,
    testBoardFeet: test.value,
    ripPrice: ripped.price,
    stock: stockName(inputs.wood),
  });
}

/** How it runs past the knife. */
export interface Running {
  readonly cutsPerInch: number;
  /** Fewest knife cuts per inch at an outside edge, which travels faster than the center; of straight molding where no arc is. */
  readonly cutsOutside: number;
  /** Fewest of all its pieces: what the grade goes by. */
  readonly cutsFewest: number;
  readonly grade: string;
  readonly passes: number;
}

export function runningOf(inputs: Inputs, { rings, straight }: Blanks, standards: Standards): Result<Running> {
  const center = cutsAtCenter(standards);
  if (!center.ok) return center;
  const straightCuts = cutsOfStraight(standards);
  if (!straightCuts.ok) return straightCuts;
  let cutsOutside = rings.length === 0 ? straightCuts.value : center.value;
  for (const { ring } of rings) {
    const outside = cutsAtEdge(ring, inputs.face, standards);
    if (!outside.ok) return outside;
    cutsOutside = Math.min(cutsOutside, outside.value);
  }
  const cutsFewest = straight === null ? cutsOutside : Math.min(cutsOutside, straightCuts.value);
  const grade = finishGrade(cutsFewest);
  if (!grade.ok) return grade;
  const passes = passesOf(inputs, standards);
  return ok({ cutsPerInch: center.value, cutsOutside, cutsFewest, grade: grade.value, passes });
}

/** Knife cuts per inch at the center of the molding. */
function cutsAtCenter({ rpm, knives, feed, unit }: Standards): Result<number> {
  return cutsPerInch(rpm, knives, feetPerMinute(feed, unit));
}

/** Knife cuts per inch of straight molding. */
export function cutsOfStraight({ rpm, knives, straightFeed, unit }: Standards): Result<number> {
  return cutsPerInch(rpm, knives, feetPerMinute(straightFeed, unit));
}

/** Knife cuts per inch at a ring's outside edge. */
export function cutsAtEdge(ring: RingKind, face: number, { rpm, knives, feed, unit }: Standards): Result<number> {
  return cutsPerInch(rpm, knives, feetPerMinute(feed, unit), ring.inside + face / 2, ring.outside);
}

/** Passes to take the profile down to its depth; the list of knives may name either. */
function passesOf(size: KnifeSize, { onHand, profileDepth, deepestCut }: Standards): number {
  const { passes, depth } = knifeListed(size, onHand);
  return passes ?? Math.ceil((depth ?? profileDepth) / deepestCut - 1e-9);
}

/** One knife is ground for each profile, width and thickness. */
function knifeName(inputs: Inputs): string {
  return `${roundTo(3, inputs.face)} x ${roundTo(3, inputs.thickness)} ${inputs.profile}`;
}

function ringPlan(arc: RingKind, inputs: Inputs, standards: Standards, knife: string): Result<RingPlan> {
  const made = arcPieces(arc, inputs.face, standards);
  const { blankAngle, finishedAngle, parts, overlong } = made;
  const ring: RingKind = { ...arc, blankAngle, finishedAngle, count: arc.count * parts };
  // Joints of an overlong blank may fall within the finished piece: its grain is judged over all of it.
  const finished = overlong ? blankAngle : finishedAngle;
  const size = { inside: ring.inside, face: inputs.face, degrees: blankAngle, finished };
  const blank = chooseBlank(size, inputs.wood, standards, inputs.segmentsWanted);
  if (!blank.ok) return blank;
  return ok({
    ring,
    made,
    blank: blank.value,
    knife,
    guide: `${knife}, R ${roundTo(3, ring.inside)}`,
    runLength: radians(ring.blankAngle) * (ring.inside + inputs.face / 2),
  });
}

function straightPlan(inputs: Inputs, standards: Standards, curve: Curve, knife: string): Result<StraightPlan | null> {
  const pieces = straightPieces(curve, inputs, standards);
  if (pieces.length === 0) return ok(null);
  const length = pieces.reduce((sum, piece) => sum + piece.length * piece.count, 0);
  const width = inputs.face + 2 * standards.margin;
  const feet = boardFeet(
    inches(inputs.wood.quarters / 4, 'in'),
    inches(width, standards.unit),
    inches(length, standards.unit),
  );
  if (!feet.ok) return feet;
  return ok({
    pieces,
    length,
    count: pieces.reduce((sum, piece) => sum + piece.count, 0),
    width,
    boardFeet: feet.value,
    setup: `${knife}, straight`,
  });
}

/** Straight pieces of one opening that are fixed to a carrier, because the rolls would not hold them. */
export function carriedOf({ straight }: Pick<Blanks, 'straight'>): number {
  return (straight?.pieces ?? []).reduce((sum, { longer, count }) => sum + (longer === 'carrier' ? count : 0), 0);
}

/** Finished splices of one head and its legs. */
export function splicesOf({ rings, straight }: Pick<Blanks, 'rings' | 'straight'>): number {
  const ofArcs = rings.reduce((sum, { made, ring }) => sum + made.splices * ring.arcs.length, 0);
  return ofArcs + (straight?.pieces ?? []).reduce((sum, { parts, count }) => sum + (parts === 2 ? count / 2 : 0), 0);
}
