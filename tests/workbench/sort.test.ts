import { afterAll, beforeAll, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { columnLetters } from '../../src/workbook/address';
import { TAKEOFF_COLUMNS, type ColumnKey } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import { planState } from '../../src/workbook/takeoff/read';
import { workbookSheets } from '../../src/workbook/workbook';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { GridTools } from '../../taskpane/workbench/page/gridTools';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';

/** The bar's own sorting: whole rows go along, with what stands beside the table and what was typed over a formula. */

const STANDARDS = defaultStandards();
const OPENINGS = [
  opening({ no: 1, row: 2, mark: 'A', head: 'segmental', span: 36, rise: 8, quantity: 2 }),
  opening({ no: 2, row: 3, mark: 'B', head: 'half round', span: 60, ends: 'legs', leg: 50 }),
  opening({ no: 3, row: 4, mark: 'C', head: 'segmental', span: 48, rise: 9, species: 'Cherry' }),
  opening({ no: 4, row: 5, mark: 'D', head: 'segmental', span: 44 }),
  opening({ no: 5, row: 6, mark: 'E', head: 'segmental', span: 36, rise: 8, quantity: 2 }),
];
let engine: Engine;
let host: WorkbenchHost;
const said: string[] = [];
beforeAll(async () => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  const sheets = workbookSheets(scheduleOf(OPENINGS), takeoff(OPENINGS, STANDARDS));
  valueOf(await host.writeSheets(sheets, { replace: [] }));
  await engine.settled();
}, 60_000);
afterAll(() => engine.univer.dispose());

const at = (key: ColumnKey) => TAKEOFF_COLUMNS.findIndex((column) => column.key === key);
const cell = (key: ColumnKey, row: number) => `${columnLetters(at(key))}${TAKEOFF_HEAD_ROWS + 1 + row}`;
const body = async () => {
  await engine.settled();
  const [values, formulas] = [valueOf(await host.readSheet('Takeoff'))!, valueOf(await host.readFormulas('Takeoff'))!];
  return {
    state: planState(values),
    rows: values.rows.slice(TAKEOFF_HEAD_ROWS, TAKEOFF_HEAD_ROWS + OPENINGS.length),
    formulas: formulas.rows.slice(TAKEOFF_HEAD_ROWS, TAKEOFF_HEAD_ROWS + OPENINGS.length),
  };
};
const byNumber = (rows: readonly (readonly unknown[])[]) => new Map(rows.map((row) => [row[0], row]));

it('by a column, largest first: each No. keeps all that it had, no formula changes, and one undo puts the rows back', async () => {
  valueOf(await host.show('Takeoff', cell('span', 1)));
  const tools = new GridTools(engine, (sentence) => said.push(sentence));
  const before = await body();
  tools.sort(true);
  const after = await body();
  expect(said.pop()).toBe('Sorted by Span, largest first. Undo puts the rows back.');
  expect(after.rows.map(([no]) => no)).toEqual([2, 3, 4, 1, 5]);
  expect(byNumber(after.rows)).toEqual(byNumber(before.rows));
  expect(after.state).toBe('');
  // Each row's formulas are those that stand there: of its own cells.
  for (const [row, cells] of after.formulas.entries())
    for (const [column, formula] of cells.entries())
      if (typeof formula === 'string' && formula.startsWith('=')) expect(formula).toBe(before.formulas[row]![column]);
  await engine.api.undo();
  const back = await body();
  expect(back.rows).toEqual(before.rows);
  expect(back.formulas).toEqual(before.formulas);
}, 30_000);

it('takes along a price that was typed over its formula, and leaves rows that are in order as they are', async () => {
  valueOf(await host.writeCells('Takeoff', cell('price', 2), [[999]], true));
  const before = await body();
  valueOf(await host.show('Takeoff', cell('span', 1)));
  const tools = new GridTools(engine, (sentence) => said.push(sentence));
  tools.sort(false);
  const after = await body();
  expect(after.rows.map(([no]) => no)).toEqual([1, 5, 4, 3, 2]);
  expect(byNumber(after.rows)).toEqual(byNumber(before.rows));
  const typed = after.formulas.map((cells) => cells[at('price')]);
  expect(typed.map((price) => price === 999)).toEqual([false, false, false, true, false]);
  tools.sort(false);
  expect((await body()).rows).toEqual(after.rows);
  expect(said.at(-1)).toMatch(/^Sorted by Span, smallest first/);
}, 30_000);

it('takes along the heights of rows, set by hand or found for their text, and an undo puts them back', async () => {
  const sheet = engine.workbook.getSheetBySheetName('Takeoff')!;
  const first = TAKEOFF_HEAD_ROWS;
  const heights = () => OPENINGS.map((_, at) => sheet.getRowHeight(first + at));
  const noOf = async () => (await body()).rows.map(([no]) => no);
  expect(await noOf()).toEqual([1, 5, 4, 3, 2]);
  Object.assign(sheet.getRowManager().getRowOrCreate(first), { h: 70, ia: 0 });
  Object.assign(sheet.getRowManager().getRowOrCreate(first + 4), { ah: 55 });
  const before = heights();
  expect([before[0], before[4]]).toEqual([70, 55]);
  valueOf(await host.show('Takeoff', cell('span', 1)));
  new GridTools(engine, (sentence) => said.push(sentence)).sort(true);
  expect(await noOf()).toEqual([2, 3, 4, 1, 5]);
  const [of1, of5, of4, of3, of2] = before;
  expect(heights()).toEqual([of2, of3, of4, of1, of5]);
  await engine.api.undo();
  expect(await noOf()).toEqual([1, 5, 4, 3, 2]);
  expect(heights()).toEqual(before);
}, 30_000);
