import { useState } from 'preact/hooks';
import type { Revision } from '../../../src/revision/compare';
import { figureLabel, priceText, valueText } from '../../../src/revision/words';
import type { Bench } from '../deeds/bench';
import {
  reviseByFile,
  reviseBySelection,
  reviseBySheet,
  reviseByText,
  takeOver,
  tellApart,
  writeRevision,
} from '../deeds/revision';
import { count } from '../format';
import { Ask } from '../parts/ask';
import { FilePick } from '../parts/filePick';
import { PasteBox } from '../parts/pasteBox';
import { SheetChoice } from '../parts/sheetChoice';
import type { PaneState, Revised } from '../state';

/** Rows of each kind that are listed here; the Revision sheet has them all. */
const MOST_LISTED = 50;

/** A revised list against the takeoff at hand. */
export function RevisionTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  return (
    <section class="card" aria-labelledby="revision-title">
      <h2 id="revision-title">Revised list</h2>
      <p>
        Openings are known by mark and figures, wherever their rows stand now; those of a Takeoff of ours by their
        numbers.
      </p>
      <div class="pair">
        <button type="button" onClick={() => reviseBySelection(bench)}>
          Compare the selected cells
        </button>
        <FilePick
          label="Compare a file"
          accept=".csv,.tsv,.txt,.xlsx,.pdf"
          take={(file) => void reviseByFile(bench, file)}
        />
      </div>
      <SheetChoice bench={bench} names={state.sheetNames} read={(name) => reviseBySheet(bench, name)} />
      <PasteBox id="paste-revised" yes="Compare the pasted rows" take={(text) => reviseByText(bench, text)} />
      {state.revised && <Changes bench={bench} revised={state.revised} />}
    </section>
  );
}

function Changes({
  bench,
  revised: { schedule, revision, numbered, said, before },
}: {
  readonly bench: Bench;
  readonly revised: Revised;
}) {
  const [asking, setAsking] = useState(false);
  const write = async (replace: boolean) => setAsking(await writeRevision(bench, replace));
  const { added, dropped, renamed, changed, unchanged } = revision;
  const { unit } = before.standards;
  return (
    <>
      <h3>{schedule.name}</h3>
      <p role="status">
        {numbered ? 'Known by their numbers: ' : ''}
        {count(added.length, 'opening')} added, {dropped.length} dropped, {changed.length} changed, {renamed.length}{' '}
        renamed, {unchanged.length} unchanged.
      </p>
      <ul class="facts">
        {added.slice(0, MOST_LISTED).map((one, at) => (
          <li key={`added ${at}`}>
            {one.mark || 'No mark'}: added, {priceText(one, false, money)}
          </li>
        ))}
        {dropped.slice(0, MOST_LISTED).map((one, at) => (
          <li key={`dropped ${at}`}>
            {one.mark || 'No mark'}: dropped, {priceText(one, true, money)}
          </li>
        ))}
        {changed.slice(0, MOST_LISTED).map(({ new: now, figures, money: moved }, at) => (
          <li key={`changed ${at}`}>
            {now.mark || 'No mark'}:{' '}
            {figures
              .map(
                ({ figure, from, to }) =>
                  `${figureLabel(figure)} ${valueText(figure, from, unit)} to ${valueText(figure, to, unit)}`,
              )
              .join(', ')}
            , {money(moved)}
          </li>
        ))}
        {renamed.slice(0, MOST_LISTED).map(({ old, new: now, asked }, at) => (
          <li key={`renamed ${at}`}>
            {old.mark || 'No mark'} is {now.mark || 'No mark'} now{asked ? ': the same figures. ' : '. '}
            {asked && (
              <button type="button" onClick={() => tellApart(bench, old.mark, now.mark)}>
                They are two openings
              </button>
            )}
          </li>
        ))}
      </ul>
      {said.length > 0 && (
        <details>
          <summary>{count(said.length, 'change')} made by hand in the workbook</summary>
          <ul class="facts">
            {said.slice(0, MOST_LISTED).map((one, at) => (
              <li key={at}>{one}</li>
            ))}
          </ul>
        </details>
      )}
      <Money revision={revision} />
      {asking ? (
        <Ask
          askedBy="write-revision"
          title="This workbook already has a Revision"
          about="Writing again replaces it."
          yes="Write over"
          no="Leave as it is"
          onYes={() => write(true)}
          onNo={() => setAsking(false)}
        />
      ) : (
        <div class="pair">
          <button id="write-revision" type="button" onClick={() => write(false)}>
            Write it to the Revision sheet
          </button>
          <button type="button" onClick={() => takeOver(bench)}>
            Take it over
          </button>
        </div>
      )}
    </>
  );
}

function Money({ revision: { shared, total } }: { readonly revision: Revision }) {
  return (
    <p>
      {total.old.toFixed(2)} before, {total.new.toFixed(2)} now. Openings as they were bear {money(shared)} of knives,
      guides, set-ups and boards.
    </p>
  );
}

function money(amount: number): string {
  return `${amount < 0 ? '−' : '+'}${Math.abs(amount).toFixed(2)}`;
}
