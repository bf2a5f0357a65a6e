import { describe, expect, it } from 'vitest';
import type { CellValue, Opening, Table } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { keptFrom, reapply, type OwnColumn } from '../../src/workbook/refill';
import type { Sheet } from '../../src/workbook/sheet';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoffColumns';
import { held } from '../../src/workbook/workbook';
import { takeoffSource } from '../../src/workbook/takeoffSheet';
import { opening } from '../takeoff/openings';

const OPENINGS: readonly Opening[] = [
  opening({ row: 4, mark: 'W1', head: 'segmental', span: 36, rise: 6 }),
  opening({ row: 5, mark: 'W2', head: 'half round', span: 40, face: 4.25 }),
  opening({
    row: 6,
    mark: 'W3',
    head: 'segmental',
    span: 48,
    problems: [{ row: 6, field: 'rise', message: 'Rise is missing.' }],
  }),
  opening({ row: 7, mark: 'W4', head: 'segmental', span: 50, rise: 9, rough: { span: 52 } }),
];

function sheet(openings = OPENINGS, own: readonly OwnColumn[] = []): Sheet {
  return held(takeoffSource(takeoff(openings, defaultStandards()), false, own));
}

/** A sheet as a host gives it back: its values, or its formulas. */
function tableOf(from: Sheet, formulas = false): Table {
  const rows = from.rows.map((row) =>
    row.map((cell): CellValue =>
      formulas && cell?.formula !== undefined ? `=${cell.formula}` : (cell?.value ?? null),
    ),
  );
  return { name: 'Takeoff', firstRow: 1, rows };
}

const at = (key: string) => TAKEOFF_COLUMNS.findIndex((column) => column.key === key);

/** The sheet after a user typed into one cell of an opening's row (from 0). */
function typed(into: number, key: string, value: CellValue): { values: Table; formulas: Table } {
  const change = (table: Table): Table => ({
    ...table,
    rows: table.rows.map((row, index) =>
      index === 5 + into ? row.map((cell, column) => (column === at(key) ? value : cell)) : row,
    ),
  });
  return { values: change(tableOf(sheet())), formulas: change(tableOf(sheet(), true)) };
}

describe('filling again', () => {
  it('finds nothing to keep in a takeoff nobody touched', () => {
    expect(keptFrom(tableOf(sheet()), tableOf(sheet(), true), 'in')).toEqual({ edits: [], ownColumns: [] });
  });

  it.each([
    [0, 'span', 37, 36],
    [1, 'face', 3.25, 4.25],
    [0, 'face', 5, null],
    [0, 'reveal', 0, null],
    [2, 'rise', 8, null],
    [1, 'rise', 21, null],
    [0, 'species', 'Cherry', null],
    [0, 'leg', 60, null],
    [3, 'span', 51, 50],
  ] as const)('keeps an input changed by hand: opening %i, %s', (into, field, value, was) => {
    const { values, formulas } = typed(into, field, value);
    const { edits } = keptFrom(values, formulas, 'in');
    expect(edits).toEqual([{ row: 4 + into, mark: `W${into + 1}`, field, value, was }]);
    const { openings, said } = reapply(OPENINGS, edits);
    expect(openings[into]![field]).toBe(value);
    expect(openings[into]!.problems).toEqual([]);
    expect(said).toHaveLength(1);
    // What was put in is what the takeoff then computes with.
    expect(takeoff(openings, defaultStandards()).openings[into]!.known[field]).toBe(value);
  });

  it('keeps it at the next filling, and at the one after that', () => {
    const { values, formulas } = typed(0, 'span', 37);
    let { openings } = reapply(OPENINGS, keptFrom(values, formulas, 'in').edits);
    for (let filling = 0; filling < 2; filling++) {
      const filled = sheet(openings);
      const { edits } = keptFrom(tableOf(filled), tableOf(filled, true), 'in');
      expect(edits).toEqual([{ row: 4, mark: 'W1', field: 'span', value: 37, was: 36 }]);
      ({ openings } = reapply(OPENINGS, edits));
      expect(openings[0]!.span).toBe(37);
    }
  });

  it('keeps the figure of a formula typed over an input', () => {
    const { values } = typed(0, 'span', 37.5);
    const { formulas } = typed(0, 'span', '=75/2');
    expect(keptFrom(values, formulas, 'in').edits).toMatchObject([{ field: 'span', value: 37.5, was: 36 }]);
  });

  it('says so where a changed row is no longer in the list', () => {
    const { values, formulas } = typed(0, 'span', 37);
    const { openings, said } = reapply(OPENINGS.slice(1), keptFrom(values, formulas, 'in').edits);
    expect(openings).toEqual(OPENINGS.slice(1));
    expect(said).toEqual(['Row 4 W1: span 37 was changed in the workbook, but the list has no such row now.']);
  });

  it('does not take text where a figure belongs', () => {
    const { values, formulas } = typed(0, 'span', 'about 37');
    const { openings, said } = reapply(OPENINGS, keptFrom(values, formulas, 'in').edits);
    expect(openings[0]).toEqual(OPENINGS[0]);
    expect(said).toEqual([`W1: the workbook's span "about 37" can't be used; the list says 36.`]);
  });

  it("keeps the user's own columns by row and mark, formulas where the row did not move", () => {
    const withOwn = (table: Table, cells: readonly CellValue[]): Table => ({
      ...table,
      rows: table.rows.map((row, index) =>
        index === 3 ? [...row, 'Painter'] : index >= 5 && index < 9 ? [...row, cells[index - 5]!] : row,
      ),
    });
    const values = withOwn(tableOf(sheet()), ['Ann', null, 12, 7]);
    const formulas = withOwn(tableOf(sheet(), true), ['Ann', null, '=C8*6', '=C9*7']);
    const { ownColumns } = keptFrom(values, formulas, 'in');
    const again = sheet(OPENINGS, ownColumns);
    const last = (row: number) => again.rows[row]!.at(-1);
    expect(last(3)).toMatchObject({ value: 'Painter' });
    expect(last(5)).toMatchObject({ value: 'Ann' });
    expect(last(6)).toBeNull();
    expect(last(7)).toMatchObject({ value: 12, formula: 'C8*6' });
    // One row up, the formula would name another row's cell: its value stays.
    const moved = sheet(OPENINGS.slice(1), ownColumns);
    expect(moved.rows[6]!.at(-1)).toEqual({ value: 12, style: 'text' });
  });

  it("keeps the user's own cells beside an opening whose mark was changed by hand", () => {
    const cells = new Map([['[4,"W1"]', { value: 'Ann', formula: null, sheetRow: 6 }]]);
    const { values, formulas } = typed(0, 'mark', 'W9');
    const { openings } = reapply(OPENINGS, keptFrom(values, formulas, 'in').edits);
    const again = sheet(openings, [{ heading: 'Painter', cells }]);
    expect(again.rows[5]![at('mark')]).toMatchObject({ value: 'W9' });
    expect(again.rows[5]!.at(-1)).toMatchObject({ value: 'Ann' });
  });

  it('every heading of the takeoff is its own, so that a column can be found again', () => {
    const headings = TAKEOFF_COLUMNS.map(({ heading }) => heading);
    expect(new Set(headings).size).toBe(headings.length);
  });
});
