import type { Bench } from '../deeds/bench';
import { bringUpToDate, holdFactors } from '../deeds/plans';
import { PLANS_CURRENT, type Plans } from '../state';

/** How the workbook's plan stands: older than its rows, being renewed, or what the last one moved. */
export function PlanBar({ bench, plans }: { readonly bench: Bench; readonly plans: Plans }) {
  const { older, renewing, failed, moved } = plans;
  if (older === '' && moved.length === 0) return <div role="status" />;
  return (
    <div role="status" class="notice plans">
      {older !== '' && <p>{renewing ? 'Boards, set-ups and wood factors are planned again.' : older}</p>}
      {failed !== '' && <p class="needs">{failed}</p>}
      {older !== '' && !renewing && (
        <button type="button" onClick={() => bringUpToDate(bench)}>
          Bring up to date
        </button>
      )}
      {older === '' && (
        <>
          {moved.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <button type="button" onClick={() => holdFactors(bench)}>
            Hold the factors from before
          </button>
          <button type="button" class="quiet" onClick={() => bench.store.send({ type: 'plans', plans: PLANS_CURRENT })}>
            All right
          </button>
        </>
      )}
    </div>
  );
}
