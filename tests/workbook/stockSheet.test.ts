import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { planBoards, SAWING_RULES } from '../../src/takeoff/boards';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff } from '../../src/takeoff/takeoff';
import type { SegmentSavings } from '../../src/takeoff/segmentChange';
import type { Sheet } from '../../src/workbook/sheet';
import { stockSheet } from '../../src/workbook/stockSheet';
import { opening } from '../takeoff/openings';

/** Straight heads alike, so that many marks share each board. */
const OPENINGS = Array.from({ length: 30 }, (_, at) =>
  opening({ row: at + 2, mark: `Window ${at + 1}`, head: 'straight', span: 20 }),
);
const NEEDS = planBoards(partsOf(takeoff(OPENINGS, defaultStandards())), defaultStandards());
const SHEET = stockSheet(NEEDS, defaultStandards(), { plain: false, pictures: true });

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
    expect(lines.length).toBeGreaterThan(NEEDS.plans.flatMap(({ boards }) => boards).length);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(76);
    for (const { opening: one } of takeoff(OPENINGS, defaultStandards()).openings) {
      expect(text).toMatch(new RegExp(`${one.mark}[,)]`));
    }
  });

  it('buys just the boards of the plan, and adds up what that costs', () => {
    const buys = SHEET.rows.slice(
      4,
      SHEET.rows.findIndex((row) => row[0]?.value === 'Total'),
    );
    const total = SHEET.rows[4 + buys.length]!;
    expect(buys.length).toBeGreaterThan(0);
    const cost = buys.reduce((sum, row) => sum + Number(row[8]!.value), 0);
    expect(total[8]!.value).toBeCloseTo(cost, 6);
    expect(cost).toBeCloseTo(
      NEEDS.plans.reduce((sum, plan) => sum + plan.cost, 0),
      6,
    );
    expect(buys.reduce((sum, row) => sum + Number(row[5]!.value), 0)).toBe(
      NEEDS.plans.reduce((sum, plan) => sum + plan.boards.reduce((boards, { count }) => boards + count, 0), 0),
    );
  });

  it('prints the rules of sawing, and one proof for each wood that speaks of all its boards', () => {
    const said = SHEET.rows.flatMap((row) => row.map((cell) => String(cell?.value ?? '')));
    for (const rule of SAWING_RULES) expect(said.some((text) => text.endsWith(rule))).toBe(true);
    const proofs = rowsBelow(SHEET, 'Proof');
    expect(proofs).toHaveLength(NEEDS.plans.length);
    for (const row of proofs) expect(String(row[8]!.value)).toMatch(/^(Proven: under these rules|Within \$)/);
  });

  it('draws boards cut alike, each once, below everything else, none over another', () => {
    const pictures = SHEET.pictures ?? [];
    expect(pictures).toHaveLength(NEEDS.plans.reduce((sum, { boards }) => sum + boards.length, 0));
    const heading = SHEET.rows.findIndex((row) => String(row[0]?.value ?? '').startsWith('The cutting plan drawn')) + 1;
    const places = new Set(pictures.map(({ row, left }) => `${row} ${left}`));
    expect(places.size).toBe(pictures.length);
    const inHost = stockSheet(NEEDS, defaultStandards(), { plain: false, pictures: false });
    expect(inHost.pictures).toBeUndefined();
    const said = (sheet: Sheet) => sheet.rows.map(([cell]) => String(cell?.value ?? '')).join('\n');
    expect(said(SHEET)).toMatch(/The cutting plan drawn/);
    expect(said(inHost)).not.toMatch(/The cutting plan drawn/);
    for (const { row, caption, scene } of pictures) {
      expect(row).toBeGreaterThan(heading);
      expect(row + 4).toBeLessThanOrEqual(SHEET.rows.length);
      expect(caption).toMatch(/^\d+\. \d+ × Poplar .* left$/);
      expect(scene.shapes.length).toBeGreaterThan(3);
    }
  });

  it('says where a board is cut across and ripped, and which segments are flipped', () => {
    const rings = [24, 36, 60].map((span, at) =>
      opening({ row: at + 2, mark: `R${at}`, head: 'half round', span, rise: span / 2, quantity: 4 }),
    );
    const needs = planBoards(partsOf(takeoff(rings, defaultStandards())), defaultStandards(), { work: 1e7 });
    const cuts = rowsBelow(stockSheet(needs, defaultStandards(), { plain: false, pictures: false }), 'Cutting plan')
      .map((row) => String(row[7]!.value))
      .join(' ');
    const flipped = needs.plans.some(({ boards }) =>
      boards.some(({ sections }) =>
        sections.some(({ lanes }) =>
          lanes.some(({ rows }) => rows.some(({ pieces }) => pieces.some((piece) => piece.flipped))),
        ),
      ),
    );
    expect(flipped).toBe(true);
    expect(cuts).toContain('flipped in turn');
    const ripped = needs.plans.some(({ boards }) =>
      boards.some(({ sections }) => sections.some(({ lanes }) => lanes.length > 1)),
    );
    expect(/lane .* wide/.test(cuts)).toBe(ripped);
  });

  it('names what other numbers of segments would save where somebody looked, and says nothing of it otherwise', () => {
    const changes = [{ nos: [3, 5], marks: ['W3', 'W5'], from: 3, to: 4, saved: 4.75 }];
    const sheetWith = (savings: SegmentSavings) =>
      stockSheet(NEEDS, defaultStandards(), { plain: false, pictures: false, savings });
    const said = (sheet: Sheet) => {
      const at = sheet.rows.findIndex((row) => row[0]?.value === 'Other numbers of segments');
      return at < 0 ? null : sheet.rows.slice(at + 1, at + 3);
    };
    expect(said(SHEET)).toBe(null);
    const [total, change] = said(sheetWith({ changes, saved: 4.42 }))!;
    expect(total![0]!.value).toBe('They would save, boards and gluing together');
    expect(SHEET.rows[2]!.findIndex((cell) => cell?.value === 'Cost')).toBe(total!.length - 1);
    expect(total!.at(-1)).toMatchObject({ value: 4.42, style: 'fixed' });
    expect(change![0]).toMatchObject({ value: 'W3, W5: 4 segments a ring instead of 3', format: '@' });
    const [none, next] = said(sheetWith({ changes: [], saved: 0 }))!;
    expect(none![0]!.value).toBe('No other number costs less, boards and gluing together');
    expect(next).toEqual([]);
  });
});
