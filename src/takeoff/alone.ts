import { addUp } from '../rounding';
import type { Opening } from '../schedule/opening';
import type { Standards } from '../standards';
import type { HeldFactors } from './factors';
import { planTakeoff } from './planned';
import type { Row } from './row';
import { takeoff, type OpeningTakeoff, type Takeoff } from './takeoff';

/** A job's rows, and one of them. Plain data, so that a worker can be handed it. */
export interface AloneJob {
  readonly openings: readonly Opening[];
  readonly cells: readonly Row[];
  readonly standards: Standards;
  /** Place of the opening, from 0. */
  readonly at: number;
  /** Wood factors of the job that are held, whatever its plan. */
  readonly held?: HeldFactors;
}

/** What an opening means to its job. Money, as sold. */
export interface Alone {
  /** Its price as the only opening of a job, whole quantity; null: it needs something. */
  readonly price: number | null;
  /** What the job saves without it: its price with the opening, less that of the others by themselves. */
  readonly saved: number;
}

/** The price of an opening as the only one of its job, boards planned for it alone; null where it needs something. */
function alonePrice(opening: Opening, cells: Row, standards: Standards): number | null {
  const { taken } = planTakeoff(takeoff([opening], standards, { cells: [cells] }));
  return taken.openings[0]!.cost?.price ?? null;
}

/**
 * What the opening would cost alone, and what the job saves without it: boards are planned anew for each. A factor that is held is
 * the job's, with and without the opening; alone it is another job.
 */
export function aloneAndWithout({ openings, cells, standards, at, held }: AloneJob): Alone {
  const job = (left: (place: number) => boolean) =>
    planTakeoff(
      takeoff(
        openings.filter((_, place) => left(place)),
        standards,
        { cells: cells.filter((_, place) => left(place)) },
      ),
      {},
      held,
    ).taken.totals.price;
  const whole = job(() => true);
  const others = job((place) => place !== at);
  return {
    price: alonePrice(openings[at]!, cells[at]!, standards),
    saved: addUp([whole, -others]),
  };
}

/** The same for the openings of a takeoff; those that are alike in everything are planned once. */
export function aloneIn({ standards }: Takeoff): (row: OpeningTakeoff) => number | null {
  const found = new Map<string, number | null>();
  return ({ opening, cells }) => {
    const key = JSON.stringify([cells, opening.priceAgreed]);
    if (!found.has(key)) found.set(key, alonePrice(opening, cells, standards));
    return found.get(key)!;
  };
}
