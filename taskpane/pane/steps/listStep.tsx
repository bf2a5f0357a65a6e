import {
  MOST_MEGABYTES,
  takeExample,
  takeFile,
  takeOneOf,
  takePartlyHidden,
  takeSelection,
  takeSheet,
  takeText,
} from '../deeds/chooseList';
import type { Bench } from '../deeds/bench';
import { Ask } from '../parts/ask';
import { count } from '../format';
import { DropCard } from '../parts/dropCard';
import { FilePick } from '../parts/filePick';
import { PasteBox } from '../parts/pasteBox';
import { SheetChoice } from '../parts/sheetChoice';
import type { PaneState } from '../state';
import { PdfStep } from './pdfStep';

const KINDS = '.csv,.tsv,.txt,.xlsx,.pdf';

/** Where the builder's schedule comes from. */
export function ListStep({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  if (state.pdf !== null) return <PdfStep bench={bench} pdf={state.pdf} />;
  if (state.tables.length > 1) return <ChooseTable bench={bench} state={state} />;
  return (
    <>
      <h1>Where is the builder’s schedule?</h1>
      {state.firstUse && (
        <section class="card example" aria-labelledby="example-title">
          <h2 id="example-title">First time here?</h2>
          <p>Take off a made-up schedule and see every sheet filled. Nothing of yours is touched.</p>
          <button type="button" class="main" onClick={() => takeExample(bench)}>
            Open the example
          </button>
        </section>
      )}
      <section class="card" aria-labelledby="here-title">
        <h2 id="here-title">In this workbook</h2>
        <p>Click any cell of the list, or select just the rows you want.</p>
        <button type="button" class={state.firstUse ? '' : 'main'} onClick={() => takeSelection(bench)}>
          Read the selected cells
        </button>
        {state.partlyHidden && (
          <Ask
            title={`${count(state.partlyHidden.hiddenRows?.length ?? 0, 'selected row')} hidden`}
            about={`A filter hides them, or somebody has: ${listed(state.partlyHidden.hiddenRows ?? [])}.`}
            yes="Read only the rows shown"
            no="Read all of them"
            onYes={() => takePartlyHidden(bench, false)}
            onNo={() => takePartlyHidden(bench, true)}
          />
        )}
        <SheetChoice bench={bench} names={state.sheetNames} read={(name) => void takeSheet(bench, name)} />
      </section>
      <FileChoice bench={bench} />
      <PasteChoice bench={bench} />
    </>
  );
}

const MOST_LISTED = 8;

/** "row 7", "rows 7, 9 and 12 more". */
function listed(rows: readonly number[]): string {
  const first = rows.slice(0, MOST_LISTED).join(', ');
  const more = rows.length - MOST_LISTED;
  return `${rows.length === 1 ? 'row' : 'rows'} ${first}${more > 0 ? ` and ${more} more` : ''}`;
}

function FileChoice({ bench }: { readonly bench: Bench }) {
  return (
    <DropCard labelledBy="file-title" take={(file) => void takeFile(bench, file)}>
      <h2 id="file-title">In a file</h2>
      <p>
        Excel (.xlsx), text (.csv, .tsv) or a PDF with a schedule on it, up to {MOST_MEGABYTES} MB. It stays on this
        computer.
      </p>
      <FilePick label="Choose a file, or drop it here" accept={KINDS} take={(file) => void takeFile(bench, file)} />
    </DropCard>
  );
}

function PasteChoice({ bench }: { readonly bench: Bench }) {
  return (
    <section class="card" aria-labelledby="paste-title">
      <h2 id="paste-title">On the clipboard</h2>
      <PasteBox id="paste" yes="Read the pasted rows" take={(text) => takeText(bench, text)} />
    </section>
  );
}

function ChooseTable({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  return (
    <>
      <h1>Which one is the schedule?</h1>
      <p>The file holds {state.tables.length} sheets.</p>
      <ul class="plain">
        {state.tables.map((table, index) => (
          <li key={index}>
            <button type="button" class="wide" onClick={() => takeOneOf(bench, table)}>
              <strong>{table.name}</strong>
              <span class="soft">{table.rows.length.toLocaleString()} rows</span>
            </button>
          </li>
        ))}
      </ul>
      <button type="button" class="quiet" onClick={() => bench.store.send({ type: 'tables found', tables: [] })}>
        Choose something else
      </button>
    </>
  );
}
