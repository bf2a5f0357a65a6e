import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import { setupsSheet } from '../../src/workbook/setupsSheet';
import { opening } from '../takeoff/openings';

const TAKEN = takeoff(
  [
    opening({ row: 2, mark: 'W1', head: 'segmental', span: 36, rise: 6, quantity: 2 }),
    opening({ row: 3, mark: 'W2', head: 'half round', span: 40 }),
    opening({ row: 4, mark: 'W3', head: 'segmental', span: 48 }),
  ],
  defaultStandards(),
);
const PLAN = planSetups(TAKEN);
const SHEET = setupsSheet(PLAN, TAKEN);
const textsOf = (rows: typeof SHEET.rows) => rows.map((row) => row.map((cell) => String(cell?.value ?? '')).join(' '));

describe('the Setups sheet', () => {
  it('bears its name as its title, as every sheet does', () => {
    expect(SHEET.rows[0]![0]!.value).toBe(SHEET.name);
  });

  it('has a row for each set-up and a printed page of its own for each', () => {
    expect(PLAN.setups).toHaveLength(2);
    // One break behind the list, one behind each page.
    expect(SHEET.pageBreaks).toHaveLength(3);
    PLAN.setups.forEach(({ name }, at) => {
      const page = textsOf(SHEET.rows.slice(SHEET.pageBreaks![at], SHEET.pageBreaks![at + 1]));
      expect(page.filter((text) => text.trim() === name)).toHaveLength(1);
      expect(page.join(' ')).toContain('Cautions');
    });
  });

  it('adds up pieces and minutes of the set-ups', () => {
    const total = SHEET.rows[5 + PLAN.setups.length]!.map((cell) => cell?.value);
    expect(total).toContain('Total');
    expect(total[7]).toBe(PLAN.setups.reduce((sum, { count }) => sum + count, 0));
    expect(Number(total[11])).toBeCloseTo(PLAN.runMinutes, 9);
    expect(total[12]).toBe(PLAN.setupMinutes);
  });

  it('says so where nothing can be run yet', () => {
    const none = takeoff([opening({ head: 'segmental', span: 48 })], defaultStandards());
    expect(textsOf(setupsSheet(planSetups(none), none).rows).join(' ')).toContain('No opening can be run yet.');
  });
});
