import { ok, refuse } from '../../src/result';
import type { Takeoff } from '../../src/takeoff/takeoff';
import type { SheetName } from '../../src/workbook/sheet';
import type { Core } from './core';
import type { Filled } from './state';

/** Our sheets in the order they stand, with what each is for. */
const SHEETS: readonly (readonly [SheetName, string])[] = [
  ['Takeoff', 'A row for every opening, with its price'],
  ['Stock', 'Boards to buy and how to cut them'],
  ['Setups', 'What the person at the machine needs, for each pair of guides'],
  ['Schedule', 'The list as it was read, row by row'],
  ['Standards', 'Every shop setting; change one and the workbook follows'],
  ['Check', 'A quote against the takeoff'],
];

/** The core behind the pane. Readers and the workbook are fetched when they are first needed. */
export const core: Core = {
  sheetOrder: SHEETS.map(([name]) => name),

  async readTables(name, bytes) {
    const { readTables } = await import('../../src/schedule/readTables');
    return readTables(name, bytes);
  },

  async readSchedule(table, standards, choices) {
    const { readSchedule } = await import('../../src/schedule/readSchedule');
    return readSchedule(table, standards, choices);
  },

  async fix(openings, at, field, text, standards) {
    const { fixOpening } = await import('./fix');
    return fixOpening(openings, at, field, text, standards);
  },

  async workbook(schedule, standards, { plain, signal }) {
    const [{ takeoff }, { workbookSheets }, { TAKEOFF_HEAD_ROWS }] = await Promise.all([
      import('../../src/takeoff/takeoff'),
      import('../../src/workbook/workbook'),
      import('../../src/workbook/takeoffSheet'),
    ]);
    const taken = takeoff(schedule.openings, standards);
    if (signal.aborted) return refuse('Stopped. The workbook is as it was.');
    const sheets = workbookSheets(schedule, taken, { plain });
    const written = new Set<string>(sheets.map((sheet) => sheet.name));
    const about = SHEETS.filter(([name]) => written.has(name)).map(([name, words]) => ({
      name,
      about: words,
      address: sheets.find((sheet) => sheet.name === name)?.home ?? 'A1',
    }));
    return ok({ sheets, filled: filledOf(taken, about, TAKEOFF_HEAD_ROWS + 1) });
  },
};

function filledOf(taken: Takeoff, sheets: Filled['sheets'], firstRow: number): Filled {
  const needs = taken.openings.flatMap((row, at) =>
    row.needs.length === 0
      ? []
      : [{ mark: row.opening.mark, row: row.opening.row, address: `B${firstRow + at}`, need: row.needs.join(' ') }],
  );
  const price = taken.totals.open < taken.totals.openings ? taken.totals.price : null;
  return { openings: taken.totals.openings, price, sheets, needs };
}
