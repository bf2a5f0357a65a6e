import { useEffect, useState } from 'preact/hooks';
import type { LineCheck, QuoteCheck } from '../../../src/check/quote';
import { byStake } from '../../../src/check/quote/byStake';
import { checkFile, checkSelection, checkSheet, writeCheck } from '../deeds/checkQuote';
import type { Bench } from '../deeds/bench';
import { count } from '../format';
import { Ask } from '../parts/ask';
import { FilePick } from '../parts/filePick';
import { SheetChoice } from '../parts/sheetChoice';
import type { PaneState } from '../state';

/** A quote, one of our own or one received, against the takeoff of the chosen list. */
export function QuoteTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const { schedule, quote } = state;
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
      <section class="card" aria-labelledby="quote-where">
        <h2 id="quote-where">Where is the quote?</h2>
        <p>
          It is checked against the {count(schedule.openings.length, 'opening')} of {schedule.name}.
        </p>
        <div class="pair">
          <button type="button" onClick={() => checkSelection(bench)}>
            Read the selected cells
          </button>
          <FilePick
            label="Choose a file"
            accept=".csv,.tsv,.txt,.xlsx,.pdf"
            take={(file) => void checkFile(bench, file)}
          />
        </div>
        <SheetChoice bench={bench} names={state.sheetNames} read={(name) => checkSheet(bench, name)} />
      </section>
      {quote && (
        <Verdicts
          bench={bench}
          check={quote}
          listed={state.listed}
          more={() => bench.store.send({ type: 'more listed' })}
        />
      )}
    </>
  );
}

interface VerdictsProps {
  readonly bench: Bench;
  readonly check: QuoteCheck;
  readonly listed: number;
  readonly more: () => void;
}

function Verdicts({ bench, check, listed, more }: VerdictsProps) {
  const { counts } = check;
  // Most money at stake first; what agrees needs no reading.
  const open = byStake(check.lines.filter((line) => line.verdict !== 'agrees'));
  return (
    <section class="verdicts" aria-labelledby="verdicts-title">
      <h2 id="verdicts-title">{check.quote.name}</h2>
      <p class="tally" role="status">
        <span class="flag ready">
          {count(counts.agrees, 'line')} {counts.agrees === 1 ? 'agrees' : 'agree'}
        </span>
        {counts.differs > 0 && (
          <span class="flag differs">
            {counts.differs.toLocaleString()} {counts.differs === 1 ? 'differs' : 'differ'}
          </span>
        )}
        {counts["can't tell"] > 0 && (
          <span class="flag attention">{counts["can't tell"].toLocaleString()} can’t be told</span>
        )}
      </p>
      <ColumnsLeft check={check} />
      <Summary check={check} />
      <WriteCheck bench={bench} />
      <ul class="openings">
        {open.slice(0, listed).map((line) => (
          <Line key={line.line.row} line={line} />
        ))}
      </ul>
      {open.length > listed && (
        <button type="button" class="wide" onClick={more}>
          Show more: {(open.length - listed).toLocaleString()} not listed yet
        </button>
      )}
      <Sums check={check} />
      {check.notQuoted.length > 0 && (
        <>
          <h3>Openings without a line</h3>
          <ul class="facts">
            {check.notQuoted.map((one) => (
              <li key={one.place}>
                {one.opening.opening.mark || `Row ${one.opening.opening.row}`}: {one.finding.text}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Line({ line: { line, verdict, findings } }: { readonly line: LineCheck }) {
  return (
    <li class={`card opening ${verdict === 'differs' ? 'wrong' : 'troubled'}`}>
      <h3>
        {line.mark || line.description || 'No mark'} <span class="soft">row {line.row}</span>
      </h3>
      <ul class="troubles">
        {findings
          .filter((finding) => finding.verdict !== 'agrees')
          .sort((one, other) => Number(other.verdict === 'differs') - Number(one.verdict === 'differs'))
          .map((finding, index) => (
            <li key={index} class={finding.verdict === 'differs' ? 'differs' : ''}>
              {finding.text}
            </li>
          ))}
      </ul>
    </li>
  );
}

/** Columns of the quote that nothing is compared by; open where one of them isn't understood. */
function ColumnsLeft({ check: { quote } }: { readonly check: QuoteCheck }) {
  if (quote.setAside.length === 0) return null;
  return (
    <details class="left-out" open={quote.setAside.some(({ unread }) => unread)}>
      <summary>Not compared: {count(quote.setAside.length, 'column')}</summary>
      <ul class="facts">
        {quote.setAside.map(({ index, name, done }) => (
          <li key={index}>
            {name}: {done}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Charges, subtotals and totals that don't follow from the quote's own figures, or can't be told to. */
function Sums({ check }: { readonly check: QuoteCheck }) {
  const open = check.sums.filter(({ finding }) => finding.verdict !== 'agrees');
  if (open.length === 0) return null;
  return (
    <>
      <h3>Its own sums</h3>
      <ul class="facts">
        {open.map(({ item, finding }) => (
          <li key={item.row}>
            Row {item.row}: {finding.text}
          </li>
        ))}
      </ul>
    </>
  );
}

function WriteCheck({ bench }: { readonly bench: Bench }) {
  const [asking, setAsking] = useState(false);
  const write = async (replace: boolean) => setAsking(await writeCheck(bench, replace));
  if (!asking) {
    return (
      <button id="write-check" type="button" class="fit" onClick={() => write(false)}>
        Write it to the Check sheet
      </button>
    );
  }
  return (
    <Ask
      askedBy="write-check"
      title="This workbook already has Check"
      about="Writing again replaces it with this quote."
      yes="Write over"
      no="Leave as it is"
      onYes={() => write(true)}
      onNo={() => setAsking(false)}
    />
  );
}

/** What could be pasted into a reply. */
function Summary({ check }: { readonly check: QuoteCheck }) {
  const [text, setText] = useState('');
  const [copied, setCopied] = useState('');
  useEffect(() => {
    let over = false;
    setCopied('');
    void import('../../../src/check/quote').then(({ summaryText }) => {
      if (!over) setText(summaryText(check));
    });
    return () => {
      over = true;
    };
  }, [check]);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setCopied('Copied.');
    } catch {
      // Some hosts keep the clipboard to themselves.
      setCopied('The clipboard is closed to this pane: select the text and copy it.');
    }
  };
  return (
    <details class="left-out">
      <summary>Summary for a reply</summary>
      <label class="hidden" for="quote-summary">
        Summary for a reply
      </label>
      <textarea id="quote-summary" readOnly rows={10} value={text} />
      <div class="pair">
        <button type="button" onClick={copy}>
          Copy it
        </button>
        <span role="status">{copied}</span>
      </div>
    </details>
  );
}
