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

// Thicknesses to which hardwood is dressed on two sides: NHLA rules, from memory. Widths to which 1×6, 1×8 and 1×10 are dressed:
// American Softwood Lumber Standard, from memory. The metric ones are round figures.
it('the boards are dressed as lumber yards dress them', () => {
  const sizes = (unit: 'in' | 'mm', of: 'thickness' | 'width' | 'length') => [
    ...new Set(defaultStock(unit).map((board) => board[of])),
  ];
  expect(sizes('in', 'thickness')).toEqual([0.8125, 1.0625, 1.75]);
  expect(sizes('mm', 'thickness')).toEqual([20, 27, 45]);
  expect(sizes('in', 'width')).toEqual([5.5, 7.25, 9.25]);
  expect(sizes('mm', 'width')).toEqual([140, 185, 235]);
  expect(sizes('in', 'length')).toEqual([8 * 12, 12 * 12]);
  expect(sizes('mm', 'length')).toEqual([2440, 3660]);
});

// The guide works its example out at these prices: whoever changes one makes the guide anew.
it('a board foot costs what the invented list says, 5/4 a tenth and 8/4 three tenths more than 4/4', () => {
  const prices = (quarters: number) =>
    Object.fromEntries(
      defaultStock('in').flatMap((board) =>
        board.quarters === quarters ? [[board.species, board.pricePerBoardFoot]] : [],
      ),
    );
  expect(prices(4)).toEqual({
    ...{ Poplar: 3.9, 'Red oak': 5.6, 'White oak': 8.4, 'Hard maple': 6.9, Cherry: 8.1 },
    ...{ Walnut: 12.6, Mahogany: 11.4, 'White pine': 3.2 },
  });
  expect(prices(5)).toMatchObject({ Poplar: 4.29, Walnut: 13.86 });
  expect(prices(8)).toMatchObject({ Poplar: 5.07, Walnut: 16.38 });
});
