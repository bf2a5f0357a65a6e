import { knifeListed } from '../onHand';
import type { Standards } from '../standards';
import { guideSetsOf, type GuideSets } from './guideSets';
import type { Inputs } from './inputs';
import { laborMoney } from './labor';
import { headsOf, ringCost, type PieceCost } from './ownCost';
import type { OwnFigures, RingPlan } from './ownFigures';

/** An opening's part of what several need together: knives, guides, set-ups, spare and test pieces. */
export interface Share extends SharedMoney {
  readonly no: number;
  /** The parts below together. */
  readonly money: number;
  /** Board-foot money of the wood of spare and test pieces, before waste. */
  readonly wood: number;
}

/** A charge that several openings bear together: by the heads that a knife cuts, by the pieces that go through a set-up, or by both. */
export interface SharedCharge {
  readonly name: string;
  /** Money for one knife. */
  readonly ofKnife?: (inputs: Inputs, standards: Standards) => number;
  /** Money for one set-up, with guides or straight. */
  readonly ofSetup?: (use: Use, own: OwnFigures, standards: Standards) => number;
}

/** Every such charge, once: shares, kinds of cost and explanations follow, and its plain formula is asked for (`workbook/working/price.ts`). */
export const SHARED = {
  knives: { name: 'New knives', ofKnife: knifeCharge },
  guides: {
    name: 'Guides made',
    ofSetup: ({ toMake }, _, { guideMinutes, guideMaterial, benchRate }) =>
      toMake ? (guideMinutes / 60) * benchRate + guideMaterial : 0,
  },
  settingUp: {
    name: 'Changing knives and guides',
    ofKnife: (_, { knifeChange, shopRate }) => (knifeChange / 60) * shopRate,
    ofSetup: (_, __, { guideChange, shopRate }) => (guideChange / 60) * shopRate,
  },
  spares: {
    name: 'Work on spare pieces',
    ofSetup: ({ plan }, own, standards) => (plan ? laborMoney(sparesOf(plan, own, standards).minutes, standards) : 0),
  },
} as const satisfies Readonly<Record<string, SharedCharge>>;

export type SharedKind = keyof typeof SHARED;
/** Money for each. */
export type SharedMoney = Readonly<Record<SharedKind, number>>;
export const SHARED_CHARGES = Object.entries(SHARED) as readonly [SharedKind, SharedCharge][];

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
  const sharers = [...openings].sort((one, other) => one.no - other.no);
  const sets = guideSetsOf(sharers, standards);
  const setups = piecesBySetup(sharers, sets);
  const knives = new Map<string, number>();
  for (const { own, inputs } of sharers) count(knives, own.knife, headsOf(inputs));
  return sharers.map((sharer) => {
    const { own, inputs, no } = sharer;
    const heads = headsOf(inputs);
    const ofKnife = heads / (knives.get(own.knife.toLowerCase()) ?? heads);
    const uses = usesOf(sharer, sets).map((use) => {
      return { use, part: use.pieces / (setups.get(use.name.toLowerCase()) ?? use.pieces) };
    });
    const charges = SHARED_CHARGES.map(([kind, charge]) => {
      const knife = ofKnife * (charge.ofKnife?.(inputs, standards) ?? 0);
      return [
        kind,
        uses.reduce((sum, { use, part }) => sum + part * (charge.ofSetup?.(use, own, standards) ?? 0), knife),
      ];
    });
    const shared = Object.fromEntries(charges) as SharedMoney;
    const wood = uses.reduce(
      (sum, { use: { plan }, part }) =>
        sum + part * (own.testBoardFeet * own.ripPrice + (plan ? sparesOf(plan, own, standards).wood : 0)),
      0,
    );
    return { no, money: SHARED_CHARGES.reduce((sum, [kind]) => sum + shared[kind], 0), wood, ...shared };
  });
}

/** The spare pieces of one guide set. */
function sparesOf(plan: RingPlan, { passes }: OwnFigures, standards: Standards): PieceCost {
  return ringCost(plan, standards.sparePieces, passes, standards);
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
