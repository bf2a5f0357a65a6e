import { isFormula } from '../../formulaText';
import type { CellValue, OpeningField, Table } from '../../schedule/opening';
import { asRowCell } from '../../takeoff/row';
import { perInch, UNITS, type Unit } from '../../unit';
import { TAKEOFF_COLUMNS, type ColumnKey, type TakeoffColumn } from './columns';

/** One row of a Takeoff as it stands in a workbook. */
export interface TakeoffRow {
  readonly no: number;
  /** From 1. */
  readonly sheetRow: number;
  /** Inputs by field: figures, words, doubts; null: blank. Lengths in the unit asked for. */
  readonly inputs: Readonly<Record<OpeningField, string | number | null>>;
  /** Formulas (`=…`) of the row's cells, by column; columns without one are left out. */
  readonly formulas: ReadonlyMap<ColumnKey, string>;
  /** Columns of the user's own, by heading. */
  readonly own: ReadonlyMap<string, { readonly value: string | number | null; readonly formula: string | null }>;
}

/** Where the first row says it, from 0. */
export const PLAN_STATE_COLUMN = 3;

const FIRST_HEADING = TAKEOFF_COLUMNS[0]!.heading;
const INPUTS = TAKEOFF_COLUMNS.filter(
  (column): column is TakeoffColumn & { key: OpeningField } => column.role === 'input',
);

/**
 * The rows of a Takeoff sheet, in the order they now stand; null where the sheet is none of ours. `formulas` is the same
 * sheet with `=…` where a cell holds a formula. Inputs are converted to `unit`, whichever the sheet is kept in.
 */
export function readTakeoff(values: Table, formulas: Table | null, unit: Unit): readonly TakeoffRow[] | null {
  const heads = values.rows.findIndex(isTakeoffHeading);
  if (heads < 0) return null;
  const headings = values.rows[heads]!.map((cell) => String(cell ?? ''));
  const place = placesIn(headings);
  const known = new Set(place.values());
  const scale = scaleTo(unit, values.rows[heads - 1]?.[place.get('span') ?? -1]);
  const rows: TakeoffRow[] = [];
  for (let at = heads + 1; at < values.rows.length; at++) {
    const cells = values.rows[at]!;
    const [no] = cells;
    if (typeof no !== 'number') continue;
    const live = (column: number) => {
      const formula = formulas?.rows[at]?.[column];
      return isFormula(formula) ? formula : null;
    };
    const inputs = Object.fromEntries(
      INPUTS.map(({ key, measure }) => {
        const value = asRowCell(cells[place.get(key)!]);
        return [key, typeof value === 'number' && measure === 'input length' ? value * scale : value];
      }),
    ) as Record<OpeningField, string | number | null>;
    const written = new Map<ColumnKey, string>();
    for (const [key, column] of place) {
      const formula = column < 0 ? null : live(column);
      if (formula !== null) written.set(key, formula);
    }
    const own = new Map(
      headings.flatMap((heading, column) => {
        if (known.has(column) || heading === '') return [];
        const value = asRowCell(cells[column]);
        const formula = live(column);
        return value === null && formula === null ? [] : [[heading, { value, formula }] as const];
      }),
    );
    rows.push({ no, sheetRow: values.firstRow + at, inputs, formulas: written, own });
  }
  return rows;
}

/** Where each column of a Takeoff stands, from 0, by the row of its headings: the user may have put others between; -1: nowhere. */
export function placesIn(headings: readonly CellValue[]): ReadonlyMap<ColumnKey, number> {
  return new Map(TAKEOFF_COLUMNS.map(({ key, heading }) => [key, headings.indexOf(heading)]));
}

/** Whether a row of cells holds a Takeoff's headings. */
export function isTakeoffHeading(row: readonly CellValue[]): boolean {
  return row[0] === FIRST_HEADING && row.includes('Mark');
}

/** Whether the sheet's columns stand where a filling puts them, the user's own behind them: formulas elsewhere rest on that. */
export function hasOurColumns({ rows }: Table): boolean {
  const headings = rows.find(isTakeoffHeading);
  return headings !== undefined && TAKEOFF_COLUMNS.every(({ heading }, at) => headings[at] === heading);
}

/** What a Takeoff says of its plan of boards and set-ups; empty: it is made from the rows as they stand. */
export function planState({ rows, firstRow }: Table): string {
  const said = firstRow === 1 ? rows[0]?.[PLAN_STATE_COLUMN] : null;
  return typeof said === 'string' ? said : '';
}

/** From the unit a sheet is kept in to another; where the sheet doesn't say, it is kept in the other. */
export function scaleTo(unit: Unit, kept: CellValue | undefined): number {
  const from = UNITS.find((each) => each === kept) ?? unit;
  return from === unit ? 1 : perInch(unit) / perInch(from);
}
