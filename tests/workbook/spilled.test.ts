import { expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/sheet';
import { spilledColumns } from '../../src/workbook/spilled';

const formula: Cell = { value: 1, formula: 'X()', spill: { rows: 2, columns: 3 } };
const plain: Cell = { value: 1 };

it('the cells that an array fills are those of its area but the one that holds the formula', () => {
  const spilledIn = spilledColumns();
  const rows = [[plain], [plain, formula, plain, plain, plain], [plain, plain, plain, plain, plain], [plain, plain]];
  expect(rows.map((row, at) => [...spilledIn(row, at)])).toEqual([[], [2, 3], [1, 2, 3], []]);
});

it('an array of a single cell fills no other, and a constant with an area none at all', () => {
  const spilledIn = spilledColumns();
  const single: Cell = { value: 1, formula: 'X()', spill: { rows: 1, columns: 1 } };
  const constant: Cell = { value: 1, spill: { rows: 2, columns: 2 } };
  expect([...spilledIn([single, constant], 0), ...spilledIn([plain, plain], 1)]).toEqual([]);
});
