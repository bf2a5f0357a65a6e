import type { DrawingPage } from '../../pane/deeds/bench';
import { Dialog } from './dialogs';

/** Drawings as pages of paper, one each: looked at, printed. */
export function PrintDrawings(props: { readonly pages: readonly DrawingPage[]; readonly close: () => void }) {
  const { pages, close } = props;
  return (
    <Dialog title="Print" wide close={close}>
      <div class="wb-row wb-screen">
        <button type="button" onClick={() => print()}>
          Print {pages.length === 1 ? 'this page' : `these ${pages.length} pages`}
        </button>
        <button type="button" onClick={close}>
          Close
        </button>
      </div>
      <div class="wb-paper" tabIndex={0} role="region" aria-label="Preview">
        {pages.map(({ caption, svg }) => (
          <section key={caption} class="wb-sheet across wb-drawn" aria-label={caption}>
            {/* Written by our own drawing code, with every text in it escaped. */}
            <div dangerouslySetInnerHTML={{ __html: svg }} />
            <p class="wb-foot">{caption}. Fitted to the page, not to scale: to cut by, save the drawing.</p>
          </section>
        ))}
      </div>
    </Dialog>
  );
}
