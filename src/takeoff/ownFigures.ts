import { radians } from '../angle';
import { boardFeet } from '../lumber';
import { cutsPerInch, finishGrade } from '../machine';
import { ok, refuse, type Result } from '../result';
import type { Standards } from '../standards';
import { perFootPerMinute, perInch } from '../unit';
import { chooseBlank, type BlankChoice } from './blankChoice';
import { legAboveSpring, type Curve, type RingKind } from './curve';
import { NEEDS, type Inputs } from './inputs';
import { roundTo } from '../rounding';
import { boardFor } from './wood';

/** A ring with the blank chosen for it and the guide set it runs between. */
export interface RingPlan {
  readonly ring: RingKind;
  readonly blank: BlankChoice;
  /** Guide sets are alike where profile, width, thickness and inside radius are. */
  readonly guide: string;
  /** Length of one blank along the molding's center, the length the rolls carry. */
  readonly runLength: number;
  /** Knife cuts per inch at the outside edge, which travels faster than the center. */
  readonly cutsOutside: number;
}

/** Straight molding that belongs to an opening: a straight head, legs. */
export interface StraightPlan {
  readonly pieces: readonly { readonly length: number; readonly count: number }[];
  /** Of one opening. */
  readonly length: number;
  readonly count: number;
  readonly width: number;
  readonly boardFeet: number;
  /** Straight molding of one profile shares one set-up, without guides. */
  readonly setup: string;
}

/** What follows from one opening alone, for one head and its legs, before anything is shared with others. */
export interface OwnFigures {
  readonly curve: Curve;
  readonly crown: RingPlan | null;
  readonly haunch: RingPlan | null;
  readonly straight: StraightPlan | null;
  readonly knife: string;
  readonly cutsPerInch: number;
  readonly cutsOutside: number;
  readonly grade: string;
  readonly passes: number;
  /** The board straight stock is ripped from. */
  readonly ripWidth: number;
  /** Board feet of one set-up's test piece. */
  readonly testBoardFeet: number;
  readonly ripPrice: number;
}

export function ownFigures(inputs: Inputs, curve: Curve, standards: Standards): Result<OwnFigures> {
  const knife = knifeName(inputs);
  const crown = ringPlan(curve.crown, inputs, standards, knife);
  if (!crown.ok) return crown;
  const haunch = ringPlan(curve.haunch, inputs, standards, knife);
  if (!haunch.ok) return haunch;

  const inch = perInch(standards.unit);
  const ripped = boardFor(inputs.face + 2 * standards.margin, inputs.wood);
  if (ripped === null) return refuse(NEEDS.width);
  const straight = straightPlan(inputs, standards, curve, knife);
  if (!straight.ok) return straight;
  const test =
    standards.testPiece === 0
      ? ok(0)
      : boardFeet(inputs.wood.quarters / 4, (inputs.face + 2 * standards.margin) / inch, standards.testPiece / inch);
  if (!test.ok) return test;

  const feed = standards.feed / perFootPerMinute(standards.unit);
  const center = cutsPerInch(standards.rpm, standards.knives, feed);
  if (!center.ok) return center;
  const cutsOutside = Math.min(
    center.value,
    ...[crown.value, haunch.value].map((plan) => plan?.cutsOutside ?? Infinity),
  );
  const grade = finishGrade(cutsOutside);
  if (!grade.ok) return grade;
  return ok({
    curve,
    crown: crown.value,
    haunch: haunch.value,
    straight: straight.value,
    knife,
    cutsPerInch: center.value,
    cutsOutside,
    grade: grade.value,
    passes: passesOf(standards),
    ripWidth: ripped.width,
    testBoardFeet: test.value,
    ripPrice: ripped.price,
  });
}

/** Passes to take the profile down to its depth. */
export function passesOf(standards: Standards): number {
  return Math.ceil(standards.profileDepth / standards.deepestCut - 1e-9);
}

/** One knife is ground for each profile, width and thickness. */
function knifeName(inputs: Inputs): string {
  return `${roundTo(3, inputs.face)} x ${roundTo(3, inputs.thickness)} ${inputs.profile}`;
}

function ringPlan(ring: RingKind | null, inputs: Inputs, standards: Standards, knife: string): Result<RingPlan | null> {
  if (ring === null) return ok(null);
  const size = { inside: ring.inside, face: inputs.face, degrees: ring.blankAngle };
  const blank = chooseBlank(size, inputs.wood, standards);
  if (!blank.ok) return blank;
  const middle = ring.inside + inputs.face / 2;
  const feed = standards.feed / perFootPerMinute(standards.unit);
  const outside = cutsPerInch(standards.rpm, standards.knives, feed, middle, ring.outside);
  if (!outside.ok) return outside;
  return ok({
    ring,
    blank: blank.value,
    guide: `${knife}, R ${roundTo(3, ring.inside)}`,
    runLength: radians(ring.blankAngle) * middle,
    cutsOutside: outside.value,
  });
}

function straightPlan(inputs: Inputs, standards: Standards, curve: Curve, knife: string): Result<StraightPlan | null> {
  const pieces: { length: number; count: number }[] = [];
  if (inputs.head === 'straight') pieces.push({ length: curve.length + 2 * standards.endAllowance, count: 1 });
  if (inputs.leg > 0) {
    const long = inputs.leg + Math.max(0, legAboveSpring(inputs));
    pieces.push({ length: long + 2 * standards.endAllowance, count: 2 });
  }
  if (pieces.length === 0) return ok(null);
  const length = pieces.reduce((sum, piece) => sum + piece.length * piece.count, 0);
  const width = inputs.face + 2 * standards.margin;
  const inch = perInch(standards.unit);
  const feet = boardFeet(inputs.wood.quarters / 4, width / inch, length / inch);
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
