import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../../src/standards';
import { FIGURES, figureOf } from '../../../src/takeoff/figures';
import { takeoff } from '../../../src/takeoff/takeoff';
import { TAKEOFF_COLUMNS } from '../../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../../src/workbook/takeoff/places';
import { workbookSheets } from '../../../src/workbook/workbook';
import { random } from '../../random';
import { randomOpenings, scheduleOf } from '../../takeoff/openings';

const OPENINGS = randomOpenings(60, random(17));
const TAKEN = takeoff(OPENINGS, defaultStandards());
const SHEETS = workbookSheets(scheduleOf(OPENINGS), TAKEN);
const SHEET = SHEETS.find(({ name }) => name === 'Takeoff')!;
const ROWS = SHEET.rows.slice(TAKEOFF_HEAD_ROWS, TAKEOFF_HEAD_ROWS + OPENINGS.length);

describe('the Takeoff sheet', () => {
  it('has at most 36 columns, none hidden', () => {
    expect(TAKEOFF_COLUMNS.length).toBeLessThanOrEqual(36);
    expect(SHEET.folded ?? []).toEqual([]);
  });

  it('shows first what an estimator looks at first', () => {
    expect(TAKEOFF_COLUMNS.slice(0, 11).map(({ heading }) => heading)).toEqual([
      ...['No.', 'Mark', 'Place', 'Quantity', 'Head', 'Span', 'Rise', 'Long point', 'Unit price', 'Price', 'Look at'],
    ]);
    // In Excel: seven pixels a character and five about it, beside row numbers, scroll bar and a pane of 350.
    const pixels = TAKEOFF_COLUMNS.slice(0, 11).reduce((sum, { width }) => sum + width * 7 + 5, 0);
    expect(pixels).toBeLessThanOrEqual(1280 - 350 - 30 - 20);
  });

  it('asks at most 12 calls a row, in one wave, in formulas of at most 160 characters', () => {
    for (const row of ROWS) {
      const calls = row.filter((cell) => cell?.formula?.includes('ARCH.'));
      expect(calls.length).toBeLessThanOrEqual(12);
      for (const cell of row) {
        if (cell?.formula === undefined) continue;
        expect(cell.formula.length).toBeLessThanOrEqual(160);
        if (!cell.formula.includes('ARCH.')) continue;
        // A call looks at what is typed only, never at a cell that another call fills.
        const looks = [...cell.formula.replace(/"[^"]*"/g, '').matchAll(/\$?([A-Z]{1,2})\$?\d+/g)].map(
          ([, letters]) => [...letters!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1,
        );
        for (const column of looks) expect(TAKEOFF_COLUMNS[column]!.role).not.toBe('figure');
      }
    }
  });

  it('spills nothing along a row, and leaves figure cells unlocked, so that rows can be sorted', () => {
    expect(ROWS.flat().some((cell) => cell?.spill)).toBe(false);
    expect(SHEET.locked ?? false).toBe(false);
    expect(SHEET.autoFilter).toBe(`A5:AJ${5 + OPENINGS.length}`);
  });

  it('adds up with plain sums: an error in a row is an error in the total', () => {
    const totals = SHEET.rows[TAKEOFF_HEAD_ROWS + OPENINGS.length]!;
    const heads = totals.filter((cell) => cell?.formula?.startsWith('SUMPRODUCT('));
    expect(heads).toHaveLength(1);
    const sums = totals.filter((cell) => cell?.formula !== undefined && !heads.includes(cell));
    expect(sums.length).toBeGreaterThan(4);
    for (const cell of sums) expect(cell!.formula).toMatch(/^(ROUND\()?SUM\(\$[A-Z]+\$6:\$[A-Z]+\$65\)(,2\))?$/);
  });

  it('gives each figure the value of the core, and says of each row what it needs', () => {
    TAKEN.openings.forEach((row, at) => {
      TAKEOFF_COLUMNS.forEach(({ figure, key }, column) => {
        if (figure === undefined || key === 'lookAt') return;
        const described = FIGURES.find(({ name }) => name === figure)!;
        expect(ROWS[at]![column]!.value).toBe(figureOf(described, row, 'in'));
      });
    });
  });
});
