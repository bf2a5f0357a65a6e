import type { Standards } from '../standards';
import { longUnit, perFootPerMinute, perInch } from '../unit';
import type { Inputs } from './inputs';
import type { OwnFigures, RingPlan } from './ownFigures';

/** What an opening takes by itself, for its whole quantity: without spare and test pieces and without what is shared. */
export interface OwnCost {
  readonly joints: number;
  /** Blanks and straight stock. */
  readonly boardFeet: number;
  readonly runMinutes: number;
  /** Running, gluing, sawing and sanding. */
  readonly laborMinutes: number;
  /** Board-foot money of its wood, before waste. */
  readonly wood: number;
  /** Money for the minutes. */
  readonly labor: number;
}

/** Cased heads of the whole quantity: one on each side of the wall that is cased. */
export function headsOf({ quantity, sides }: Pick<Inputs, 'quantity' | 'sides'>): number {
  return quantity * sides;
}

export function ownCost(inputs: Inputs, own: OwnFigures, standards: Standards): OwnCost {
  const heads = headsOf(inputs);
  const rings = own.rings.map((plan) => ringCost(plan, plan.ring.count * heads, own.passes, standards));
  const sum = (of: (cost: PieceCost) => number) => rings.reduce((total, cost) => total + of(cost), 0);
  const headJoints = heads * own.curve.pieceJoints;

  const straightFeet = own.straight ? own.straight.boardFeet * heads : 0;
  const straightLength = own.straight ? own.straight.length * heads : 0;
  const runMinutes = sum((cost) => cost.runMinutes) + straightMinutes(own, heads, standards);
  const laborMinutes =
    runMinutes +
    sum((cost) => cost.laborMinutes - cost.runMinutes) +
    headJoints * standards.jointMinutes +
    (straightLength * standards.sandMinutes) / longUnit(standards.unit);
  return {
    joints: sum((cost) => cost.joints) + headJoints,
    boardFeet: sum((cost) => cost.boardFeet) + straightFeet,
    runMinutes,
    laborMinutes,
    wood: sum((cost) => cost.wood) + straightFeet * own.ripPrice,
    labor: (laborMinutes / 60) * standards.shopRate,
  };
}

/** Run minutes of an opening's straight pieces. */
export function straightMinutes(
  { straight, passes }: Pick<OwnFigures, 'straight' | 'passes'>,
  heads: number,
  standards: Standards,
): number {
  if (straight === null) return 0;
  return heads * (straight.length * minutesPerLength(passes, standards) + straight.count * standards.handling);
}

export interface PieceCost {
  readonly joints: number;
  readonly boardFeet: number;
  readonly wood: number;
  readonly runMinutes: number;
  readonly laborMinutes: number;
}

/** What a number of rings of one kind take, which need not be whole: an opening's share of the spare ones is not. */
export function ringCost(
  { ring, blank: { chosen }, runLength }: RingPlan,
  pieces: number,
  passes: number,
  standards: Standards,
): PieceCost {
  const runMinutes = pieces * (runLength * minutesPerLength(passes, standards) + standards.handling);
  const joints = chosen.joints * pieces;
  const sawn = (pieces * ring.blankAngle * Math.PI * ring.outside) / 180;
  return {
    joints,
    boardFeet: chosen.boardFeet * pieces,
    wood: chosen.boardFeet * pieces * chosen.price,
    runMinutes,
    laborMinutes:
      runMinutes +
      joints * standards.jointMinutes +
      (sawn * (standards.sawMinutes + standards.sandMinutes)) / longUnit(standards.unit),
  };
}

/** Minutes that all passes take for one unit of length. */
function minutesPerLength(passes: number, { feed, unit }: Standards): number {
  return passes / perInch(unit) / (12 * (feed / perFootPerMinute(unit)));
}
