import { takenApart } from '../../formulaText';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import { columnLetters } from '../address';
import { groupRow, headingRow, unitRow } from '../columnHeads';
import { columnFormat } from '../format';
import { plainFormula } from '../formulas/plain';
import type { Cell, SheetSource } from '../sheet';
import type { WorkingFigure } from '../takeoff/sheet';
import type { WorkingColumn } from './column';
import { WORKING_COLUMNS } from './columns';
import { FITTED_HEADS } from './formulas';
import type { WorkingKey } from './keys';
import { workingTakeoff, type WorkingTakeoff } from './shared';

/** Rows above the figures: title, what it is, groups, headings, units. */
const HEAD_ROWS = 5;

const KEYS = Object.keys(WORKING_COLUMNS) as WorkingKey[];
const COLUMNS: readonly WorkingColumn[] = Object.values(WORKING_COLUMNS);
const LETTERS = Object.fromEntries(KEYS.map((key, at) => [key, columnLetters(at)])) as Readonly<
  Record<WorkingKey, string>
>;

interface Body {
  readonly first: number;
  readonly last: number;
}

function bodyOf(openings: number): Body {
  return { first: HEAD_ROWS + 1, last: HEAD_ROWS + Math.max(1, openings) };
}

function columnRange(key: WorkingKey, { first, last }: Body): string {
  return `$${LETTERS[key]}$${first}:$${LETTERS[key]}$${last}`;
}

/** A working figure of all openings, for formulas on other sheets. */
export function workingRange(key: WorkingKey, openings: number): string {
  return `Working!${columnRange(key, bodyOf(openings))}`;
}

/** How a figure of the Takeoff is looked up here: by the opening's number, so that sorting the Takeoff moves nothing. */
export function workingFigure(openings: number): WorkingFigure {
  const numbers = workingRange('no', openings);
  // Without its number the row says so itself.
  return (figure, at) => `IF(${at.no}="","",INDEX(${workingRange(figure, openings)},MATCH(${at.no},${numbers},0)))`;
}

/** Every figure on the way, in functions that every spreadsheet has; only the plain workbook has this sheet. */
export function workingSource(takeoff: Takeoff): SheetSource {
  const given = workingTakeoff(takeoff);
  const body = bodyOf(takeoff.openings.length);
  return {
    name: 'Working',
    rows: { [Symbol.iterator]: () => rowsOf(given, body) },
    widths: COLUMNS.map(({ width }) => width),
    frozenRows: HEAD_ROWS,
    frozenColumns: 1,
    names: [{ name: 'Shares', ref: `Working!$A$${body.first}:$C$${body.last}` }],
    repeatRows: [4, HEAD_ROWS],
    landscape: true,
    home: `B${body.first}`,
    locked: true,
    columnKeys: KEYS,
    body: [body.first, body.last],
  };
}

function* rowsOf(takeoff: WorkingTakeoff, body: Body): Generator<(Cell | null)[]> {
  const resolve = resolver(body);
  yield [{ value: 'Working', style: 'title' }];
  yield [
    {
      value: 'Figures on the way, for the sheet Takeoff. Nothing is typed here: change the Takeoff or the Standards.',
      style: 'text',
    },
  ];
  yield groupRow(COLUMNS, () => false);
  yield headingRow(COLUMNS);
  yield unitRow(COLUMNS, takeoff.standards.unit);
  const byNumber = [...takeoff.openings].sort((one, other) => one.no - other.no);
  for (const [at, row] of byNumber.entries()) {
    yield COLUMNS.map((column) => cellOf(column, row, takeoff, (text) => resolve(text, body.first + at)));
  }
}

function cellOf(
  column: WorkingColumn,
  row: OpeningTakeoff,
  takeoff: WorkingTakeoff,
  resolve: (template: string) => string,
): Cell | null {
  const template = column.formula(row, takeoff);
  const value = column.value(row, takeoff) ?? null;
  const format = columnFormat(column.measure, takeoff.standards.unit, value);
  if (template === null) return value === null ? null : { value, style: 'figure', format };
  const native = plainFormula(resolve(template), (call) => fittedFigure(call, row));
  return {
    value: value ?? '',
    style: 'figure',
    // Text format would keep Excel from calculating a formula typed over it.
    format: format === '@' ? 'General' : format,
    formula: native.formula,
    ...(native.fixed
      ? {
          comment:
            'Holds arcs fitted to this ellipse: fill the takeoff again after changing its head, span, rise or arcs.',
        }
      : {}),
  };
}

/**
 * Arcs fitted to an ellipse have no closed form: the plain workbook holds the fitted figure. `call` is
 * `INDEX(ARCH.HEADARCS(…),kind,column)`: of the kinds of ring, the crown 1, radius, angle or deviation.
 */
function fittedFigure(call: string, row: OpeningTakeoff): number {
  const [, kind, figure] = /,(\d),(\d)\)$/.exec(call) ?? [];
  const { curve } = row;
  if (!curve || row.known.head === null || !FITTED_HEADS.includes(row.known.head)) return 0;
  const ring = curve.rings[Number(kind) - 1];
  return (figure === '1' ? ring?.radius : figure === '2' ? ring?.angle : curve.deviation) ?? 0;
}

/** A column's template with its places filled in. Templates recur down the column, so each is taken apart once. */
function resolver(body: Body): (template: string, row: number) => string {
  const known = new Map<
    string,
    { readonly texts: readonly string[]; readonly places: readonly ((row: string) => string)[] }
  >();
  return (text, row) => {
    const rowText = String(row);
    let template = known.get(text);
    if (template === undefined) {
      const { texts, keys } = takenApart<WorkingKey>(text);
      const places = keys.map(({ key, all }) => {
        const range = columnRange(key, body);
        return all ? () => range : (of: string) => LETTERS[key] + of;
      });
      template = { texts, places };
      known.set(text, template);
    }
    const { texts, places } = template;
    const parts = [texts[0]!];
    for (let at = 0; at < places.length; at++) parts.push(places[at]!(rowText), texts[at + 1]!);
    // Joined, not added up: a sum of strings keeps all its pieces in memory.
    return parts.join('');
  };
}
