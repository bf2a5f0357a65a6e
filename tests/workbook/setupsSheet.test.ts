import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { CARD_CAUTIONS, CAUTIONS } from '../../src/takeoff/cautions';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import { setupCard } from '../../src/workbook/setupCard';
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

  it('says on every printed page where the plan is older than the rows', () => {
    expect(SHEET.repeatRows).toEqual([1, 1]);
    expect(SHEET.rows[0]!.map((cell) => cell?.formula)).toContain('Plan_state');
  });

  it('has a row for each set-up, the cautions once and a card for each', () => {
    expect(PLAN.setups).toHaveLength(2);
    const all = textsOf(SHEET.rows);
    expect(all.filter((text) => text.includes('Cautions for this job'))).toHaveLength(1);
    for (const { text } of CAUTIONS) expect(all.join(' ').split(text.slice(0, 30))).toHaveLength(2);
    PLAN.setups.forEach(({ name }, at) => {
      expect(all.filter((text) => text.trim() === `${at + 1}. ${name}`)).toHaveLength(1);
    });
    for (const line of CARD_CAUTIONS) expect(all.filter((text) => text.trim() === line)).toHaveLength(2);
  });

  it('prints two cards to a page, whatever the knife and however large the ring', () => {
    const spans = [18, 30, 42, 54, 66, 78, 90, 102, 114, 126];
    const many = takeoff(
      spans.map((span, at) =>
        opening({ row: at + 2, mark: `W${at}`, head: 'segmental', span, rise: span / 6, profile: 'Back band, large' }),
      ),
      { ...defaultStandards(), knives: 2, widestFace: 3 },
    );
    const plan = planSetups(many);
    expect(plan.setups).toHaveLength(10);
    expect(setupsSheet(plan, many).pageBreaks).toHaveLength(5);
  });

  it('says of guides of a nearly straight ring that they are straight', () => {
    const straight = (span: number, rise: number) => {
      const taken = takeoff([opening({ head: 'segmental', span, rise })], defaultStandards());
      const rows = setupCard(planSetups(taken).setups[0]!, 1, taken);
      return textsOf(rows).some((text) => text.includes('as good as straight'));
    };
    // Over 14 inches an arc of 1568 rises 49/(2 × 1568) = 1/64: radii of 2592.5 and 102 lie on either side.
    expect(straight(144, 1)).toBe(true);
    expect(straight(96, 12)).toBe(false);
  });

  it('says the knife marks by the cutting circle of the shop', () => {
    const line = (cuttingCircle: number) => {
      const rows = setupCard(PLAN.setups[0]!, 1, { ...TAKEN, standards: { ...TAKEN.standards, cuttingCircle } });
      return textsOf(rows).find((text) => text.includes('Knife marks'));
    };
    expect(line(2)).not.toBe(line(8));
  });

  it('tells the depth of the marks in the unit of the workbook: the same machine in millimeters', () => {
    const depthOf = (standards: Partial<typeof TAKEN.standards>) => {
      const rows = setupCard(PLAN.setups[0]!, 1, { ...TAKEN, standards: { ...TAKEN.standards, ...standards } });
      return /Knife marks ([\d.]+) (in|mm) deep/.exec(textsOf(rows).join(' '))!.slice(1);
    };
    const [inches, unit] = depthOf({ cuttingCircle: 5 });
    expect(unit).toBe('in');
    const [millimeters, metric] = depthOf({ unit: 'mm', cuttingCircle: 127 });
    expect(metric).toBe('mm');
    expect(Number(millimeters) / Number(inches)).toBeGreaterThan(25.4 * 0.97);
    expect(Number(millimeters) / Number(inches)).toBeLessThan(25.4 * 1.03);
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
