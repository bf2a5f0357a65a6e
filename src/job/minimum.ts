import { addUp, toCents } from '../rounding';
import { allExtras, extrasTotal } from '../takeoff/extras';
import type { Takeoff } from '../takeoff/takeoff';
import type { Job } from './fields';

/** A job's minimum charge beside what its openings, extras and other lines come to, in whole cents. */
export interface JobMinimum {
  readonly charge: number;
  /** What is short of it; 0 where nothing is. */
  readonly short: number;
  /** Openings, extras and other lines with what is short. */
  readonly total: number;
  /** Of that, the job's other lines, which the Takeoff doesn't have. */
  readonly otherLines: number;
  /** The Proposal adds or takes off more before it asks what is short: set-ups apart, a finish, a discount, alternates. */
  readonly moreOnProposal: boolean;
}

/** Null where the job has no minimum charge. Example: openings of 180.00 and a minimum of 250.00: 70.00 short, 250.00 in all. */
export function jobMinimum(taken: Takeoff, job: Job): JobMinimum | null {
  if (!(job.minimum > 0)) return null;
  const otherLines = addUp(job.extras.map(({ quantity, unitPrice }) => toCents(quantity * unitPrice)));
  const lines = addUp([taken.totals.price, extrasTotal(allExtras(taken)) ?? 0, otherLines]);
  const short = Math.max(0, addUp([job.minimum, -lines]));
  return {
    ...{ charge: job.minimum, short, total: addUp([lines, short]), otherLines },
    moreOnProposal:
      job.setups !== 'in the prices' || job.finishRate > 0 || job.discount > 0 || job.alternates.length > 0,
  };
}
