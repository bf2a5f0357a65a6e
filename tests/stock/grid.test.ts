import { describe, expect, it } from 'vitest';
import { gridFor, onGrid } from '../../src/stock/grid';

describe('the whole-number grid of an order', () => {
  it.each([
    [[24.5, 96, 0.125], 8],
    [[24 + 1 / 64, 96], 64],
    [[24.3, 96], 10],
    [[24.3, 96, 0.125], 40],
    [[0.1 + 0.2, 96], 10], // 0.30000000000000004
    [[8 / 3, 96], 3],
    [[96, 120], 1],
    [[1234.56, 2440], 25],
  ])('of %j has %d steps to the unit and rounds nothing', (values, steps) => {
    const grid = gridFor(values, 2 ** 40);
    expect(grid).toEqual({ steps, exact: true });
    for (const value of values) expect(onGrid(value, grid) / steps).toBeCloseTo(value, 12);
  });

  it('is the finest decimal one that stays exact in sums where a length is no fraction', () => {
    const grid = gridFor([Math.PI * 10, 96], 2 ** 40);
    expect(grid).toEqual({ steps: 1e10, exact: false });
    expect(96 * grid.steps).toBeLessThan(2 ** 40);
  });
});
