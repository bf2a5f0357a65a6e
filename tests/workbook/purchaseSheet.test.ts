import { describe, expect, it } from 'vitest';
import { defaultStandards, type Standards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff } from '../../src/takeoff/takeoff';
import { purchaseLines, purchaseSheet, purchaseText } from '../../src/workbook/purchaseSheet';
import { opening } from '../takeoff/openings';

const STANDARDS = defaultStandards();
const planned = (standards: Standards) =>
  planTakeoff(
    takeoff(
      [
        opening({ head: 'segmental', span: 36, rise: 6, quantity: 3 }),
        opening({ row: 3, head: 'half round', span: 40, quantity: 2, species: 'Red oak' }),
      ],
      standards,
    ),
  ).boards;
const BOARDS = planned(STANDARDS);
const LINES = purchaseLines(BOARDS, STANDARDS);

describe('the list of boards to buy', () => {
  it('holds every board of the plans, by wood, width and length', () => {
    const inPlans = BOARDS.plans.flatMap(({ boards }) => boards).reduce((sum, { count }) => sum + count, 0);
    expect(LINES.reduce((sum, { boards }) => sum + boards, 0)).toBe(inPlans);
    expect([...new Set(LINES.map(({ wood }) => wood))]).toEqual(['Poplar', 'Red oak']);
    // A board foot is 144 cubic inches of nominal thickness: quarters/4 × width × length / 144.
    for (const { quarters, width, length, boards, boardFeet } of LINES)
      expect(boardFeet).toBeCloseTo((boards * (quarters / 4) * width * length) / 144, 9);
    expect(LINES.reduce((sum, { cost }) => sum + cost, 0)).toBeCloseTo(
      BOARDS.plans.reduce((sum, { cost }) => sum + cost, 0),
      6,
    );
  });

  it('leaves out boards that the shop has', () => {
    const standards = { ...STANDARDS, stock: STANDARDS.stock.map((board) => ({ ...board, onHand: 50 })) };
    expect(purchaseLines(planned(standards), standards)).toEqual([]);
  });

  it('names no price unless prices are wanted', () => {
    const said = (prices: boolean) =>
      purchaseSheet(LINES, 'in', prices)
        .rows.flatMap((row) => row.map((cell) => String(cell?.value ?? '')))
        .join(' ');
    const [first] = LINES;
    expect(said(false)).not.toContain('rice');
    expect(said(false)).not.toContain(String(first!.cost));
    expect(said(true)).toContain('Price each');
    expect(said(true)).toContain(String(first!.cost));
    expect(purchaseText(LINES, 'in', false)).not.toContain('each');
    expect(purchaseText(LINES, 'in', true)).toContain(`${first!.price.toFixed(2)} each`);
    expect(purchaseText(LINES, 'in', false).split('\n')).toHaveLength(LINES.length + 1);
  });
});
