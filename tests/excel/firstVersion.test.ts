import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { addressOf } from '../../src/workbook/address';
import { readBook, type ReadBook } from '../../src/workbook/readBook';
import { readStandards } from '../../src/workbook/readStandards';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import { takeoffWithEdits } from '../../src/workbook/withEdits';
import { workbookSheets } from '../../src/workbook/workbook';
import { excelHost } from '../../taskpane/excel/excelHost';
import { takeoffBefore } from '../../taskpane/pane/deeds/fill';
import { coreWith } from '../../taskpane/pane/loadCore';
import { reduce } from '../../taskpane/pane/reducer';
import { initialState } from '../../taskpane/pane/state';
import { createStore } from '../../taskpane/pane/store';
import { scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { firstVersionsList } from '../workbook/firstVersionsList';
import { FakeWorkbook } from './fakeExcel';
import { install } from './officeJs';

/** A workbook as Excel holds it once the file is open: formulas with what they give, names, and the locks of its sheets. */
function opened({ sheets }: ReadBook): FakeWorkbook {
  const book = new FakeWorkbook(Object.fromEntries(sheets.map(({ name }) => [name, []])));
  for (const { name, rows, locked, names = [] } of sheets) {
    for (const each of names) book.names.set(each.name, `=${each.ref}`);
    const sheet = book.sheet(name);
    sheet.protected = locked ?? false;
    for (const [row, cells] of [...rows].entries())
      for (const [column, cell] of cells.entries()) {
        if (!cell || (cell.value === null && cell.formula === undefined)) continue;
        const address = addressOf({ row, column });
        sheet.cells.set(address, cell.formula === undefined ? cell.value! : `=${cell.formula}`);
        if (cell.formula !== undefined) sheet.results.set(address, cell.value ?? '');
      }
  }
  return book;
}

test('a workbook of the first version that is open in Excel is taken over by filling it again, and what is not is said', async () => {
  const file = new Uint8Array(readFileSync(new URL('../workbook/firstVersion.xlsx', import.meta.url)));
  const book = opened(valueOf(readBook(file)));
  install(book);
  const old = [...book.names.keys()];
  const host = excelHost();
  const takeoff = book.sheet('Takeoff');
  const headings = valueOf(await host.readSheet('Takeoff'))!.rows;
  const heads = headings.findIndex((row) => row[0] === 'Source row');
  const rowOf = (source: number) => headings.findIndex((cells, at) => at > heads && cells[0] === source);
  const at = (source: number, heading: string) =>
    addressOf({ row: rowOf(source), column: headings[heads]!.lastIndexOf(heading) });
  const own = headings[heads]!.lastIndexOf('Price') + 1;
  // By hand: an input, a figure typed over, a column of one's own, a row whose "As filled" is gone, a setting.
  takeoff.cells.set(at(3, 'Span'), 42);
  takeoff.cells.set(at(2, 'Price'), 99);
  takeoff.cells.set(addressOf({ row: heads, column: own }), 'Floor');
  takeoff.cells.set(addressOf({ row: rowOf(3), column: own }), 'second');
  takeoff.cells.set(at(6, 'As filled'), 'x');
  const standardsRows = valueOf(await host.readSheet('Standards'))!.rows;
  const reveal = addressOf({ row: standardsRows.findIndex(([label]) => label === 'Reveal'), column: 1 });
  book.sheet('Standards').cells.set(reveal, 0.25);

  const options = { example: () => Promise.reject(new Error('none')) };
  const bench = { host, core: coreWith(null), store: createStore(reduce, initialState(defaultStandards())), options };
  const standards = valueOf(readStandards(valueOf(await host.readSheet('Standards'))!));
  expect(standards.reveal).toBe(0.25);
  const schedule = scheduleOf(firstVersionsList());
  const before = valueOf(await takeoffBefore(bench));
  const { taken, boards, said, ownColumns } = takeoffWithEdits({ schedule, standards, before });
  expect(said).toEqual([
    'Row 6 A4: what the list gave is no longer told in the column "As filled", so inputs changed by hand there are not kept.',
    'A2: kept span 42 from the workbook; the list says 40.',
    'A1: Price had a figure typed over its formula, which is written again. Use Price agreed to set a price.',
  ]);
  const sheets = workbookSheets(schedule, taken, { boards, ownColumns });
  expect(await host.writeSheets(sheets, { replace: sheets.map(({ name }) => name) })).toEqual({
    ok: true,
    value: undefined,
  });

  const now = (row: number, column: number) => book.sheet('Takeoff').cells.get(addressOf({ row, column }));
  expect(TAKEOFF_COLUMNS.map((_, column) => now(TAKEOFF_HEAD_ROWS - 1, column))).toEqual(
    TAKEOFF_COLUMNS.map(({ heading }) => heading),
  );
  const column = (key: string) => TAKEOFF_COLUMNS.findIndex((each) => each.key === key);
  expect(now(TAKEOFF_HEAD_ROWS + 1, column('span'))).toBe(42);
  expect(now(TAKEOFF_HEAD_ROWS, column('price'))).toMatch(/^=/);
  expect(now(TAKEOFF_HEAD_ROWS - 1, TAKEOFF_COLUMNS.length)).toBe('Floor');
  expect(now(TAKEOFF_HEAD_ROWS + 1, TAKEOFF_COLUMNS.length)).toBe('second');
  // Nothing of the first version stands below or beside, and no name of its own.
  const wanted = sheets.flatMap(({ names = [] }) => names).map(({ name }) => name);
  expect(old.filter((name) => !wanted.includes(name)).length).toBeGreaterThan(0);
  expect([...book.names.keys()].sort()).toEqual([...wanted].sort());
  expect([...book.sheet('Takeoff').cells.values()]).not.toContain('As filled');
  expect([...book.sheet('Takeoff').cells.values()]).not.toContain('Source row');
});
