import { describe, expect, it } from 'vitest';
import { perBoard } from '../../src/stock/perboard';

describe('pieces per board', () => {
  it.each([
    [96, 24, 0, 0, 4],
    [96, 24, 0.125, 0, 3],
    [96.375, 24, 0.125, 0, 4], // the last piece ends with the board: three kerfs
    [98.375, 24, 0.125, 1, 4],
    [99.9, 33.3, 0, 0, 3], // 33.3 + 33.3 + 33.3 is more than 99.9 in floating point
    [0.3, 0.1, 0, 0, 3],
    [2440, 24.4, 0, 0, 100],
    [10, 12, 0, 0, 0],
    [10, 4, 0, 5, 0],
  ])('%d in pieces of %d, kerf %d, trim %d: %d', (board, piece, kerf, trim, pieces) => {
    expect(perBoard(board, piece, kerf, trim)).toEqual({ ok: true, value: pieces });
  });

  it.each([
    [0, 24, 0, 0, 'board_length must be more than 0; got 0'],
    [96, -24, 0, 0, 'piece_length must be more than 0; got -24'],
    [96, 24, -0.125, 0, 'kerf must be 0 or more; got -0.125'],
    [96, 24, 0, -1, 'trim must be 0 or more; got -1'],
    [NaN, 24, 0, 0, 'board_length must be a number; got NaN'],
  ])('refuses a board of %d, piece of %d, kerf %d, trim %d', (board, piece, kerf, trim, message) => {
    expect(perBoard(board, piece, kerf, trim)).toEqual({ ok: false, message });
  });
});
