import { knifeListed } from '../onHand';
import type { Standards } from '../standards';
import { guideSetsOf, type GuideSets } from './guideSets';
import type { Inputs } from './inputs';
import { laborMoney } from './labor';
import { headsOf, ringCost } from './ownCost';
import type { OwnFigures, RingPlan } from './ownFigures';

/** An opening's part of what several need together: knives, guides, set-ups, spare and test pieces. */
export interface Share extends SharedMoney {
  readonly no: number;
  /** The parts below together. */
  readonly money: number;
  /** Board-foot money of the wood of spare and test pieces, before waste. */
  readonly wood: number;
}

/** Money for what is shared. */
export interface SharedMoney {
  /** Grinding knives that the shop doesn't own. */
  readonly knives: number;
  /** Making guides that it doesn't own. */
  readonly guides: number;
  /** Changing knives and guides. */
  readonly settingUp: number;
  /** The work on spare pieces. */
  readonly spares: number;
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
  /** Whether guides have to be made. */
  readonly toMake: boolean;
}

/**
 * Each opening's share, by ascending number. A knife and its change are borne by the heads it cuts, a guide change with its guides,
 * spare and test pieces by the pieces that go through it. The same openings have the same shares in whatever order they are given.
 */
export function sharesOf(openings: readonly Sharer[], standards: Standards): Share[] {
  const { shopRate, benchRate, knifeChange, guideChange, guideMinutes, guideMaterial } = standards;
  const sharers = [...openings].sort((one, other) => one.no - other.no);
  const sets = guideSetsOf(sharers, standards);
  const setups = piecesBySetup(sharers, sets);
  const knives = new Map<string, number>();
  for (const { own, inputs } of sharers) count(knives, own.knife, headsOf(inputs));
  return sharers.map((sharer) => {
    const { own, inputs, no } = sharer;
    const heads = headsOf(inputs);
    const ofKnife = heads / (knives.get(own.knife.toLowerCase()) ?? heads);
    const shared = {
      knives: ofKnife * knifeCharge(inputs, standards),
      guides: 0,
      settingUp: ofKnife * (knifeChange / 60) * shopRate,
      spares: 0,
    };
    let wood = 0;
    for (const { name, pieces, plan, toMake } of usesOf(sharer, sets)) {
      const part = pieces / (setups.get(name.toLowerCase()) ?? pieces);
      shared.settingUp += part * (guideChange / 60) * shopRate;
      if (toMake) shared.guides += part * ((guideMinutes / 60) * benchRate + guideMaterial);
      wood += part * own.testBoardFeet * own.ripPrice;
      if (plan === null) continue;
      const spares = ringCost(plan, part * standards.sparePieces, own.passes, standards);
      shared.spares += laborMoney(spares.minutes, standards);
      wood += spares.wood;
    }
    return { no, money: shared.knives + shared.guides + shared.settingUp + shared.spares, wood, ...shared };
  });
}

/** What a knife costs: nothing where the shop has it, the charge that a new one names, or the shop's usual one. */
function knifeCharge(inputs: Inputs, { onHand, knifeGrinding }: Standards): number {
  const { owned, charge } = knifeListed(inputs, onHand);
  return owned ? 0 : (charge ?? knifeGrinding);
}

/** Pieces through each set-up, by its name in lower case: names are alike whatever their letter case, as in a sheet. */
export function piecesBySetup(sharers: readonly Sharer[], sets: GuideSets): ReadonlyMap<string, number> {
  const setups = new Map<string, number>();
  for (const sharer of sharers) for (const { name, pieces } of usesOf(sharer, sets)) count(setups, name, pieces);
  return setups;
}

function count(to: Map<string, number>, name: string, more: number): void {
  to.set(name.toLowerCase(), (to.get(name.toLowerCase()) ?? 0) + more);
}

function usesOf({ own, inputs }: Sharer, sets: GuideSets): Use[] {
  const heads = headsOf(inputs);
  const rings = own.rings.map((plan): Use => {
    const { name, owned } = sets(inputs, plan);
    return { name, pieces: heads * plan.ring.count, plan, toMake: !owned };
  });
  if (own.straight === null) return rings;
  return [...rings, { name: own.straight.setup, pieces: heads * own.straight.count, plan: null, toMake: false }];
}
