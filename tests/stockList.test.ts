import { expect, it } from 'vitest';
import { defaultStandards } from '../src/standards';
import { defaultStock } from '../src/stockList';

it('the stock list a shop starts with has each wood in every size, the thicker the dearer, in whole cents', () => {
  const stock = defaultStock('in');
  const woods = new Set(stock.map(({ species }) => species));
  expect(woods).toContain(defaultStandards().species);
  for (const wood of woods) {
    const own = stock.filter(({ species }) => species === wood);
    expect(own).toHaveLength(3 * 3 * 2);
    const prices = [4, 5, 8].map((quarters) => own.find((board) => board.quarters === quarters)!.pricePerBoardFoot);
    expect(prices).toEqual([...prices].sort((one, other) => one - other));
    for (const price of prices) expect(price).toBe(Number(price.toFixed(2)));
  }
});

it('the metric list has the same boards in sizes within 4 percent', () => {
  const [inches, metric] = [defaultStock('in'), defaultStock('mm')];
  expect(metric).toHaveLength(inches.length);
  inches.forEach((board, at) => {
    for (const size of ['thickness', 'width', 'length'] as const) {
      expect(Math.abs(metric[at]![size] / (25.4 * board[size]) - 1)).toBeLessThan(0.04);
    }
  });
});
