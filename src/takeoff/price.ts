import type { Standards } from '../standards';
import { longUnit, perFootPerMinute, perInch } from '../unit';
import type { Inputs } from './inputs';
import { toCents } from '../rounding';
import type { OwnFigures, RingPlan } from './ownFigures';
import type { Shares } from './shares';

/** What an opening costs, for its whole quantity. Money unless said. */
export interface Cost {
  /** Pieces run, with this opening's share of the spare ones. */
  readonly crownPieces: number;
  readonly haunchPieces: number;
  readonly straightPieces: number;
  readonly joints: number;
  /** Board feet of straight pieces and of the share of test pieces. */
  readonly straightFeet: number;
  /** Blanks, straight stock and the share of test pieces, without waste. */
  readonly boardFeet: number;
  readonly runMinutes: number;
  /** Running, gluing, sawing and sanding. */
  readonly laborMinutes: number;
  /** Set-ups borne: 1 where the opening is alone in its guide set. */
  readonly guideSetups: number;
  readonly straightSetups: number;
  readonly material: number;
  readonly labor: number;
  readonly knifeShare: number;
  readonly setupShare: number;
  readonly cost: number;
  /** One opening, in whole cents. */
  readonly unitPrice: number;
  readonly price: number;
}

export function priceOf(inputs: Inputs, own: OwnFigures, shares: Shares, standards: Standards): Cost {
  const { quantity } = inputs;
  const inch = perInch(standards.unit);
  const feed = standards.feed / perFootPerMinute(standards.unit);
  const setupTotal = (key: string) => shares.setups.get(key.toLowerCase()) ?? 0;

  const heads = (plan: RingPlan | null) => (plan ? quantity * plan.ring.count : 0);
  const share = (plan: RingPlan | null) => (plan ? heads(plan) / setupTotal(plan.guide) : 0);
  const withSpares = (plan: RingPlan | null) => heads(plan) + share(plan) * standards.sparePieces;
  const crownPieces = withSpares(own.crown);
  const haunchPieces = withSpares(own.haunch);
  const straightPieces = own.straight ? quantity * own.straight.count : 0;
  const guideSetups = share(own.crown) + share(own.haunch);
  const straightSetups = own.straight ? straightPieces / setupTotal(own.straight.setup) : 0;

  const rings = [
    { plan: own.crown, pieces: crownPieces },
    { plan: own.haunch, pieces: haunchPieces },
  ].flatMap(({ plan, pieces }) => (plan ? [{ plan, pieces }] : []));
  const sum = (of: (plan: RingPlan, pieces: number) => number) =>
    rings.reduce((total, { plan, pieces }) => total + of(plan, pieces), 0);

  const arcsPerHead = (own.crown?.ring.count ?? 0) + (own.haunch?.ring.count ?? 0);
  const joints = sum((plan, pieces) => plan.blank.chosen.joints * pieces) + quantity * Math.max(0, arcsPerHead - 1);

  const straightFeet =
    (own.straight ? own.straight.boardFeet * quantity : 0) + own.testBoardFeet * (guideSetups + straightSetups);
  const boardFeet = sum((plan, pieces) => plan.blank.chosen.boardFeet * pieces) + straightFeet;
  const wood =
    sum((plan, pieces) => plan.blank.chosen.boardFeet * pieces * plan.blank.chosen.price) + straightFeet * own.ripPrice;

  const straightLength = own.straight ? own.straight.length * quantity : 0;
  const minutesPerLength = own.passes / inch / (12 * feed);
  const runMinutes =
    sum((plan, pieces) => pieces * (plan.runLength * minutesPerLength + standards.handling)) +
    straightLength * minutesPerLength +
    straightPieces * standards.handling;
  const curvedLength = sum((plan, pieces) => (pieces * plan.ring.blankAngle * Math.PI * plan.ring.outside) / 180);
  const laborMinutes =
    runMinutes +
    joints * standards.jointMinutes +
    (curvedLength * (standards.sawMinutes + standards.sandMinutes) + straightLength * standards.sandMinutes) /
      longUnit(standards.unit);

  const material = wood * (1 + standards.waste);
  const labor = (laborMinutes / 60) * standards.shopRate;
  const knifeShare = (standards.knifeGrinding * quantity) / (shares.knives.get(own.knife.toLowerCase()) ?? quantity);
  const setupShare =
    guideSetups *
      (((standards.guideMinutes + standards.setupMinutes) / 60) * standards.shopRate + standards.guideMaterial) +
    straightSetups * (standards.setupMinutes / 60) * standards.shopRate;
  const cost = material + labor + knifeShare + setupShare;
  const sold = standards.pricing === 'markup' ? cost * (1 + standards.pricingRate) : cost / (1 - standards.pricingRate);
  const unitPrice = toCents(sold / quantity);
  return {
    crownPieces,
    haunchPieces,
    straightPieces,
    joints,
    straightFeet,
    boardFeet,
    runMinutes,
    laborMinutes,
    guideSetups,
    straightSetups,
    material,
    labor,
    knifeShare,
    setupShare,
    cost,
    unitPrice,
    price: toCents(unitPrice * quantity),
  };
}
