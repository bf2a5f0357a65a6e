import { WORKED, type Case, type RefusedCase } from '../case';

const MARKS = '"Knife marks per inch", FDMC magazine, January 2009';

export const MACHINE_CASES: readonly Case[] = [
  { name: 'CUTSPERINCH', args: [7000, 2, 12], answer: 97.222, within: 5e-6, source: MARKS },
  { name: 'CUTSPERINCH', args: [7000, 1, 12], answer: 48.611, within: 5e-6, source: MARKS },
  { name: 'CUTSPERINCH', args: [7000, 1, 12, null, null], answer: 875 / 18, source: MARKS },
  { name: 'CUTSPERINCH', args: [7000, 1, 12, 0, 0], answer: 875 / 18, source: 'blank cells that arrive as 0' },
  {
    name: 'CUTSPERINCH',
    args: [7000, 1, 12, 19.75, 21.5],
    answer: ((875 / 18) * 19.75) / 21.5,
    source: 'speeds on a ring are as the radii',
  },
  { name: 'FEEDRATE', args: [875 / 18, 7000, 1], answer: 12, source: MARKS },
  { name: 'MARKDEPTH', args: [1 / 0.015, 5], answer: 1.12500253126e-5, within: 5e-12, source: WORKED },
  { name: 'MARKDEPTH', args: [1 / 0.0192, '4"'], answer: 2.30401327119e-5, within: 5e-12, source: WORKED },
  { name: 'RUNTIME', args: [43.355887, 12], answer: 0.301083, within: 2e-6, source: WORKED },
  { name: 'RUNTIME', args: ["12'", 12, 3, 2.5], answer: 5.5, source: '3 passes of a minute, and 2.5 of handling' },
];

export const MACHINE_REFUSALS: readonly RefusedCase[] = [
  {
    name: 'CUTSPERINCH',
    args: [7000, 1, 12, 20],
    message: 'edge_radius is missing: give it together with feed_radius, or neither',
  },
  { name: 'CUTSPERINCH', args: [7000, 1.5, 12], message: 'knives must be a whole number from 1 to 100; got 1.5' },
  { name: 'FEEDRATE', args: [null, 7000, 1], message: 'cuts is missing: give a number' },
  { name: 'MARKDEPTH', args: [0.2, 4], message: 'cuts must be at least 1/diameter, here 0.25; got 0.2' },
  { name: 'RUNTIME', args: [100, 12, -1], message: 'passes must be a whole number from 1 to 1000; got -1' },
];
