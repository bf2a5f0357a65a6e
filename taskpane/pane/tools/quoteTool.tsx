import { useEffect, useState } from 'preact/hooks';
import { checkFile, checkSelection, checkSheet, checkText } from '../deeds/checkQuote';
import type { Bench } from '../deeds/bench';
import { count } from '../format';
import { DropCard } from '../parts/dropCard';
import { FilePick } from '../parts/filePick';
import { PasteBox } from '../parts/pasteBox';
import { SheetChoice } from '../parts/sheetChoice';
import type { PaneState } from '../state';
import type { QuoteColumns } from './quoteColumns';
import type { QuoteVerdicts } from './quoteVerdicts';

/** What is shown of a quote that was read; loaded with the first one. */
interface Found {
  readonly QuoteColumns: typeof QuoteColumns;
  readonly QuoteVerdicts: typeof QuoteVerdicts;
}

/** A quote, one of our own or one received, against the takeoff of the chosen list. */
export function QuoteTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const { schedule, quote, quoteTable } = state;
  const found = useFound(quoteTable !== null);
  if (!schedule) {
    return (
      <>
        <h1>Check a quote</h1>
        <p>A quote is checked against the takeoff, line by line. Choose the list of openings first.</p>
        <button type="button" class="main fit" onClick={() => bench.store.send({ type: 'went', place: 'takeoff' })}>
          Choose the list
        </button>
      </>
    );
  }
  return (
    <>
      <h1>Check a quote</h1>
      <Where bench={bench} state={state} openings={schedule.openings.length} list={schedule.name} />
      {found && quoteTable && (
        <found.QuoteColumns
          bench={bench}
          table={quoteTable}
          quote={quote?.quote ?? null}
          choices={state.quoteChoices}
        />
      )}
      {found && quote && (
        <found.QuoteVerdicts
          bench={bench}
          check={quote}
          listed={state.listed}
          more={() => bench.store.send({ type: 'more listed' })}
        />
      )}
    </>
  );
}

function useFound(wanted: boolean): Found | null {
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    if (!wanted) return;
    void Promise.all([import('./quoteColumns'), import('./quoteVerdicts')]).then(([columns, verdicts]) =>
      setFound({ ...columns, ...verdicts }),
    );
  }, [wanted]);
  return found;
}

interface WhereProps {
  readonly bench: Bench;
  readonly state: PaneState;
  readonly openings: number;
  readonly list: string;
}

/** Selected cells, a sheet, a file chosen or dropped, or pasted rows. */
function Where({ bench, state, openings, list }: WhereProps) {
  return (
    <DropCard labelledBy="quote-where" take={(file) => void checkFile(bench, file)}>
      <h2 id="quote-where">Where is the quote?</h2>
      <p>
        It is checked against the {count(openings, 'opening')} of {list}.
      </p>
      <div class="pair">
        <button type="button" onClick={() => checkSelection(bench)}>
          Read the selected cells
        </button>
        <FilePick
          label="Choose a file, or drop it here"
          accept=".csv,.tsv,.txt,.xlsx,.pdf"
          take={(file) => void checkFile(bench, file)}
        />
      </div>
      <SheetChoice bench={bench} names={state.sheetNames} read={(name) => checkSheet(bench, name)} />
      <PasteBox id="paste-quote" yes="Check the pasted rows" take={(text) => checkText(bench, text)} />
    </DropCard>
  );
}
