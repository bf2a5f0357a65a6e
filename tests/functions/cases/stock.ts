import type { Case, RefusedCase } from '../case';

const PS20 = 'American Softwood Lumber Standard PS 20-20, section 2.2';
const ROLL = 'cutting stock problem with 13 widths of paper roll, published in an encyclopedia: 73 rolls';
const CHVATAL = 'V. Chvátal, Linear Programming, chapter 13: 453 rolls';
const BY_HAND = 'counted by hand';

const column = (...cells: number[]) => cells.map((cell) => [cell]);

export const STOCK_CASES: readonly Case[] = [
  { name: 'BOARDFEET', args: [2, 4, 96], answer: 16 / 3, source: PS20 },
  { name: 'BOARDFEET', args: [2, 10, 192], answer: 80 / 3, source: PS20 },
  { name: 'BOARDFEET', args: [1, 12, "10'"], answer: 10, source: PS20 },
  {
    name: 'BOARDFEET',
    args: [0.5, 12, 120, 3],
    answer: 30,
    source: 'under an inch counts as an inch (common practice)',
  },
  { name: 'PERBOARD', args: [96, 24, 0.125], answer: 3, source: BY_HAND },
  { name: 'PERBOARD', args: [96.375, 24, 0.125], answer: 4, source: 'four pieces take three kerfs' },
  { name: 'PERBOARD', args: [97.375, 24, 0.125, 0.5], answer: 4, source: 'the same with half an inch off each end' },
  { name: 'PERBOARD', args: [12, 24], answer: 0, source: BY_HAND },
  {
    name: 'BOARDS',
    args: [
      column(1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200),
      column(22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20),
      5600,
    ],
    answer: 73,
    source: ROLL,
  },
  {
    name: 'STOCKYIELD',
    args: [
      column(1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200),
      column(22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20),
      5600,
    ],
    answer: 407160 / 408800,
    source: ROLL,
  },
  { name: 'BOARDS', args: [column(45, 36, 31, 14), column(97, 610, 395, 211), [[100]]], answer: 453, source: CHVATAL },
  { name: 'BOARDS', args: [[[24, 17]], [[10, 4]], [[96]], 0.125], answer: 4, source: BY_HAND },
  {
    name: 'BOARDS',
    args: [column(24, 17, 0), [[10], [4], [null]], [[96, 0, '']], 0.125, 0, [['', 0, null]]],
    answer: 4,
    source: 'blank cells as they arrive in each host',
  },
  { name: 'BOARDS', args: [60, 2, column(96, 120)], answer: 1, source: 'by length one 120 is cheaper than two 96' },
  {
    name: 'BOARDS',
    args: [60, 2, column(96, 120), 0, 0, column(10, 30)],
    answer: 2,
    source: 'two 96 at 10 are cheaper than one 120 at 30',
  },
  { name: 'STOCKYIELD', args: [60, 2, column(96, 120)], answer: 1, source: BY_HAND },
  { name: 'STOCKYIELD', args: [[[24, 17]], [[10, 4]], [[96]], 0.125], answer: 308 / 384, source: BY_HAND },
  {
    name: 'CUTPLAN',
    args: [column(24.5, 17), column(3, 1), 96, 0.125],
    answer: [[1, 96, '3 × 24 1/2, 1 × 17', 5, 'proven']],
    source: 'counted by hand: 3·24.5 + 17 + 4·0.125 leaves 5',
  },
];

export const STOCK_REFUSALS: readonly RefusedCase[] = [
  { name: 'PERBOARD', args: [-96, 24], message: 'board_length must be more than 0; got -96' },
  { name: 'BOARDS', args: [100, 1, 96], message: 'piece 100 is longer than every board; the longest is 96' },
  { name: 'BOARDFEET', args: [1, 6, null], message: 'length is missing: give a number or dimension text' },
  {
    name: 'BOARDS',
    args: [null, [[1]], [[96]]],
    message: 'lengths is missing: give a range of cells, each a number or dimension text',
  },
  {
    name: 'BOARDS',
    args: [[[24], [true]], [[1], [1]], [[96]]],
    message: 'lengths, cell 2, must be a number or dimension text; got TRUE',
  },
];
