import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Opening, Schedule } from '../../src/schedule/opening';
import { readSchedule } from '../../src/schedule/readSchedule';
import { readTables } from '../../src/schedule/readTables';
import { defaultStandards, withSettings, type Standards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { columnLetters } from '../../src/workbook/address';
import type { Sheet } from '../../src/workbook/sheet';
import { workbookSheets } from '../../src/workbook/workbook';
import { writeXlsx } from '../../src/workbook/xlsx';
import { random } from '../random';
import { randomOpenings, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { calculated, type Calculated } from './calc';

/** The workbook's own figures are within this of what the spreadsheet computes, absolute below 1 and relative above. */
const WITHIN = 1e-9;

function plainSheets(openings: readonly Opening[], standards: Standards, schedule?: Schedule): Sheet[] {
  return workbookSheets(schedule ?? scheduleOf(openings), takeoff(openings, standards), { plain: true });
}

/** Cached values replaced by nonsense, so that agreement can only come from calculation. */
function withoutValues(sheets: readonly Sheet[]): Sheet[] {
  return sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows.map((row) =>
      row.map((cell) => (cell?.formula === undefined ? cell : { ...cell, value: 'not calculated' })),
    ),
  }));
}

function differences(sheets: readonly Sheet[], found: ReadonlyMap<string, Calculated[][]>): string[] {
  const said: string[] = [];
  for (const sheet of sheets) {
    sheet.rows.forEach((row, at) =>
      row.forEach((cell, column) => {
        if (cell?.formula === undefined) return;
        const expected = cell.value ?? '';
        const actual = found.get(sheet.name)?.[at]?.[column] ?? '';
        const same =
          typeof expected === 'number' && typeof actual === 'number'
            ? Math.abs(expected - actual) <= WITHIN * Math.max(1, Math.abs(expected))
            : expected === actual;
        if (!same) said.push(`${sheet.name}!${columnLetters(column)}${at + 1}: core ${expected}, Calc ${actual}`);
      }),
    );
  }
  return said;
}

async function compare(sheets: readonly Sheet[]): Promise<{ cells: number; differences: string[] }> {
  const found = calculated(valueOf(await writeXlsx(withoutValues(sheets))));
  const cells = sheets.flatMap((sheet) => sheet.rows.flat()).filter((cell) => cell?.formula !== undefined).length;
  return { cells, differences: differences(sheets, found) };
}

describe('LibreOffice Calc, made to recalculate, agrees with the core on every cell of the plain workbook', () => {
  it('for the example schedule', async () => {
    const bytes = readFileSync('examples/schedule.csv');
    const [table] = valueOf(await readTables('schedule.csv', bytes));
    const schedule = valueOf(readSchedule(table!, defaultStandards()));
    const result = await compare(plainSheets(schedule.openings, defaultStandards(), schedule));
    expect(result.differences).toEqual([]);
    expect(result.cells).toBeGreaterThan(1000);
  });

  it('for 500 random openings of every head', async () => {
    const result = await compare(plainSheets(randomOpenings(500, random(41)), defaultStandards()));
    expect(result.differences).toEqual([]);
    expect(result.cells).toBeGreaterThan(20_000);
  });

  it('for a metric workbook priced by margin, with spare pieces', async () => {
    const standards = valueOf(
      withSettings(defaultStandards('mm'), { pricing: 'margin', pricingRate: 0.32, sparePieces: 2, ends: 'legs' }),
    );
    const result = await compare(plainSheets(randomOpenings(120, random(7), standards), standards));
    expect(result.differences).toEqual([]);
  });
});
