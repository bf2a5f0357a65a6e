import { byStake } from '../check/quote/byStake';
import type { QuoteCheck } from '../check/quote/checkQuote';
import { amountOf } from '../quote/quote';
import { summaryText } from '../check/quote/summary';
import type { SumCheck } from '../check/quote/sums';
import { toCents } from '../rounding';
import { checkRow } from './check/checkRow';
import { CHECK_COLUMNS, checkLetter, checkRange, type CheckKey, type Lines } from './check/columns';
import { totalSays } from './check/formulas';
import { moneyText } from './check/says';
import { groupRow, headingRow, unitRow } from './columnHeads';
import { columnFormat } from './format';
import { pagesWide } from './pagesWide';
import type { Cell, Sheet } from './sheet';
import { takeoffRange } from './takeoff/sheet';
import { titleRow } from './titleRow';
import { unlessErrors } from './unlessErrors';

/** Rows above the lines: title, counts, group, heading, unit. */
export const CHECK_HEAD_ROWS = 5;
/** The row in the quote and the mark stay in sight. */
const FROZEN_COLUMNS = 2;

type Row = (Cell | null)[];

/**
 * A quote against the takeoff: a row for each line, most money at stake first, compared by formulas with the Takeoff's cells;
 * below, what is not quoted, the quote's charges and sums, and the summary. `plain` writes no ARCH formulas.
 */
export function checkSheet(check: QuoteCheck, plain: boolean): Sheet {
  const { takeoff } = check;
  const { unit } = takeoff.standards;
  const lines: Lines = { first: CHECK_HEAD_ROWS + 1, last: CHECK_HEAD_ROWS + Math.max(1, check.lines.length) };
  const body = byStake(check.lines).map((line, at): Row => checkRow(line, takeoff, lines.first + at, lines, plain));
  if (body.length === 0) body.push([{ value: 'The quote has no lines.', style: 'attention' }]);
  const rows: Row[] = [
    titleRow('Check', olderFormula(check)),
    [null, null, countsCell(body, lines, plain)],
    groupRow(CHECK_COLUMNS, isFolded),
    headingRow(CHECK_COLUMNS),
    unitRow(CHECK_COLUMNS, unit),
    ...body,
  ];
  addNotQuoted(rows, check);
  addSums(rows, check, lines);
  rows.push([], [{ value: 'Summary when it was checked', style: 'group' }]);
  for (const text of summaryText(check).split('\n'))
    rows.push([null, null, { value: text, style: 'text', format: '@' }]);
  const widths = CHECK_COLUMNS.map(({ width }) => width);
  return {
    name: 'Check',
    rows,
    widths,
    frozenRows: CHECK_HEAD_ROWS,
    frozenColumns: FROZEN_COLUMNS,
    folded: [FOLDED],
    repeatRows: [3, CHECK_HEAD_ROWS],
    landscape: true,
    pagesWide: pagesWide(
      widths.filter((_width, at) => !isFolded(at)),
      FROZEN_COLUMNS,
    ),
    home: `D${lines.first}`,
    locked: true,
    columnKeys: CHECK_COLUMNS.map(({ key }) => key),
    body: [lines.first, lines.last],
  };
}

/** Lines and openings were matched when it was checked: other openings than those want another check. */
function olderFormula({ takeoff: { openings } }: QuoteCheck): string {
  const sum = openings.reduce((total, { no }) => total + no, 0);
  return (
    `IF(AND(COUNT(Takeoff!$A:$A)=${openings.length},SUM(Takeoff!$A:$A)=${sum}),Plan_state,` +
    `"The openings are others than those that were checked: check the quote again.")`
  );
}

function columnAt(key: CheckKey): number {
  return CHECK_COLUMNS.findIndex((column) => column.key === key);
}

/** The working figures. */
const FOLDED = { first: columnAt('place'), last: columnAt('amount') };

function isFolded(column: number): boolean {
  return column >= FOLDED.first && column <= FOLDED.last;
}

/** Cells by column key in an otherwise empty row. */
function rowOf(cells: Partial<Record<CheckKey, Cell>>): Row {
  return CHECK_COLUMNS.map(({ key }) => cells[key] ?? null);
}

function countsCell(body: readonly Row[], lines: Lines, plain: boolean): Cell {
  const range = checkRange('verdict', lines);
  const count = (verdict: string) => body.filter((row) => row[columnAt('verdict')]?.value === verdict).length;
  return {
    value: `Lines that agree: ${count('agrees')}, that differ: ${count('differs')}, that can't be told: ${count("can't tell")}.`,
    formula: unlessErrors(
      range,
      'Verdicts',
      `"Lines that agree: "&COUNTIF(${range},"agrees")&", that differ: "&COUNTIF(${range},"differs")&` +
        `", that can't be told: "&COUNTIF(${range},"can't tell")&"."`,
      plain,
    ),
    style: 'text',
  };
}

function addNotQuoted(rows: Row[], { notQuoted, takeoff }: QuoteCheck): void {
  if (notQuoted.length === 0) return;
  const { unit } = takeoff.standards;
  const money = columnFormat('money', unit);
  const range = takeoffRange('price', takeoff.openings.length);
  rows.push([], [{ value: 'Openings of the takeoff without a line', style: 'group' }]);
  const sorted = [...notQuoted].sort((one, other) => other.finding.stake - one.finding.stake);
  for (const { place, opening, finding } of sorted) {
    const cell = `INDEX(${range},${place + 1})`;
    rows.push(
      rowOf({
        mark: { value: opening.opening.mark, style: 'text', format: '@' },
        verdict: {
          value: finding.verdict === 'differs' ? 'not quoted' : finding.verdict,
          style: 'attention',
          format: '@',
        },
        // Where it can't be told whether it is quoted, no money is missing for certain.
        ...(finding.verdict === 'differs' && {
          off: {
            value: opening.cost === null ? '' : -opening.cost.price,
            formula: `IF(${cell}="","",-${cell})`,
            style: 'figure' as const,
            format: money,
          },
        }),
        found: { value: finding.text, style: 'fixed', format: '@', wrap: true },
      }),
    );
  }
}

/** Freight, tax, discount, subtotals and totals. A total at the end of the quote follows its lines. */
function addSums(rows: Row[], check: QuoteCheck, lines: Lines): void {
  if (check.sums.length === 0) return;
  const money = columnFormat('money', check.takeoff.standards.unit);
  rows.push([], [{ value: 'Charges, subtotals and totals', style: 'group' }]);
  const extension = checkLetter('extension');
  const charges = check.sums.flatMap(({ item }, at) =>
    item.kind === 'charge' ? [`${extension}${rows.length + 1 + at}`] : [],
  );
  const amounts = [`SUM(${checkRange('amount', lines)})`, ...charges.map((cell) => `N(${cell})`)];
  for (const sum of check.sums) {
    const { item, finding } = sum;
    const row = rows.length + 1;
    const text = finding.verdict === 'agrees' ? 'agrees' : finding.text;
    const live = isLast(sum, check);
    rows.push(
      rowOf({
        row: { value: item.row, style: 'text', format: '0' },
        description: { value: item.text, style: 'text', format: '@' },
        verdict: { value: item.kind === 'sum' ? item.sum : item.charge, style: 'text', format: '@' },
        extension: { value: item.amount, style: 'input', format: money },
        extensionSays: live
          ? {
              value: moneyText(item.amount! - toCents(check.quoted), TOTAL_TOLERANCE),
              formula: totalSays(`${extension}${row}`, amounts.join('+'), TOTAL_TOLERANCE),
              style: 'figure',
              wrap: true,
            }
          : { value: text, style: 'fixed', format: '@', wrap: true },
        found: { value: finding.text, style: 'fixed', format: '@', wrap: true },
      }),
    );
  }
}

const TOTAL_TOLERANCE = 0.0050001;

/** The total below everything else, with every amount known. */
function isLast({ item }: SumCheck, { quote, lines }: QuoteCheck): boolean {
  const isTotal = item.kind === 'sum' && item.sum === 'total' && item.amount !== null;
  const below = quote.items.slice(quote.items.indexOf(item) + 1).some(({ kind }) => kind !== 'sum');
  const unknown =
    lines.some(({ line }) => amountOf(line) === null) ||
    quote.items.some((one) => one.kind === 'charge' && one.amount === null);
  return isTotal && !below && !unknown;
}
