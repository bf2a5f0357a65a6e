import { allExtras } from '../takeoff/extras';
import { planSetups } from '../takeoff/setups';
import { sellingFactor, unitPriceOf } from '../takeoff/price';
import type { OpeningTakeoff, Takeoff } from '../takeoff/takeoff';
import { longUnit } from '../unit';
import type { Job } from './fields';
import { weeksAtMachine } from './leadTime';
import { proposalOf, type Offered, type Proposal } from './proposal';
import { openingWords } from './words';

/** The proposal of a takeoff by the rules of its job. */
export function proposalFrom(taken: Takeoff, job: Job): Proposal {
  const { standards } = taken;
  const openings = taken.openings.map((row) => offered(row, taken, job));
  const weeks = job.leadTime === 'shown' ? weeksAtMachine(machineMinutes(taken), standards.hoursPerWeek) : 0;
  return proposalOf({
    openings,
    extras: allExtras(taken).filter(({ each }) => each > 0),
    job,
    unit: standards.unit,
    weeks,
  });
}

/** Minutes of the whole job at the machine: every piece through it, and every set-up. */
function machineMinutes(taken: Takeoff): number {
  const { runMinutes, setupMinutes } = planSetups(taken);
  return runMinutes + setupMinutes;
}

function offered(row: OpeningTakeoff, { standards }: Takeoff, job: Job): Offered {
  const { no, opening, known, curve, cost, needs } = row;
  const apart = cost !== null && job.setups === 'on a line of their own' && opening.priceAgreed === null;
  const factor = sellingFactor(standards);
  const [left, right] = legsOf(row);
  const pieces = (known.quantity ?? 0) * (known.sides ?? 1);
  return {
    ...{ no, mark: opening.mark, place: opening.place, head: known.head, needs },
    legs: [left !== null, right !== null],
    words: openingWords(
      { ...known, leg: left, otherLeg: right ?? 0, rise: known.rise ?? curve?.head.rise ?? null },
      standards.unit,
    ),
    quantity: known.quantity,
    unitPrice:
      cost === null ? null : apart ? unitPriceOf(cost.cost - cost.share, known.quantity!, standards) : cost.unitPrice,
    setups: apart ? cost.share * factor : 0,
    length:
      cost === null || curve === null
        ? 0
        : (pieces * (curve.length + (left ?? 0) + (right ?? 0))) / longUnit(standards.unit),
  };
}

/** The legs that a head really stands on, left and right, by the spring line; a full circle has none, a high side may have none. */
function legsOf({ known: { leg, otherLeg }, curve }: OpeningTakeoff): [left: number | null, right: number | null] {
  const on = (side: 'left' | 'right') => curve === null || curve.legs.some((top) => top.side === side);
  return [on('left') ? leg : null, on('right') ? (otherLeg ?? leg) : null];
}
