import { ok, refuse, type Result } from '../result';
import { isRowEmpty, rowText } from '../schedule/cell';
import { quote } from '../schedule/figure';
import type { Table } from '../schedule/opening';
import { readTableNotes } from '../schedule/tableNotes';
import type { Standards } from '../standards';
import { findQuoteLayout, quoteScore, type QuoteChoices } from './headings';
import { NO_OPENINGS, type Ours } from './ours';
import type { Quote, QuoteItem, QuoteLine } from './quote';
import { readLine } from './readLine';
import { setAside } from './setAside';
import { sortRows } from './sortRows';

/** The table of a file that reads most like a quote, visible sheets first; null for no tables. */
export function chooseQuoteTable(tables: readonly Table[]): Table | null {
  const scored = tables.map((table) => ({ table, score: quoteScore(table) * 2 - (table.hidden ? 1 : 0) }));
  return scored.sort((one, other) => other.score - one.score)[0]?.table ?? null;
}

export interface ReadingOptions {
  /** What the quote is for: its marks and figures tell columns apart that headings don't. */
  readonly ours?: Ours;
  /** What the user says that columns are. */
  readonly choices?: QuoteChoices;
}

/**
 * A quote from a table: finds the headings, settles by figures what the columns are, then reads every row below as a line, a charge
 * (freight, tax, discount) or a sum (subtotal, total); rows that are none of these are in `passedOver` with the reason. Lengths come
 * out in `standards.unit`. Refused only where no headings can be found.
 */
export function readQuote(
  table: Table,
  standards: Standards,
  { ours, choices = {} }: ReadingOptions = {},
): Result<Quote> {
  const first = findQuoteLayout(table.rows, { choices });
  const notes = readTableNotes(table.rows, first?.headingRows[0] ?? 0, standards.unit);
  const layout = findQuoteLayout(table.rows, {
    choices,
    unit: notes.unit,
    ours: ours ?? null,
    workbook: standards.unit,
  });
  if (layout === null) {
    if (table.rows.every(isRowEmpty)) return refuse(`${quote(table.name)} is empty.`);
    return refuse(
      `No headings were found in ${quote(table.name)}: a quote needs one row that names its columns, among them a price, ` +
        'an amount, a length or a radius.',
    );
  }
  const sorted = sortRows(table.rows, table.firstRow, layout, ours?.marks ?? null);
  const aside = setAside(
    layout.columns,
    table.rows.filter((_row, at) => sorted[at] === 'line'),
  );
  const marks = (ours ?? NO_OPENINGS).marks;
  const items: QuoteItem[] = [];
  const declined: { row: number; words: string; text: string }[] = [];
  const passedOver: { row: number; why: string; text: string }[] = [];
  table.rows.forEach((row, at) => {
    const item = sorted[at]!;
    const number = table.firstRow + at;
    if (item === 'line')
      items.push(withDoubts(readLine(number, row, layout.columns, aside, standards, marks, notes.unit), table));
    else if ('why' in item) {
      if (item.declined !== undefined) declined.push({ row: number, words: item.declined, text: rowText(row) });
      passedOver.push({ row: number, why: item.why, text: rowText(row) });
    } else items.push(item);
  });
  return ok({
    name: table.name,
    headings: layout.columns.map(({ heading }) => heading),
    meaning: layout.columns.map(({ key }) => key),
    setAside: aside,
    headingRow: table.firstRow + (layout.headingRows.at(-1) ?? 0),
    remarks: [...(table.remarks ?? []), ...notes.remarks.filter((remark) => !/rough/.test(remark)), ...layout.remarks],
    items,
    lines: items.flatMap((item) => (item.kind === 'line' ? [item] : [])),
    declined,
    passedOver,
  });
}

/** A line that the file's reader was not sure of can't be told to agree. */
function withDoubts(line: QuoteLine, { doubts }: Table): QuoteLine {
  const own = doubts?.get(line.row);
  if (own === undefined) return line;
  const message = `Row ${line.row} is in doubt: ${own.join('; ')}; please check it against the page.`;
  return { ...line, problems: [...line.problems, { row: line.row, field: 'length', message }] };
}
