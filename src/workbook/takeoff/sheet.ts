import { partsOf } from '../formulas/lexer';
import { ENDS, HEAD_SHAPES } from '../../head/head';
import { BLANK_JOB, type Job } from '../../job/fields';
import { notSetSentence } from '../../notSet';
import { shopRanges, type FigureName } from '../../takeoff/figures';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import { columnLetters } from '../address';
import { groupRow, headingCell, headingRow, unitRow } from '../columnHeads';
import { columnFormat } from '../format';
import { pagesWide } from '../pagesWide';
import { isTypedOver, unlessErrors } from '../sharedFormulas';
import { ownCells, type OwnColumn } from '../refill';
import type { Cell, CellStyle, SheetSource, Validation } from '../sheet';
import { extrasRows } from './extras';
import { minimumRows } from './minimum';
import { TAKEOFF_COLUMNS, UNPLANNED, type CellsOfRow, type ColumnKey, type TakeoffColumn } from './columns';
import { bodyOf, cellsOfRow, columnRange, LETTERS, takeoffRange, TAKEOFF_HEAD_ROWS, type Body } from './places';

/** Number and mark stay in sight. */
const FROZEN_COLUMNS = 2;
/** Of a column of the user's own, in characters. */
const OWN_WIDTH = 14;

/** How the plain workbook shows a figure of the row: looked up on the sheet Working, by the opening's number. */
export type WorkingFigure = (figure: FigureName, at: CellsOfRow) => string;

/** The takeoff: a row for each opening, live figures, and what each opening needs. */
export function takeoffSource(
  takeoff: Takeoff,
  working: WorkingFigure | null,
  own: readonly OwnColumn[] = [],
  job: Job = BLANK_JOB,
): SheetSource {
  const body = bodyOf(takeoff.openings.length);
  const widths = [...TAKEOFF_COLUMNS.map((column) => column.width), ...own.map(() => OWN_WIDTH)];
  return {
    name: 'Takeoff',
    rows: { [Symbol.iterator]: () => rowsOf(takeoff, working, own, job, body) },
    widths,
    frozenRows: TAKEOFF_HEAD_ROWS,
    frozenColumns: FROZEN_COLUMNS,
    validations: validations(body),
    figures: figureRanges(body),
    repeatRows: [4, TAKEOFF_HEAD_ROWS],
    landscape: true,
    pagesWide: pagesWide(widths, FROZEN_COLUMNS),
    autoFilter: `A${TAKEOFF_HEAD_ROWS}:${columnLetters(widths.length - 1)}${body.last}`,
    home: `B${body.first}`,
    columnKeys: TAKEOFF_COLUMNS.map((column) => column.key),
    body: [body.first, body.last],
  };
}

function* rowsOf(
  takeoff: Takeoff,
  working: WorkingFigure | null,
  own: readonly OwnColumn[],
  job: Job,
  body: Body,
): Generator<(Cell | null)[]> {
  const { unit } = takeoff.standards;
  const blanks = Array<null>(TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'lookAt') - 4).fill(null);
  yield [
    ...[{ value: 'Takeoff', style: 'title' } as const, null, null],
    ...[{ value: '', formula: 'Plan_state', style: 'attention' } as const, ...blanks],
    { value: notSetSentence(takeoff.standards), formula: 'Shop_not_set&""', style: 'attention' },
  ];
  yield [null, null, null, summary(takeoff, body, working !== null), ...blanks, typedOver(body)];
  yield groupRow(TAKEOFF_COLUMNS, () => false);
  yield unitRow(TAKEOFF_COLUMNS, unit);
  yield [...headingRow(TAKEOFF_COLUMNS), ...own.map(({ heading }) => headingCell(heading))];
  for (const [index, row] of takeoff.openings.entries()) {
    const place = body.first + index;
    const at = cellsOfRow(place);
    yield [
      ...TAKEOFF_COLUMNS.map((column) => cellOf(column, row, takeoff, at, working)),
      ...ownCells(own, row.no, place),
    ];
  }
  yield TAKEOFF_COLUMNS.map((column) => totalCell(column, takeoff, body));
  const total = body.last + 1;
  const extras = [...extrasRows(takeoff, total)];
  yield* extras;
  yield* minimumRows(takeoff, job, total + extras.length);
}

function cellOf(
  column: TakeoffColumn,
  row: OpeningTakeoff,
  takeoff: Takeoff,
  at: CellsOfRow,
  working: WorkingFigure | null,
): Cell {
  const { unit } = takeoff.standards;
  const value = column.value(row, takeoff) ?? null;
  const style = styleOf(column);
  const format = columnFormat(column.measure, unit, value);
  const wrap = column.key === 'lookAt' || column.key === 'remarks' ? { wrap: true } : {};
  const formula = formulaOf(column, row, at, unit, working);
  if (formula === null) return { value, style, format, ...wrap };
  // Text format would keep Excel from calculating a formula typed over it.
  return { value: value ?? '', style, format: format === '@' ? 'General' : format, formula, ...wrap };
}

function formulaOf(
  column: TakeoffColumn,
  { opening }: OpeningTakeoff,
  at: CellsOfRow,
  unit: Takeoff['standards']['unit'],
  working: WorkingFigure | null,
): string | null {
  // A rough-opening figure less the shop's allowance goes on following the allowance.
  if (column.key === 'span' && opening.span !== null && opening.rough?.span !== undefined)
    return `${opening.rough.span}-Shop_rough_width`;
  if (column.key === 'rise' && opening.rise !== null && opening.rough?.rise !== undefined)
    return `${opening.rough.rise}-Shop_rough_height`;
  const native = column.formula?.(at, unit) ?? null;
  if (column.figure === undefined) return native;
  const figure =
    working === null
      ? `ARCH.OPENING("${column.figure}",${at.main},${at.more},${shopRanges(column.figure)})`
      : working(column.figure, at);
  return `${figure}${native ?? ''}`;
}

/** Whether a formula (`=…`) in an input's cell is one that a filling writes there, not one of the user's own. */
export function isFilledIn(formula: string): boolean {
  const [less, , name, ...more] = partsOf(formula).slice(1);
  return less?.kind === 'number' && name?.kind === 'name' && name.text.startsWith('Shop_rough_') && more.length === 0;
}

function styleOf(column: TakeoffColumn): CellStyle {
  if (column.role === 'input') return 'input';
  return column.key === 'lookAt' || column.key === 'plan' ? 'attention' : 'figure';
}

/** How many openings there are and how many have no price. A price in error is neither: where the add-in is missing, all are. */
function summary(takeoff: Takeoff, body: Body, plain: boolean): Cell {
  const { openings, open } = takeoff.totals;
  const price = columnRange('price', body);
  return {
    value: `Openings: ${openings}. Not priced: ${open}.`,
    formula: `"Openings: "&COUNT(${columnRange('no', body)})&". "&${unlessErrors(price, 'Prices', `"Not priced: "&COUNTIF(${price},"")&"."`, plain)}`,
    style: 'text',
  };
}

/** The cells of figures: those of the first screen, and those behind the inputs. */
function figureRanges({ first, last }: Body): string[] {
  const runs: { from: string; to: string }[] = [];
  TAKEOFF_COLUMNS.forEach(({ key, role }, at) => {
    if (role !== 'figure') return;
    if (TAKEOFF_COLUMNS[at - 1]?.role === 'figure') runs.at(-1)!.to = LETTERS[key];
    else runs.push({ from: LETTERS[key], to: LETTERS[key] });
  });
  return runs.map(({ from, to }) => `${from}${first}:${to}${last}`);
}

/** Figures that somebody typed over their formulas: told at once, and asked about when the takeoff is filled again. */
function typedOver(body: Body): Cell {
  const count = figureRanges(body)
    .map((range) => `SUMPRODUCT(--${isTypedOver(range)})`)
    .join('+');
  return {
    value: '',
    formula: `IF(${count}=0,"","Figures typed over: "&${count}&".")`,
    style: 'attention',
  };
}

function totalCell(column: TakeoffColumn, takeoff: Takeoff, body: Body): Cell | null {
  if (column.key === 'no') return { value: 'Total', style: 'total' };
  if (!column.total && column.key !== 'quantity') return null;
  const format = columnFormat(column.measure, takeoff.standards.unit);
  if (column.key === 'quantity')
    return {
      value: takeoff.totals.heads,
      // Of the priced rows; SUMIF would pass over prices in error and show too small a total.
      formula: `SUMPRODUCT(--(${columnRange('price', body)}<>""),${columnRange('quantity', body)})`,
      ...{ style: 'total', format },
    };
  const value = takeoff.openings.reduce((sum, row) => {
    const figure = column.value(row, takeoff);
    return sum + (typeof figure === 'number' ? figure : 0);
  }, 0);
  // A plain sum: an error in a row is an error in the total.
  const sum = `SUM(${columnRange(column.key, body)})`;
  return {
    value: column.key === 'price' ? takeoff.totals.price : value,
    formula: column.key === 'price' ? `ROUND(${sum},2)` : sum,
    ...{ style: 'total', format },
  };
}

function validations(body: Body): Validation[] {
  const range = (key: ColumnKey) => `${LETTERS[key]}${body.first}:${LETTERS[key]}${body.last}`;
  return [
    {
      range: range('head'),
      rule: { kind: 'list', choices: HEAD_SHAPES },
      message: `A head is one of ${HEAD_SHAPES.join(', ')}.`,
    },
    { range: range('ends'), rule: { kind: 'list', choices: ENDS }, message: `Ends are one of ${ENDS.join(', ')}.` },
    {
      range: range('quantity'),
      rule: { kind: 'number', min: 1, max: 100000, whole: true },
      message: 'The quantity is a whole number from 1.',
    },
  ];
}

/** Rows that the plan at hand doesn't hold as they stand, and the mark of the first, for the line that says so. */
export function unplannedRows(openings: number): { readonly count: string; readonly first: string } {
  const plan = takeoffRange('plan', openings);
  return {
    count: `COUNTIF(${plan},"${UNPLANNED}")`,
    first: `INDEX(${takeoffRange('mark', openings)},MATCH("${UNPLANNED}",${plan},0))`,
  };
}
