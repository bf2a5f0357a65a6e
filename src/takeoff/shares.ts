import type { OnHand } from '../onHand';
import type { Standards } from '../standards';
import type { Inputs } from './inputs';
import { headsOf, ringCost } from './ownCost';
import type { OwnFigures, RingPlan } from './ownFigures';

/** An opening's part of what several need together: knives, guides, set-ups, spare and test pieces. */
export interface Share {
  readonly no: number;
  /** Money for knives, guides and set-ups, and for making spare pieces. */
  readonly money: number;
  /** Board-foot money of the wood of spare and test pieces, before waste. */
  readonly wood: number;
}

export interface Sharer {
  readonly no: number;
  readonly inputs: Inputs;
  readonly own: OwnFigures;
}

/** Pieces that one opening sends through a set-up. */
interface Use {
  readonly name: string;
  readonly pieces: number;
  /** Null: straight pieces. */
  readonly plan: RingPlan | null;
}

/**
 * Each opening's share, by ascending number. A knife is borne by the heads it cuts, a set-up with its guides, spare and test
 * pieces by the pieces that go through it. The same openings have the same shares in whatever order they are given.
 */
export function sharesOf(openings: readonly Sharer[], standards: Standards): Share[] {
  const sharers = [...openings].sort((one, other) => one.no - other.no);
  const setups = piecesBySetup(sharers);
  const knives = new Map<string, number>();
  for (const { own, inputs } of sharers) count(knives, own.knife, headsOf(inputs));
  return sharers.map((sharer) => {
    const { own, inputs, no } = sharer;
    const heads = headsOf(inputs);
    const knife = owns('knife', inputs, null, standards) ? 0 : standards.knifeGrinding;
    let money = (knife * heads) / (knives.get(own.knife.toLowerCase()) ?? heads);
    let wood = 0;
    for (const { name, pieces, plan } of usesOf(sharer)) {
      const part = pieces / (setups.get(name.toLowerCase()) ?? pieces);
      const toMake = plan !== null && !owns('guides', inputs, plan.ring.inside, standards);
      money += part * setupMoney(toMake, standards);
      wood += part * own.testBoardFeet * own.ripPrice;
      if (plan === null) continue;
      const spares = ringCost(plan, part * standards.sparePieces, own.passes, standards);
      money += (spares.laborMinutes / 60) * standards.shopRate;
      wood += spares.wood;
    }
    return { no, money, wood };
  });
}

/** Setting up once, and making the guides where they are not there yet. */
function setupMoney(toMake: boolean, { guideMinutes, setupMinutes, shopRate, guideMaterial }: Standards): number {
  const minutes = setupMinutes + (toMake ? guideMinutes : 0);
  return (minutes / 60) * shopRate + (toMake ? guideMaterial : 0);
}

/** Sizes this close are the same knife or the same guides: what names tell apart, to a thousandth. */
const SAME = 0.0005;

/** Whether the shop has this knife, or guides for this inside radius, on hand. */
export function owns(
  kind: OnHand['kind'],
  inputs: Pick<Inputs, 'profile' | 'face' | 'thickness'>,
  insideRadius: number | null,
  { onHand }: Pick<Standards, 'onHand'>,
): boolean {
  const near = (one: number | null, other: number | null) =>
    one === null || other === null || Math.abs(one - other) <= SAME;
  return onHand.some(
    (each) =>
      each.kind === kind &&
      each.profile.toLowerCase() === inputs.profile.toLowerCase() &&
      near(each.face, inputs.face) &&
      near(each.thickness, inputs.thickness) &&
      near(each.insideRadius, insideRadius),
  );
}

/** Pieces through each set-up, by its name in lower case: names are alike whatever their letter case, as in a sheet. */
export function piecesBySetup(sharers: readonly Sharer[]): ReadonlyMap<string, number> {
  const setups = new Map<string, number>();
  for (const sharer of sharers) for (const { name, pieces } of usesOf(sharer)) count(setups, name, pieces);
  return setups;
}

function count(to: Map<string, number>, name: string, more: number): void {
  to.set(name.toLowerCase(), (to.get(name.toLowerCase()) ?? 0) + more);
}

function usesOf({ own, inputs }: Sharer): Use[] {
  const heads = headsOf(inputs);
  return [
    ...own.rings.map((plan) => ({ name: plan.guide, pieces: heads * plan.ring.count, plan })),
    ...(own.straight ? [{ name: own.straight.setup, pieces: heads * own.straight.count, plan: null }] : []),
  ];
}
