import { expect, it } from 'vitest';
import type { Opening } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { factorsOf } from '../../src/takeoff/factors';
import { planBoards } from '../../src/takeoff/boards';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff } from '../../src/takeoff/takeoff';
import type { Cell } from '../../src/workbook/sheet';
import { TAKEOFF_COLUMNS, UNPLANNED } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import { workbookSheets } from '../../src/workbook/workbook';
import { writeXlsx } from '../../src/workbook/xlsx';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { calculated } from './calc';

const STANDARDS = defaultStandards();
const OPENINGS: readonly Opening[] = [
  opening({ no: 1, row: 2, mark: 'A', head: 'segmental', span: 36, rise: 8, quantity: 2 }),
  opening({ no: 2, row: 3, mark: 'B', head: 'half round', span: 40, ends: 'legs', leg: 50 }),
  opening({ no: 3, row: 4, mark: 'C', head: 'segmental', span: 48, rise: 9, species: 'Cherry' }),
  opening({ no: 4, row: 5, mark: 'D', head: 'elliptical', span: 60, rise: 20 }),
];

it('LibreOffice Calc gives each No. its own figures after an edit and a sort', async () => {
  const sheets = workbookSheets(scheduleOf(OPENINGS), takeoff(OPENINGS, STANDARDS), { plain: true });
  const span = TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'span');
  const isInput = TAKEOFF_COLUMNS.map(({ role }) => role !== 'figure');
  const changed = sheets.map((sheet) => {
    if (sheet.name !== 'Takeoff') return sheet;
    const first = TAKEOFF_HEAD_ROWS;
    // D, C edited, B, A: sorted by span, the longest first.
    const inputs = [3, 2, 1, 0].map((at) => sheet.rows[first + at]!);
    const rows = sheet.rows.map((row, at): readonly (Cell | null)[] => {
      const place = at - first;
      if (place < 0 || place >= OPENINGS.length) return row;
      return row.map((cell, column): Cell | null => {
        if (!isInput[column]) return cell;
        const given = inputs[place]?.[column] ?? null;
        return place === 1 && column === span ? { ...given!, value: 50 } : given;
      });
    });
    return { ...sheet, rows };
  });
  const book = await calculated(valueOf(writeXlsx(changed)));
  const now = OPENINGS.map((each) => (each.no === 3 ? { ...each, span: 50 } : each));
  const planned = takeoff(OPENINGS, STANDARDS);
  const core = takeoff(now, STANDARDS, { factors: factorsOf(planned, planBoards(partsOf(planned), STANDARDS)) });
  const rows = new Map(
    book
      .get('Takeoff')!
      .slice(TAKEOFF_HEAD_ROWS)
      .map((row) => [row?.[0], row]),
  );
  for (const row of core.openings)
    for (const [at, { key, role, value }] of TAKEOFF_COLUMNS.entries()) {
      if (role !== 'figure' || key === 'lookAt') continue;
      const what = `${row.no} ${key}`;
      const cell = rows.get(row.no)?.[at] ?? '';
      const expected = key === 'plan' ? (row.no === 3 ? UNPLANNED : '') : (value(row, core) ?? '');
      if (typeof expected === 'number') expect(cell, what).toBeCloseTo(expected, 8);
      else expect(cell, what).toBe(expected);
    }
  const price = TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'price');
  expect(rows.get('Total')?.[price]).toBeCloseTo(core.totals.price, 8);
  expect(book.get('Takeoff')![0]!.join(' ')).toContain('older than row C');
}, 180_000);
