import { reasonOf } from '../check/rules/verdict';
import { byStake } from '../check/quote/stakes';
import type { QuoteCheck } from '../check/quote/checkQuote';
import { dollars } from '../quote/money';
import { summaryText } from '../check/quote/summary';
import { toCents } from '../rounding';
import { checkRow } from './check/checkRow';
import { CHECK_COLUMNS, checkLetter, checkRange, columnAt, type CheckKey, type Lines } from './check/columns';
import { rowOf, type Row } from './check/content';
import { addSums } from './check/sums';
import { groupRow, headingRow, unitRow } from './columnHeads';
import { columnFormat } from './format';
import { pagesWide } from './pagesWide';
import { quote } from '../formulaText';
import type { Cell, Sheet } from './sheet';
import { takeoffRange } from './takeoff/places';
import { inLines } from './textLines';
import { titleRow } from './titleRow';
import { unlessErrors } from './sharedFormulas';

/** Rows above the lines: title, counts, money, group, heading, unit. */
export const CHECK_HEAD_ROWS = 6;
/** The row in the quote and the mark stay in sight. */
const FROZEN_COLUMNS = 2;

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
    [],
    [],
    groupRow(CHECK_COLUMNS, isFolded),
    headingRow(CHECK_COLUMNS),
    unitRow(CHECK_COLUMNS, unit),
    ...body,
  ];
  const missing = addNotQuoted(rows, check);
  const right = addSums(rows, check, lines);
  rows[1] = countsRow(body, check, lines, missing, plain);
  rows[2] = totalsRow(check, lines, right);
  rows.push([], [{ value: 'Summary when it was checked', style: 'group' }]);
  for (const text of summaryText(check).split('\n'))
    for (const [at, part] of inLines(text, PAGE_WIDTH - CONTINUED.length).entries())
      rows.push([{ value: at === 0 ? part : CONTINUED + part, style: 'text', format: '@' }]);
  const widths = CHECK_COLUMNS.map(({ width }) => width);
  return {
    name: 'Check',
    rows,
    widths,
    frozenRows: CHECK_HEAD_ROWS,
    frozenColumns: FROZEN_COLUMNS,
    folded: [FOLDED],
    repeatRows: [4, CHECK_HEAD_ROWS],
    landscape: true,
    pagesWide: pagesWide(
      widths.filter((_width, at) => !isFolded(at)),
      FROZEN_COLUMNS,
    ),
    home: `C${lines.first}`,
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

/** What the reason, and the figures beside the quoted ones, come from. */
const FOLDED = { first: columnAt('openingSays'), last: columnAt('found') };

function isFolded(column: number): boolean {
  return column >= FOLDED.first && column <= FOLDED.last;
}

function countsCell(body: readonly Row[], lines: Lines, plain: boolean): Cell & { readonly value: string } {
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

/** Characters that fit across a printed page. */
const PAGE_WIDTH = 170;
/** Before what goes on from the line above. */
const CONTINUED = '    ';

function countsRow(
  body: readonly Row[],
  { stakes, atTop, notQuoted }: QuoteCheck,
  lines: Lines,
  missing: readonly [number, number] | null,
  plain: boolean,
): Row {
  const row: Row = CHECK_COLUMNS.map(() => null);
  const counts = countsCell(body, lines, plain);
  const first = atTop.map((text) => `${text} `).join('');
  row[columnAt('verdict')] =
    first === ''
      ? counts
      : { value: `${first}${counts.value}`, formula: `${quote(first)}&${counts.formula}`, style: 'attention' };
  if (missing !== null && stakes.omitted > 0) {
    const named = notQuoted.some(({ extra }) => extra !== null) ? 'Openings and extras' : 'Openings';
    const range = `${checkLetter('off')}${missing[0]}:${checkLetter('off')}${missing[1]}`;
    row[columnAt('off')] = {
      value: `${named} not quoted, at our price: ${dollars(stakes.omitted)}.`,
      formula: `"${named} not quoted, at our price: $"&FIXED(-SUM(${range}),2)&"."`,
      style: 'attention',
    };
  }
  return row;
}

/** The quote's total and what it should be; what is off, and what hangs on lines, added up. */
function totalsRow(
  { compared, corrected, stakes, takeoff, lines: checks }: QuoteCheck,
  lines: Lines,
  right: string,
): Row {
  const money = columnFormat('money', takeoff.standards.unit);
  const sum = (key: CheckKey, value: number): Cell => ({
    value: toCents(value),
    formula: `SUM(${checkRange(key, lines)})`,
    style: 'total',
    format: money,
  });
  const cells = {
    reason: { value: 'Total as quoted, and corrected at the prices it quotes', style: 'total' },
    extension: { value: toCents(compared.total), style: 'total', format: money },
    extensionRight:
      corrected.total === null
        ? { value: "can't tell", style: 'total' }
        : { value: corrected.total, formula: right, style: 'total', format: money },
    off:
      stakes.off === null
        ? { value: null }
        : {
            value: toCents(stakes.off),
            formula: `ROUND(${checkLetter('extension')}3-${checkLetter('extensionRight')}3,2)`,
            style: 'total',
            format: money,
          },
    priceOff: sum('priceOff', stakes.prices),
    hangs: sum('hangs', stakes.hanging.amount),
  } as const satisfies Partial<Record<CheckKey, Cell>>;
  return checks.length === 0 ? [] : rowOf(cells);
}

/** Gives the first and last row of the openings that no line is for. */
function addNotQuoted(rows: Row[], { notQuoted, takeoff }: QuoteCheck): readonly [number, number] | null {
  if (notQuoted.length === 0) return null;
  const { unit } = takeoff.standards;
  const money = columnFormat('money', unit);
  const range = takeoffRange('price', takeoff.openings.length);
  rows.push(
    [],
    [
      {
        value: notQuoted.some(({ extra }) => extra !== null)
          ? 'Openings and extras of the takeoff without a line'
          : 'Openings of the takeoff without a line',
        style: 'group',
      },
    ],
  );
  const first = rows.length + 1;
  const sorted = [...notQuoted].sort((one, other) => other.finding.stake - one.finding.stake);
  for (const { place, opening, extra, price, finding } of sorted) {
    const cell = `INDEX(${range},${place + 1})`;
    const value = price === null ? '' : -price;
    rows.push(
      rowOf({
        mark: { value: opening.opening.mark, style: 'text', format: '@' },
        verdict: {
          value: finding.verdict === 'differs' ? 'not quoted' : finding.verdict,
          style: 'attention',
          format: '@',
        },
        reason: { value: reasonOf(finding.text), style: 'fixed', format: '@', wrap: true },
        // Where it can't be told whether it is quoted, no money is missing for certain.
        ...(finding.verdict === 'differs' && {
          off:
            extra === null
              ? { value, formula: `IF(${cell}="","",-${cell})`, style: 'figure', format: money }
              : { value, style: 'fixed', format: money },
        }),
      }),
    );
  }
  return [first, rows.length];
}
