import { QUOTE_LABELS, type Quote, type QuoteKey } from '../../../src/check/quote';
import type { QuoteChoices } from '../../../src/quote/headings';
import type { Table } from '../../../src/schedule/opening';
import { chooseQuoteMeaning } from '../deeds/checkQuote';
import type { Bench } from '../deeds/bench';
import { ColumnChoice } from '../parts/columnChoice';

interface ColumnsProps {
  readonly bench: Bench;
  readonly table: Table;
  /** As it was read; null: no quote could be read in the table. */
  readonly quote: Quote | null;
  readonly choices: QuoteChoices;
}

/** What each column of the quote was read as, with a few of its cells; those that no reading fits stand first. */
export function QuoteColumns({ bench, table, quote, choices }: ColumnsProps) {
  const width = quote?.headings.length ?? Math.max(0, ...table.rows.slice(0, 50).map((row) => row.length));
  const columns = Array.from({ length: width }, (_, column) => ({
    column,
    heading: (quote?.headings[column] ?? '').trim(),
    key: choices[column] ?? quote?.meaning[column] ?? null,
    samples: samplesOf(table, quote, column),
    aside: quote?.setAside.find(({ index }) => index === column),
  })).filter(({ heading, samples }) => heading !== '' || samples.length > 0);
  const isOpen = (one: (typeof columns)[number]) => quote === null || one.aside?.understood === false;
  const open = columns.filter(isOpen);
  const read = columns.filter((one) => !isOpen(one));
  return (
    <section class="card" aria-labelledby="quote-columns">
      <h2 id="quote-columns">What its columns hold</h2>
      {open.length > 0 && (
        <p class="needs">
          {quote === null
            ? 'No headings were found: say what the columns hold, among them a price, an amount, a length or a radius.'
            : `${open.length === 1 ? 'One column isn’t' : `${open.length} columns aren’t`} understood: say what it holds, or that it is not compared.`}
        </p>
      )}
      <ColumnList bench={bench} columns={open} choices={choices} />
      {read.length > 0 && (
        <details class="left-out">
          <summary>
            {read.length === 1 ? 'One column' : `${read.length} columns`} as read: change what was taken wrong
          </summary>
          <ColumnList bench={bench} columns={read} choices={choices} />
        </details>
      )}
    </section>
  );
}

interface ListProps {
  readonly bench: Bench;
  readonly choices: QuoteChoices;
  readonly columns: readonly {
    readonly column: number;
    readonly heading: string;
    readonly key: QuoteKey | null;
    readonly samples: readonly string[];
    readonly aside: Quote['setAside'][number] | undefined;
  }[];
}

function ColumnList({ bench, columns, choices }: ListProps) {
  if (columns.length === 0) return null;
  const meanings = (Object.keys(QUOTE_LABELS) as QuoteKey[]).map((key) => ({ value: key, label: QUOTE_LABELS[key] }));
  return (
    <ul class="columns">
      {columns.map(({ column, heading, key, samples, aside }) => (
        <ColumnChoice
          key={column}
          id={`quote-column-${column}`}
          column={column}
          heading={heading}
          value={key ?? ''}
          options={[{ value: '', label: column in choices ? 'As we read it' : 'Not understood' }, ...meanings]}
          choose={(value) => chooseQuoteMeaning(bench, column, value === '' ? null : (value as QuoteKey))}
          samples={samples}
        >
          {aside && <p class="soft">{aside.done}</p>}
        </ColumnChoice>
      ))}
    </ul>
  );
}

const MOST_SAMPLES = 3;

/** The first different cells of a column in the rows that are lines; in any row, where no quote could be read. */
function samplesOf({ rows, firstRow }: Table, quote: Quote | null, column: number): readonly string[] {
  const lines = quote === null ? rows : quote.lines.map(({ row }) => rows[row - firstRow] ?? []);
  const found: string[] = [];
  for (const row of lines) {
    const text = String(row[column] ?? '')
      .trim()
      .slice(0, 40);
    if (text !== '' && !found.includes(text)) found.push(text);
    if (found.length === MOST_SAMPLES) break;
  }
  return found;
}
