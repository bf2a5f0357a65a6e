import type { OpeningTakeoff, Takeoff } from '../takeoff/takeoff';
import { columnLetters } from './address';
import { groupRow, headingCell, headingRow, unitRow } from './columnHeads';
import { columnFormat } from './format';
import { pagesWide } from './pagesWide';
import { plainFormula } from './plain';
import { ownCells, type OwnColumn } from './refill';
import type { Cell, CellStyle, SheetSource, Validation } from './sheet';
import { ENDS, HEAD_SHAPES } from '../head/head';
import type { TakeoffColumn } from './columns/column';
import { TAKEOFF_COLUMNS } from './takeoffColumns';
import { quote } from './needsFormula';

/** Rows above the openings: title, summary, group, heading, unit. */
export const TAKEOFF_HEAD_ROWS = 5;
/** Source row and mark stay in sight. */
const FROZEN_COLUMNS = 2;
/** Of a column of the user's own, in characters. */
const OWN_WIDTH = 14;

const LETTERS: ReadonlyMap<string, string> = new Map(
  TAKEOFF_COLUMNS.map((column, at) => [column.key, columnLetters(at)]),
);

/** Where the openings stand on the sheet. */
interface Body {
  readonly first: number;
  readonly last: number;
}

/** A column's cells as an absolute range, for formulas on other sheets: `Takeoff!$A$6:$A$30`. */
export function takeoffRange(key: string, openings: number): string {
  return `Takeoff!${columnRange(key, bodyOf(openings))}`;
}

function columnRange(key: string, body: Body): string {
  const letter = LETTERS.get(key) ?? '#REF!';
  return `$${letter}$${body.first}:$${letter}$${body.last}`;
}

function bodyOf(openings: number): Body {
  return { first: TAKEOFF_HEAD_ROWS + 1, last: TAKEOFF_HEAD_ROWS + Math.max(1, openings) };
}

/** A column's template taken apart: text and, between, the letters of the columns it names. */
interface Template {
  readonly texts: readonly string[];
  readonly letters: readonly string[];
}

/** A column's template with its places filled in. Templates recur down the column, so each is taken apart once. */
function resolver(body: Body): (template: string, row: number) => string {
  const known = new Map<string, Template>();
  return (text, row) => {
    const rowText = String(row);
    let template = known.get(text);
    if (template === undefined) {
      template = takenApart(text, body);
      known.set(text, template);
    }
    const { texts, letters } = template;
    const parts = [texts[0]!];
    for (let at = 0; at < letters.length; at++) parts.push(letters[at]!, rowText, texts[at + 1]!);
    // Joined, not added up: a sum of strings keeps all its pieces in memory.
    return parts.join('');
  };
}

function takenApart(text: string, body: Body): Template {
  const whole = text.replace(/\{(\w+):all\}/g, (_match, key: string) => columnRange(key, body));
  const parts = whole.split(/\{([a-z]\w*)\}/);
  return {
    texts: parts.filter((_part, at) => at % 2 === 0),
    letters: parts.filter((_part, at) => at % 2 === 1).map((key) => LETTERS.get(key) ?? '#REF!'),
  };
}

/** The takeoff: a row for each opening, live figures, and what each opening needs. `plain` writes no ARCH formulas. */
export function takeoffSource(takeoff: Takeoff, plain: boolean, own: readonly OwnColumn[] = []): SheetSource {
  const body = bodyOf(takeoff.openings.length);
  const widths = [...TAKEOFF_COLUMNS.map((column) => column.width), ...own.map(() => OWN_WIDTH)];
  return {
    name: 'Takeoff',
    rows: { [Symbol.iterator]: () => rowsOf(takeoff, plain, own, body) },
    widths,
    frozenRows: TAKEOFF_HEAD_ROWS,
    frozenColumns: FROZEN_COLUMNS,
    folded: foldedColumns(),
    validations: validations(body),
    repeatRows: [3, TAKEOFF_HEAD_ROWS],
    landscape: true,
    pagesWide: pagesWide(
      widths.filter((_width, at) => !isWorking(at)),
      FROZEN_COLUMNS,
    ),
    home: `B${body.first}`,
    locked: true,
    columnKeys: TAKEOFF_COLUMNS.map((column) => column.key),
    body: [body.first, body.last],
  };
}

function* rowsOf(takeoff: Takeoff, plain: boolean, own: readonly OwnColumn[], body: Body): Generator<(Cell | null)[]> {
  const { unit } = takeoff.standards;
  const resolve = resolver(body);
  yield [{ value: 'Takeoff', style: 'title' }];
  yield [null, null, { ...summary(takeoff, body), style: 'text' }];
  yield groupRow(TAKEOFF_COLUMNS, isWorking);
  yield [...headingRow(TAKEOFF_COLUMNS), ...own.map(({ heading }) => headingCell(heading))];
  yield unitRow(TAKEOFF_COLUMNS, unit);
  for (const [at, row] of takeoff.openings.entries()) {
    const place = body.first + at;
    yield [
      ...TAKEOFF_COLUMNS.map((column) => cellOf(column, row, takeoff, (template) => resolve(template, place), plain)),
      ...ownCells(own, row.opening, place),
    ];
  }
  yield TAKEOFF_COLUMNS.map((column) => totalCell(column, takeoff, body));
}

function cellOf(
  column: TakeoffColumn,
  row: OpeningTakeoff,
  takeoff: Takeoff,
  resolve: (template: string) => string,
  plain: boolean,
): Cell | null {
  const template = column.formula(row, takeoff);
  const value = column.value(row, takeoff) ?? null;
  const style = styleOf(column);
  const { unit } = takeoff.standards;
  const format = columnFormat(column.measure, unit, value);
  const wrap = column.key === 'needs' || column.key === 'attention';
  if (template === null) {
    if (value === null && column.role !== 'input') return null;
    return { value, style, format, ...(wrap ? { wrap } : {}) };
  }
  const arch = resolve(template);
  const shown = value ?? '';
  // Text format would keep Excel from calculating a formula typed over it.
  const live = { value: shown, style, format: format === '@' ? 'General' : format, ...(wrap ? { wrap } : {}) };
  if (!plain) return { ...live, formula: arch };
  const native = plainFormula(arch, (call) => ellipseFigure(call, row));
  return native.fixed
    ? {
        ...live,
        formula: native.formula,
        comment: 'Holds arcs fitted to this ellipse: fill the takeoff again after changing its span or rise.',
      }
    : { ...live, formula: native.formula };
}

/** Elliptical arcs have no closed form: the plain twin holds the fitted figure. `call` is `INDEX(ARCH.HEADARCS(…),row,column)`. */
function ellipseFigure(call: string, row: OpeningTakeoff): number {
  const [, arc, figure] = /,(\d),(\d)\)$/.exec(call) ?? [];
  const { curve } = row;
  if (!curve || row.known.head !== 'elliptical') return 0;
  const ring = arc === '1' ? curve.haunch : curve.crown;
  return (figure === '1' ? ring?.radius : figure === '2' ? ring?.angle : curve.deviation) ?? 0;
}

function styleOf(column: TakeoffColumn): CellStyle {
  if (column.role === 'input') return 'input';
  return column.key === 'needs' || column.key === 'attention' ? 'attention' : 'figure';
}

function summary(takeoff: Takeoff, body: Body): Cell {
  const range = (key: string) => columnRange(key, body);
  const { openings, open } = takeoff.totals;
  const all = 'Openings: ';
  const needing = '. Needing something before they can be priced (column Needs): ';
  return {
    value: `${all}${openings}${needing}${open}.`,
    formula: `${quote(all)}&ROWS(${range('row')})&${quote(needing)}&SUMPRODUCT(--(${range('needs')}<>""))&"."`,
  };
}

function totalCell(column: TakeoffColumn, takeoff: Takeoff, body: Body): Cell | null {
  if (column.key === 'row') return { value: 'Total', style: 'total' };
  if (!column.total && column.key !== 'quantity') return null;
  const range = columnRange(column.total ? column.key : 'counted', body);
  const value = takeoff.openings.reduce((sum, row) => {
    const figure = column.total ? column.value(row, takeoff) : row.own ? row.known.quantity : 0;
    return sum + (typeof figure === 'number' ? figure : 0);
  }, 0);
  return {
    value: column.key === 'price' ? takeoff.totals.price : value,
    // SUMIF passes over a figure that could not be computed instead of losing the whole sum.
    formula: column.key === 'price' ? `ROUND(SUMIF(${range},">=0"),2)` : `SUMIF(${range},">=0")`,
    style: 'total',
    format: columnFormat(column.measure, takeoff.standards.unit),
  };
}

function isWorking(column: number): boolean {
  return TAKEOFF_COLUMNS[column]?.role === 'working';
}

/** Neighboring working columns fold away together. */
function foldedColumns(): { first: number; last: number }[] {
  const folded: { first: number; last: number }[] = [];
  TAKEOFF_COLUMNS.forEach((_column, at) => {
    if (!isWorking(at)) return;
    const before = folded.at(-1);
    if (before && before.last === at - 1) before.last = at;
    else folded.push({ first: at, last: at });
  });
  return folded;
}

function validations(body: Body): Validation[] {
  const range = (key: string) => `${LETTERS.get(key)}${body.first}:${LETTERS.get(key)}${body.last}`;
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
