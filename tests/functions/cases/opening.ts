import type { Case, RefusedCase } from '../case';

const SHOP = [
  ['Unit of length', 'in'],
  ['Test piece', 0],
];
const WOOD = [['Poplar', 4, 0.8125, 5.5, 96, 3.9, '']];
const ARCH = [[2, 'segmental', 36, 6]];
const MORE = [['radial', 3 / 16, 3.5]];

const BY_HAND = 'counted by hand';

export const OPENING_CASES: readonly Case[] = [
  {
    ...{ name: 'OPENING', args: ['radius', ARCH, MORE, SHOP, WOOD], answer: 30 },
    source: 'span² / 8 rise + rise / 2, the rule of carpentry handbooks: 27 + 3',
  },
  {
    ...{ name: 'OPENING', args: ['inside radius', ARCH, MORE, SHOP, WOOD], answer: 30.1875 },
    source: 'the reveal changes the radius (common practice)',
  },
  { name: 'OPENING', args: ['long point text', ARCH, MORE, SHOP, WOOD], answer: '43 3/8', source: BY_HAND },
  {
    ...{ name: 'OPENING', args: ['needs', [[2, 'segmental', 36]], MORE, SHOP, WOOD] },
    answer: 'Needs a rise: more than 0.',
    source: BY_HAND,
  },
  {
    ...{ name: 'SHARES', args: [[[2], [1]], [ARCH[0], ARCH[0]], [MORE[0], MORE[0]], SHOP, WOOD] },
    // A knife for 110, changed in 15 minutes and its guides in 25 at 68 an hour, guides of 45 minutes at 54, boards for 14: shared by two alike.
    answer: [
      [1, (110 + ((15 + 25) / 60) * 68 + (45 / 60) * 54 + 14) / 2, 0],
      [2, (110 + ((15 + 25) / 60) * 68 + (45 / 60) * 54 + 14) / 2, 0],
    ],
    source: BY_HAND,
  },
];

export const OPENING_REFUSALS: readonly RefusedCase[] = [
  {
    ...{ name: 'OPENING', args: ['radius', ARCH, MORE, [['Unit of length', 'yd']], WOOD] },
    message: 'the unit of length must be in or mm; got "yd"',
  },
  {
    ...{ name: 'OPENING', args: ['radius', ARCH, MORE, SHOP, [['Poplar', 'thick']]] },
    message: 'Stock list, row 1: quarters must be a number, more than 0; got "thick".',
  },
  {
    ...{ name: 'SHARES', args: [[[1], [1]], [ARCH[0], ARCH[0]], [MORE[0], MORE[0]], SHOP, WOOD] },
    message: 'no must name each opening once; got 1 twice',
  },
];
