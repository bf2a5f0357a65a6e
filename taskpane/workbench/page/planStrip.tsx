import { useEffect, useState } from 'preact/hooks';
import { PLANS_CURRENT, type Plans } from '../../pane/state';
import { createStore, type Store } from '../../pane/store';

/** How the workbook's plan stands, and the way to make it anew. */
export interface PlanNews {
  readonly plans: Plans;
  readonly bringUpToDate: () => void;
}

export function planNews(): Store<PlanNews, PlanNews> {
  return createStore<PlanNews, PlanNews>((_before, now) => now, {
    plans: PLANS_CURRENT,
    bringUpToDate: () => undefined,
  });
}

/** Over the sheet, also where the pane is put away: boards and set-ups are older than the rows, with the button for it. */
export function PlanStrip({ news }: { readonly news: Store<PlanNews, PlanNews> }) {
  const [{ plans, bringUpToDate }, setNews] = useState(news.get());
  useEffect(() => news.listen(() => setNews(news.get())), [news]);
  const { older, renewing, failed } = plans;
  const waits = older !== '' && !renewing;
  return (
    <div class={waits ? 'wb-offer' : 'wb-hidden'} role="status" aria-label="Boards and set-ups">
      {waits && (
        <>
          <p>
            {older} {failed}
          </p>
          <button type="button" onClick={bringUpToDate}>
            Bring up to date
          </button>
        </>
      )}
    </div>
  );
}
