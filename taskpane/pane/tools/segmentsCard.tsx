import { useEffect, useState } from 'preact/hooks';
import { savingWords } from '../../../src/takeoff/segmentChange';
import type { Bench } from '../deeds/bench';
import { findSegments, takeSegments, type SegmentProposals } from '../deeds/segments';
import { money } from '../format';
import type { PaneState } from '../state';

/** Where other numbers of segments cost less; what stands here is gone as soon as the plan is older than the rows. */
export function SegmentsCard({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const [found, setFound] = useState<SegmentProposals | null>(null);
  const { older, renewing } = state.plans;
  useEffect(() => setFound(null), [older, renewing]);
  const { locale } = bench.options;
  const changes = found?.savings.changes ?? [];
  return (
    <section class="card" aria-labelledby="segments-title">
      <h2 id="segments-title">Other numbers of segments</h2>
      <p>
        Segments are chosen ring by ring. With all boards planned together, fewer or more of them may cost less, gluing
        included.
      </p>
      {found === null ? (
        <button type="button" onClick={async () => setFound((await findSegments(bench)) ?? null)}>
          Look for numbers that cost less
        </button>
      ) : changes.length === 0 ? (
        <p>No other number costs less. A number that somebody wants stays.</p>
      ) : (
        <>
          <ul class="facts">
            {changes.map((change) => (
              <li key={change.nos.join()}>
                {savingWords(change)}, saves {money(change.saved, locale)}
              </li>
            ))}
          </ul>
          <p>
            All together save {money(found.savings.saved, locale)}, with the boards planned in full; each by itself is
            weighed by a quicker plan.
          </p>
          <button
            type="button"
            onClick={async () => {
              if (await takeSegments(bench, found)) setFound(null);
            }}
          >
            Write them as segments wanted
          </button>
        </>
      )}
    </section>
  );
}
