import type { Notice, Work } from '../state';

/** What the pane has to say, read out when it changes. Both regions stay in the page: a reader only follows old ones. */
export function NoticeBar({ notice, dismiss }: { readonly notice: Notice | null; readonly dismiss: () => void }) {
  return (
    <div class="notices">
      <div role="alert">{notice?.tone === 'error' && <Said notice={notice} dismiss={dismiss} />}</div>
      <div role="status">{notice?.tone === 'done' && <Said notice={notice} dismiss={dismiss} />}</div>
    </div>
  );
}

function Said({ notice, dismiss }: { readonly notice: Notice; readonly dismiss: () => void }) {
  return (
    <p class={`notice ${notice.tone}`}>
      <span>{notice.text}</span>
      <button type="button" class="quiet" onClick={dismiss}>
        Close<span class="hidden"> this message</span>
      </button>
    </p>
  );
}

/** How far the work is, with the way to stop it. Read out at each tenth only, not at every row. */
export function WorkBar({ work, stop }: { readonly work: Work | null; readonly stop: () => void }) {
  const tenths = work && work.of ? Math.floor((work.done / work.of) * 10) * 10 : null;
  return (
    <div class="work">
      {work && (
        <div class="work-row">
          <label for="work-progress">
            {work.what}
            {work.of !== null && (
              <span class="count">
                {' '}
                {work.done.toLocaleString()} of {work.of.toLocaleString()}
              </span>
            )}
          </label>
          {work.canStop && (
            <button type="button" onClick={stop}>
              Stop
            </button>
          )}
          {work.of === null ? (
            <progress id="work-progress" />
          ) : (
            <progress id="work-progress" max={work.of} value={work.done} />
          )}
        </div>
      )}
      <p class="hidden" role="status">
        {work && (tenths === null ? work.what : `${work.what} ${tenths} percent.`)}
      </p>
    </div>
  );
}
