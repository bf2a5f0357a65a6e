import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff } from '../../src/takeoff/takeoff';
import type { Sheet } from '../../src/workbook/sheet';
import { stockSheet } from '../../src/workbook/stockSheet';
import { opening } from '../takeoff/openings';

/** Straight heads alike, so that many marks share each board. */
const OPENINGS = Array.from({ length: 30 }, (_, at) =>
  opening({ row: at + 2, mark: `Window ${at + 1}`, head: 'straight', span: 20 }),
);
const NEEDS = planBoards(partsOf(takeoff(OPENINGS, defaultStandards())), defaultStandards());
const SHEET = stockSheet(NEEDS, defaultStandards(), false);

/** The rows below a heading in column A, up to the next blank row. */
function rowsBelow(sheet: Sheet, group: string) {
  const first = sheet.rows.findIndex((row) => row[0]?.value === group) + 2;
  const end = sheet.rows.findIndex((row, at) => at > first && row.length === 0);
  return sheet.rows.slice(first, end < 0 ? undefined : end);
}

describe('the Stock sheet', () => {
  it('breaks a long list of cuts between marks into lines that a page has room for, and loses none', () => {
    const lines = rowsBelow(SHEET, 'Cutting plan').map((row) => String(row[7]!.value));
    const text = lines.join(' ');
    expect(lines.length).toBeGreaterThan(NEEDS.plans.flatMap(({ cutting }) => cutting).length);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(76);
    for (const { opening: one } of takeoff(OPENINGS, defaultStandards()).openings) {
      expect(text).toMatch(new RegExp(`${one.mark}[,)]`));
    }
  });

  it('names pieces of one length and purpose once on each kind of board, though of several set-ups', () => {
    const faces = [3.5, 3.25, 3].map((face, at) => opening({ row: at + 2, head: 'straight', span: 90, face }));
    const parts = partsOf(takeoff(faces, defaultStandards()));
    const sheet = stockSheet(planBoards(parts, defaultStandards()), defaultStandards(), false);
    for (const row of rowsBelow(sheet, 'Cutting plan')) {
      const kinds = String(row[7]!.value)
        .split(/, (?=\d+ × )/)
        .map((cut) => cut.replace(/^\d+ × /, ''));
      expect(new Set(kinds).size).toBe(kinds.length);
    }
  });

  it('buys at least what the plan needs, and adds up what that costs', () => {
    const buys = SHEET.rows.slice(
      4,
      SHEET.rows.findIndex((row) => row[0]?.value === 'Total'),
    );
    const total = SHEET.rows[4 + buys.length]!;
    expect(buys.length).toBeGreaterThan(0);
    for (const row of buys) expect(Number(row[6]!.value)).toBeGreaterThanOrEqual(Number(row[5]!.value));
    const cost = buys.reduce((sum, row) => sum + Number(row[8]!.value), 0);
    expect(total[8]!.value).toBeCloseTo(cost, 6);
    expect(buys.reduce((sum, row) => sum + Number(row[5]!.value), 0)).toBe(
      NEEDS.plans.reduce((sum, plan) => sum + plan.boards, 0),
    );
  });

  it('says of pieces that lie abreast or interlock how they lie, since their lengths add up to more than the board', () => {
    const rings = [24, 36, 60].map((span, at) =>
      opening({ row: at + 2, mark: `R${at}`, head: 'half round', span, rise: span / 2, quantity: 4 }),
    );
    const needs = planBoards(partsOf(takeoff(rings, defaultStandards())), defaultStandards());
    let told = 0;
    for (const row of rowsBelow(stockSheet(needs, defaultStandards(), false), 'Cutting plan')) {
      const cuts = String(row[7]!.value);
      const length = [...cuts.matchAll(/(\d+) × (\d+)(?: (\d+)\/(\d+))?/g)].reduce(
        (sum, [, count, whole, over, under]) =>
          sum + Number(count) * (Number(whole) + Number(over ?? 0) / Number(under ?? 1)),
        0,
      );
      if (length <= Number(row[4]?.value)) continue;
      told += 1;
      expect(cuts).toMatch(/flipped in turn|nested|turned half round|abreast/);
    }
    expect(told).toBeGreaterThan(0);
  });
});
