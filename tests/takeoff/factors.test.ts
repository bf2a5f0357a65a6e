import { describe, expect, it } from 'vitest';
import { defaultStandards, type Standards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { boardsToBuy } from '../../src/takeoff/boardsToBuy';
import { factorsOf, withHeld } from '../../src/takeoff/factors';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from './openings';

const STANDARDS = defaultStandards();
const POPLAR = opening({ no: 1, row: 2, head: 'straight', span: 32 });
const OAK = opening({ no: 2, row: 3, head: 'straight', span: 32, species: 'Red oak' });

/** The factors of a job of which the plan holds the first opening alone. */
function factors(standards: Standards) {
  const needs = planBoards(partsOf(takeoff([POPLAR], standards)), standards);
  const taken = takeoff([POPLAR, OAK], standards);
  const bought = boardsToBuy(needs, standards).reduce((sum, { cost }) => sum + cost, 0);
  return { of: factorsOf(taken, needs), bought, row: taken.openings[0]! };
}

const stockAt = (changes: Partial<(typeof STANDARDS.stock)[number]>) => ({
  ...STANDARDS,
  stock: STANDARDS.stock.map((board) => ({ ...board, ...(board.quarters === 4 ? changes : {}) })),
});

describe('what a plan buys for each money of wood', () => {
  it('is the boards bought over the wood of the rows, by the name of the wood', () => {
    const { of, bought, row } = factors(STANDARDS);
    expect(of('POPLAR 0.8125')).toBeCloseTo(bought / (row.ownCost!.wood + row.share!.wood), 12);
  });

  it('is none for a wood that the plan does not hold, or that no row has', () => {
    const { of } = factors(STANDARDS);
    expect([of('Red oak 0.8125'), of('Walnut 0.8125')]).toEqual([null, null]);
  });

  it('is there however cheap the wood, not where it costs nothing', () => {
    expect(factors(stockAt({ pricePerBoardFoot: 0.05 })).of('Poplar 0.8125')).toBeGreaterThan(1);
    // Planned at a price, then free.
    const free = stockAt({ pricePerBoardFoot: 0 });
    const needs = planBoards(partsOf(takeoff([POPLAR], STANDARDS)), STANDARDS);
    expect(factorsOf(takeoff([POPLAR], free), needs)('Poplar 0.8125')).toBeNull();
  });

  it('finds the wood by its thickness to four decimals', () => {
    const { of, row } = factors(stockAt({ thickness: 0.812345 }));
    expect(row.own!.stock).toBe('Poplar 0.8123');
    expect(of(row.own!.stock)).toBeGreaterThan(1);
  });

  it('may be held by hand for a wood that is planned', () => {
    const held = withHeld((stock) => (stock === 'Ash 1' ? 1.2 : null), new Map([['ash 1', 1.4], ['oak 1', 9]])); // prettier-ignore
    expect([held('Ash 1'), held('Oak 1')]).toEqual([1.4, null]);
    expect(withHeld(() => 1.2, new Map())('Ash 1')).toBe(1.2);
  });
});
