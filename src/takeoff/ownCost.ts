import { radians } from '../angle';
import type { Standards } from '../standards';
import type { Inputs } from './inputs';
import { addLabor, laborMoney, laborOf, minutesOf, NO_LABOR, type LaborMinutes } from './labor';
import { carriedOf, splicesOf, type OwnFigures, type RingPlan } from './ownFigures';

/** What an opening takes by itself, for its whole quantity: without spare and test pieces and without what is shared. */
export interface OwnCost {
  readonly joints: number;
  /** Blanks and straight stock. */
  readonly boardFeet: number;
  readonly runMinutes: number;
  /** All the work on its pieces, running included. */
  readonly laborMinutes: number;
  readonly minutes: LaborMinutes;
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
  const minutes = addLabor([
    ...rings.map((cost) => cost.minutes),
    straightLabor(own, heads, standards),
    {
      ...NO_LABOR,
      gluing: headJoints * standards.jointMinutes,
      fitting: heads * splicesOf(own) * standards.spliceMinutes,
    },
  ]);
  return {
    joints: sum((cost) => cost.joints) + headJoints,
    boardFeet: sum((cost) => cost.boardFeet) + straightFeet,
    runMinutes: minutes.running,
    laborMinutes: minutesOf(minutes),
    minutes,
    wood: sum((cost) => cost.wood) + straightFeet * own.ripPrice,
    labor: laborMoney(minutes, standards),
  };
}

/** The work on an opening's straight pieces. */
export function straightLabor(
  { straight, passes }: Pick<OwnFigures, 'straight' | 'passes'>,
  heads: number,
  standards: Standards,
): LaborMinutes {
  if (straight === null) return NO_LABOR;
  const length = straight.length * heads;
  const pieces = straight.count * heads;
  const carried = heads * carriedOf({ straight });
  return laborOf(
    { pieces, runLength: length, outsideLength: length, passes, joints: 0, carried, ends: 2, straight: true },
    standards,
  );
}

export interface PieceCost {
  readonly joints: number;
  readonly boardFeet: number;
  readonly wood: number;
  readonly minutes: LaborMinutes;
}

/** What a number of rings of one kind take, which need not be whole: an opening's share of the spare ones is not. */
export function ringCost(
  { ring, made, blank: { chosen }, runLength }: RingPlan,
  pieces: number,
  passes: number,
  standards: Standards,
): PieceCost {
  const joints = chosen.joints * pieces;
  return {
    joints,
    boardFeet: chosen.boardFeet * pieces,
    wood: chosen.boardFeet * pieces * chosen.price,
    minutes: laborOf(
      {
        ...{ pieces, passes, joints, carried: made.carried ? pieces : 0, straight: false },
        runLength: pieces * runLength,
        outsideLength: pieces * radians(ring.blankAngle) * ring.outside,
        ends: ring.blankAngle === 360 ? 0 : 2,
      },
      standards,
    ),
  };
}
