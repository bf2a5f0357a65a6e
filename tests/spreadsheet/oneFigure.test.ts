import { beforeAll, describe, expect, it } from 'vitest';
import { beforeIn } from '../../cli/standing';
import type { Opening } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { factorsOf } from '../../src/takeoff/factors';
import { planBoards } from '../../src/takeoff/boards';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff, type Takeoff } from '../../src/takeoff/takeoff';
import { columnLetters } from '../../src/workbook/address';
import { columnAt } from '../../src/workbook/check/columns';
import { CHECK_HEAD_ROWS } from '../../src/workbook/checkSheet';
import { TAKEOFF_COLUMNS, UNPLANNED, type ColumnKey } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import { readBook } from '../../src/workbook/readBook';
import { takeoffWithEdits } from '../../src/workbook/withEdits';
import { workbookSheets } from '../../src/workbook/workbook';
import { writeXlsx } from '../../src/workbook/xlsx';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { readGrid } from '../../taskpane/workbench/readGrid';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { checkRows } from '../check/quote/example';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { calculated, readStored, type Book } from './calc';
import { driven, type Step } from './drive';

/** Each No. has its own figures in the plain workbook, whatever was done to it: calculated by another program. */

const STANDARDS = defaultStandards();
const OPENINGS: readonly Opening[] = [
  opening({ no: 1, row: 2, mark: 'A', head: 'segmental', span: 36, rise: 8, quantity: 2 }),
  opening({ no: 2, row: 3, mark: 'B', head: 'half round', span: 40, ends: 'legs', leg: 50 }),
  opening({ no: 3, row: 4, mark: 'C', head: 'segmental', span: 48, rise: 9, species: 'Cherry' }),
  opening({ no: 4, row: 5, mark: 'D', head: 'elliptical', span: 60, rise: 20 }),
];
const QUOTE = [
  ['Mark', 'Qty', 'Length', 'Unit price'],
  ...OPENINGS.map(({ mark, quantity }, at) => [mark, quantity, 50 + at, 100 + at]),
];
const EDITED = OPENINGS.map((each) => (each.no === 3 ? { ...each, span: 50 } : each));

const planned = takeoff(OPENINGS, STANDARDS);
/** The wood factors that the workbook was filled with. */
const factors = factorsOf(planned, planBoards(partsOf(planned), STANDARDS));
const filled = takeoff(OPENINGS, STANDARDS, { factors });
const SHEETS = workbookSheets(scheduleOf(OPENINGS), filled, { plain: true, check: checkRows(QUOTE, filled) });

const at = (key: ColumnKey) => TAKEOFF_COLUMNS.findIndex((column) => column.key === key);
const place = (key: ColumnKey, no: number) => `${columnLetters(at(key))}${TAKEOFF_HEAD_ROWS + no}`;

/** Each No. on the Takeoff, and its mark's line on Check, against the core. */
function alike(book: Book, core: Takeoff, isPlanned: (no: number) => boolean): void {
  const sheet = book.get('Takeoff')!;
  const rows = new Map(sheet.slice(TAKEOFF_HEAD_ROWS).map((row) => [row?.[0], row]));
  const same = (cell: unknown, expected: unknown, what: string) => {
    if (typeof expected === 'number') expect(cell, what).toBeCloseTo(expected, 8);
    else expect(cell, what).toBe(expected);
  };
  for (const row of core.openings)
    for (const [column, { key, role, value }] of TAKEOFF_COLUMNS.entries()) {
      if (role !== 'figure' || key === 'lookAt') continue;
      const expected = key === 'plan' ? (isPlanned(row.no) ? '' : UNPLANNED) : (value(row, core) ?? '');
      same(rows.get(row.no)?.[column] ?? '', expected, `${row.no} ${key}`);
    }
  expect(rows.get('Total')?.[at('price')]).toBeCloseTo(core.totals.price, 8);
  const lines = book.get('Check')?.slice(CHECK_HEAD_ROWS) ?? [];
  for (const { opening: own, known, cost } of core.openings) {
    const line = lines.find((each) => each?.[columnAt('mark')] === own.mark)!;
    same(line[columnAt('ourQuantity')], known.quantity, `${own.mark} on Check`);
    same(line[columnAt('ourPrice')], cost?.unitPrice ?? '', `${own.mark} on Check`);
  }
}

/** The plain workbook in the workbench, something done to it, and the file that is saved then. */
async function changed(change: (host: WorkbenchHost, engine: Engine) => Promise<void>) {
  const engine = startHeadless(ARCH_FUNCTIONS);
  try {
    const host = new WorkbenchHost(engine);
    valueOf(await host.writeSheets(SHEETS, { replace: [] }));
    await change(host, engine);
    await engine.settled();
    const table = async (name: string) => valueOf(await host.readSheet(name))!;
    const before = {
      ...{ values: await table('Takeoff'), formulas: valueOf(await host.readFormulas('Takeoff'))! },
      ...{ schedule: await table('Schedule'), stock: await table('Stock') },
    };
    const book = await readGrid(engine, () => Promise.resolve());
    return { before, file: valueOf(writeXlsx(book.sheets, book.settings)) };
  } finally {
    engine.univer.dispose();
  }
}

/** C's span, and the rows by their spans, the longest first. */
async function editedAndSorted(host: WorkbenchHost): Promise<void> {
  valueOf(await host.writeCells('Takeoff', place('span', 3), [[50]], true));
  const { rows } = valueOf(await host.readSheet('Takeoff'))!;
  for (const [to, from] of [4, 3, 2, 1].entries())
    for (const [column, { role }] of TAKEOFF_COLUMNS.entries()) {
      if (role === 'figure') continue;
      const value = (rows[TAKEOFF_HEAD_ROWS + from - 1]?.[column] ?? null) as string | number | null;
      const address = `${columnLetters(column)}${TAKEOFF_HEAD_ROWS + 1 + to}`;
      valueOf(await host.writeCells('Takeoff', address, [[value]], true));
    }
}

describe('saved from the workbench, LibreOffice Calc gives each No. its own figures', () => {
  let again: ReturnType<typeof takeoffWithEdits>;
  let sorted: Book;
  let refilled: Book;
  let deleted: Book;
  beforeAll(async () => {
    const { before, file } = await changed(editedAndSorted);
    again = takeoffWithEdits({ schedule: scheduleOf(OPENINGS), standards: STANDARDS, before });
    const { taken, boards } = again;
    const options = { plain: true, boards, check: checkRows(QUOTE, taken) };
    const filledAgain = valueOf(writeXlsx(workbookSheets(scheduleOf(OPENINGS), taken, options)));
    const { file: without } = await changed(async (_host, engine) => {
      const sheet = engine.api.getActiveWorkbook()!.getSheetByName('Takeoff')!;
      sheet.hideRows(TAKEOFF_HEAD_ROWS + 3, 1);
      sheet.deleteRow(TAKEOFF_HEAD_ROWS + 1);
    });
    [sorted, refilled, deleted] = (await Promise.all([file, filledAgain, without].map(calculated))) as [
      Book,
      Book,
      Book,
    ];
  }, 300_000);

  it('after an edit and a sort', () => {
    const numbers = sorted.get('Takeoff')!.slice(TAKEOFF_HEAD_ROWS, TAKEOFF_HEAD_ROWS + 4);
    expect(numbers.map(([no]) => no)).toEqual([4, 3, 2, 1]);
    alike(sorted, takeoff(EDITED, STANDARDS, { factors }), (no) => no !== 3);
    expect(sorted.get('Takeoff')![0]!.join(' ')).toContain('older than row C');
  });

  it('when the workbook is filled again from the same list', () => {
    expect(again.said).toEqual(['C: kept span 50 from the workbook; the list says 48.']);
    alike(refilled, again.taken, () => true);
  });

  it('after a row is filtered out of sight, and another deleted', () => {
    expect(deleted.get('Takeoff')!.filter((row) => row?.[at('mark')] === 'B')).toEqual([]);
    const left = OPENINGS.filter(({ no }) => no !== 2);
    alike(deleted, takeoff(left, STANDARDS, { factors }), () => true);
    expect(deleted.get('Takeoff')![0]!.join(' ')).toContain('older than the rows: 1 is gone:');
    const gone = deleted.get('Check')!.find((line) => line?.[columnAt('mark')] === 'B')!;
    expect(gone[columnAt('ourPrice')] ?? '').toBe('');
  });
});

describe('edited, sorted, filtered and cut by LibreOffice Calc itself, each No. has its own figures', () => {
  const table = `A${TAKEOFF_HEAD_ROWS}:${columnLetters(TAKEOFF_COLUMNS.length - 1)}${TAKEOFF_HEAD_ROWS + OPENINGS.length}`;
  const edit: Step = ['type', 'Takeoff', place('span', 3), 50];
  const sort: Step = ['sort', 'Takeoff', table, at('span'), 'down'];
  const filter: Step = ['filter', 'Takeoff', table, at('head'), 'segmental'];
  const upward: Step = ['sort', 'Takeoff', table, at('mark'), 'up'];
  const numbers = (book: Book) =>
    book
      .get('Takeoff')!
      .slice(TAKEOFF_HEAD_ROWS, TAKEOFF_HEAD_ROWS + 4)
      .map(([no]) => no);
  const edited = takeoff(EDITED, STANDARDS, { factors });
  let files: Uint8Array[];
  let books: Book[];
  let again: ReturnType<typeof takeoffWithEdits>;
  let refilled: Book;
  beforeAll(async () => {
    const book = valueOf(writeXlsx(SHEETS));
    // The second row from the top is No. 3 once the longest span is first.
    const cut: Step = ['delete', 'Takeoff', TAKEOFF_HEAD_ROWS + 2];
    files = await driven(book, [[edit], [edit, sort], [edit, sort, upward], [edit, filter], [edit, sort, cut]]);
    books = files.map(readStored);
    again = takeoffWithEdits({
      ...{ schedule: scheduleOf(OPENINGS), standards: STANDARDS },
      before: beforeIn(valueOf(readBook(files[1]!))),
    });
    const { taken, boards } = again;
    const filledAgain = workbookSheets(scheduleOf(OPENINGS), taken, {
      ...{ plain: true, boards, check: checkRows(QUOTE, taken) },
    });
    refilled = await calculated(valueOf(writeXlsx(filledAgain)));
  }, 300_000);

  it('after an edit', () => {
    alike(books[0]!, edited, (no) => no !== 3);
    expect(books[0]!.get('Takeoff')![0]!.join(' ')).toContain('older than row C');
  });

  it('after a sort, and another back', () => {
    expect(numbers(books[1]!)).toEqual([4, 3, 2, 1]);
    alike(books[1]!, edited, (no) => no !== 3);
    expect(numbers(books[2]!)).toEqual([1, 2, 3, 4]);
    alike(books[2]!, edited, (no) => no !== 3);
  });

  it('after a filter that hides rows', () => {
    const { hiddenRows } = valueOf(readBook(files[3]!)).sheets.find(({ name }) => name === 'Takeoff')!;
    expect(hiddenRows).toEqual([TAKEOFF_HEAD_ROWS + 1, TAKEOFF_HEAD_ROWS + 3]);
    alike(books[3]!, edited, (no) => no !== 3);
  });

  it('after a row is deleted', () => {
    expect(numbers(books[4]!).slice(0, 3)).toEqual([4, 3, 1]);
    const left = EDITED.filter(({ no }) => no !== 2);
    alike(books[4]!, takeoff(left, STANDARDS, { factors }), (no) => no !== 3);
    expect(books[4]!.get('Takeoff')![0]!.join(' ')).toContain('older than row C, and 1 is gone:');
  });

  it('when what Calc saved is filled again', () => {
    expect(again.said).toEqual(['C: kept span 50 from the workbook; the list says 48.']);
    alike(refilled, again.taken, () => true);
  });
});
