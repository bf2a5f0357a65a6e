import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { wantedBy } from '../../src/takeoff/segmentChange';
import { segmentSavings, withSegments } from '../../src/takeoff/segmentSavings';
import { takeoff, type Takeoff } from '../../src/takeoff/takeoff';
import { generatedJob } from './generatedJob';

const STANDARDS = defaultStandards();
/** Five openings, one of which glues up cheaper out of four segments than out of two. */
const JOB = takeoff(generatedJob(5, 5), STANDARDS);

/** What a job costs, as its rows say. */
function costOf(taken: Takeoff): number {
  return taken.openings.reduce((sum, { cost }) => sum + (cost?.cost ?? 0), 0);
}

describe('other numbers of segments', () => {
  const steps: (readonly [done: number, of: number])[] = [];
  const savings = segmentSavings(JOB, {}, (done, of) => steps.push([done, of]));
  const changed = withSegments(JOB, wantedBy(savings.changes));

  it('save what they say: the job planned and priced with them costs that much less', () => {
    expect(savings.changes.length).toBeGreaterThan(0);
    expect(savings.saved).toBeGreaterThanOrEqual(0.5);
    const before = costOf(planTakeoff(JOB).taken);
    expect(before - costOf(planTakeoff(changed).taken)).toBeCloseTo(savings.saved, 6);
  });

  it('tell each plan before it is made, and at most how many there are', () => {
    expect(steps.map(([done]) => done)).toEqual(steps.map((_, at) => at));
    expect(steps.every(([done, of]) => done < of)).toBe(true);
    expect(steps.length).toBeGreaterThan(3);
  });

  it('are written as segments wanted of just these openings, as if somebody had typed them', () => {
    const wanted = wantedBy(savings.changes);
    changed.openings.forEach(({ no, cells, own, opening }, at) => {
      const before = JOB.openings[at]!;
      expect(cells.segmentsWanted).toBe(wanted.get(no) ?? before.cells.segmentsWanted);
      if (!wanted.has(no)) return;
      expect(own!.crown!.blank.chosen.segments).toBe(wanted.get(no));
      expect(opening.listed!.segmentsWanted).toBe(null);
    });
  });

  it('are not proposed for a ring that somebody wants otherwise', () => {
    const nos = new Set(savings.changes.flatMap((change) => change.nos));
    const kept = new Map(
      JOB.openings.flatMap(({ no, own }) => (nos.has(no) ? [[no, own!.crown!.blank.chosen.segments] as const] : [])),
    );
    for (const change of segmentSavings(withSegments(JOB, kept)).changes)
      for (const no of change.nos) expect(nos.has(no)).toBe(false);
  });

  it('are none where there is nothing to save', () => {
    expect(segmentSavings(takeoff([], STANDARDS))).toEqual({ changes: [], saved: 0 });
  });
});
