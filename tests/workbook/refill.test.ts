import { describe, expect, it } from 'vitest';
import type { CellValue, Opening, Table } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { keptFrom, NOTHING_KEPT, reapply, type Before, type OwnColumn } from '../../src/workbook/refill';
import { scheduleSheet } from '../../src/workbook/scheduleSheet';
import type { Sheet } from '../../src/workbook/sheet';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoff/columns';
import { held } from '../../src/workbook/workbook';
import { takeoffSource } from '../../src/workbook/takeoff/sheet';
import { opening, scheduleOf } from '../takeoff/openings';

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

const STANDARDS = defaultStandards();

function sheet(openings = OPENINGS, own: readonly OwnColumn[] = []): Sheet {
  return held(takeoffSource(takeoff(openings, STANDARDS), null, own));
}

/** The Schedule sheet that a filling with these openings writes. */
function schedule(openings = OPENINGS): Table {
  return tableOf(scheduleSheet(scheduleOf(openings), takeoff(openings, STANDARDS), false));
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
function typed(into: number, key: string, value: CellValue, formula: CellValue = value): Before {
  const change = (table: Table, cell: CellValue): Table => ({
    ...table,
    rows: table.rows.map((row, index) =>
      index === 5 + into ? row.map((was, column) => (column === at(key) ? cell : was)) : row,
    ),
  });
  return {
    values: change(tableOf(sheet()), value),
    formulas: change(tableOf(sheet(), true), formula),
    schedule: schedule(),
  };
}

const untouched = (openings = OPENINGS): Before => ({
  values: tableOf(sheet(openings)),
  formulas: tableOf(sheet(openings), true),
  schedule: schedule(openings),
});

describe('filling again', () => {
  it('finds nothing to keep in a takeoff nobody touched', () => {
    expect(keptFrom(untouched(), 'in')).toMatchObject({ edits: [], typedOver: [], ownColumns: [], numbersGiven: 4 });
    expect(keptFrom({ ...untouched(), schedule: null }, 'in')).toEqual(NOTHING_KEPT);
  });

  it.each([
    [0, 'span', 37, 36],
    [1, 'face', 3.25, 4.25],
    [0, 'face', 5, null],
    [0, 'reveal', 0, null],
    [2, 'rise', 8, '? Rise is missing.'],
    [1, 'rise', 21, null],
    [0, 'species', 'Cherry', null],
    [0, 'leg', 60, null],
    [3, 'span', 51, 50],
  ] as const)('keeps an input changed by hand: opening %i, %s', (into, field, value, was) => {
    const kept = keptFrom(typed(into, field, value), 'in');
    expect(kept.edits).toEqual([{ no: into + 1, row: 4 + into, mark: `W${into + 1}`, field, value, was }]);
    const { openings, said } = reapply(OPENINGS, kept, STANDARDS);
    expect(openings[into]![field]).toBe(value);
    expect(openings[into]!.problems).toEqual([]);
    expect(said).toHaveLength(1);
    // What was put in is what the takeoff then computes with.
    expect(takeoff(openings, defaultStandards()).openings[into]!.cells[field]).toBe(value);
  });

  it('keeps it at the next filling, and at the one after that', () => {
    let { openings } = reapply(OPENINGS, keptFrom(typed(0, 'span', 37), 'in'), STANDARDS);
    for (let filling = 0; filling < 2; filling++) {
      const kept = keptFrom(untouched(openings), 'in');
      expect(kept.edits).toEqual([{ no: 1, row: 4, mark: 'W1', field: 'span', value: 37, was: 36 }]);
      ({ openings } = reapply(OPENINGS, kept, STANDARDS));
      expect(openings[0]!.span).toBe(37);
    }
  });

  it('keeps the figure of a formula typed over an input', () => {
    expect(keptFrom(typed(0, 'span', 37.5, '=75/2'), 'in').edits).toMatchObject([
      { field: 'span', value: 37.5, was: 36 },
    ]);
  });

  it('says so where a changed row is no longer in the list', () => {
    const { openings, said } = reapply(OPENINGS.slice(1), keptFrom(typed(0, 'span', 37), 'in'), STANDARDS);
    expect(openings).toEqual(OPENINGS.slice(1).map((each, index) => ({ ...each, no: index + 2 })));
    expect(said).toEqual(['Row 4 W1: span 37 was changed in the workbook, but the list has no such row now.']);
  });

  it('does not take text where a figure belongs', () => {
    const { openings, said } = reapply(OPENINGS, keptFrom(typed(0, 'span', 'about 37'), 'in'), STANDARDS);
    expect(openings[0]).toEqual({ ...OPENINGS[0], no: 1 });
    expect(said).toEqual([`W1: the workbook's span "about 37" can't be used; the list says 36.`]);
  });

  it("keeps the user's own columns by the openings' numbers, formulas where the row did not move", () => {
    const withOwn = (table: Table, cells: readonly CellValue[]): Table => ({
      ...table,
      rows: table.rows.map((row, index) =>
        index === 4 ? [...row, 'Painter'] : index >= 5 && index < 9 ? [...row, cells[index - 5]!] : row,
      ),
    });
    const values = withOwn(tableOf(sheet()), ['Ann', null, 12, 7]);
    const formulas = withOwn(tableOf(sheet(), true), ['Ann', null, '=C8*6', '=C9*7']);
    const { ownColumns } = keptFrom({ values, formulas, schedule: schedule() }, 'in');
    const again = sheet(OPENINGS, ownColumns);
    const last = (row: number) => again.rows[row]!.at(-1);
    expect(last(4)).toMatchObject({ value: 'Painter' });
    expect(last(5)).toMatchObject({ value: 'Ann' });
    expect(last(6)).toBeNull();
    expect(last(7)).toMatchObject({ value: 12, formula: 'C8*6' });
    // One row up, the formula would name another row's cell: its value stays.
    const moved = sheet(
      OPENINGS.slice(1).map((each, index) => ({ ...each, no: index + 2 })),
      ownColumns,
    );
    expect(moved.rows[6]!.at(-1)).toEqual({ value: 12, style: 'text' });
  });

  it("keeps the user's own cells beside an opening whose mark was changed by hand", () => {
    const cells = new Map([[1, { value: 'Ann', formula: null, sheetRow: 6 }]]);
    const { openings } = reapply(OPENINGS, keptFrom(typed(0, 'mark', 'W9'), 'in'), STANDARDS);
    const again = sheet(openings, [{ heading: 'Painter', cells }]);
    expect(again.rows[5]![at('mark')]).toMatchObject({ value: 'W9' });
    expect(again.rows[5]!.at(-1)).toMatchObject({ value: 'Ann' });
  });

  it('lists a figure typed over its formula, which is written again', () => {
    const kept = keptFrom(typed(1, 'unitPrice', 99), 'in');
    expect(kept.typedOver).toEqual([{ no: 2, mark: 'W2', heading: 'Unit price' }]);
    expect(reapply(OPENINGS, kept, STANDARDS).said).toEqual([
      'W2: Unit price had a figure typed over its formula, which is written again. Use Price agreed to set a price.',
    ]);
  });

  it('an opening keeps its number where it moved in the list; a new one gets a number never given', () => {
    const kept = keptFrom(untouched(), 'in');
    const moved = [
      { ...OPENINGS[3]!, row: 4 },
      opening({ row: 5, mark: 'W9', head: 'round', span: 20 }),
      { ...OPENINGS[0]!, row: 6 },
    ];
    expect(reapply(moved, kept, STANDARDS).openings.map(({ no }) => no)).toEqual([4, 5, 1]);
  });

  it('every heading of the takeoff is its own, so that a column can be found again', () => {
    const headings = TAKEOFF_COLUMNS.map(({ heading }) => heading);
    expect(new Set(headings).size).toBe(headings.length);
  });
});
