import { ARC_CASES, ARC_REFUSALS } from './cases/arc';
import { BLANK_CASES, BLANK_REFUSALS } from './cases/blank';
import { HEAD_CASES, HEAD_REFUSALS } from './cases/head';
import { MACHINE_CASES, MACHINE_REFUSALS } from './cases/machine';
import { OPENING_CASES, OPENING_REFUSALS } from './cases/opening';
import { STOCK_CASES, STOCK_REFUSALS } from './cases/stock';
import { TEXT_CASES, TEXT_REFUSALS } from './cases/text';
import type { Case, RefusedCase } from './case';

/** Every call with a known answer, and every call that must be refused: the same tables for each host. */
export const CASES: readonly Case[] = [
  ...ARC_CASES,
  ...HEAD_CASES,
  ...BLANK_CASES,
  ...MACHINE_CASES,
  ...STOCK_CASES,
  ...OPENING_CASES,
  ...TEXT_CASES,
];

export const REFUSALS: readonly RefusedCase[] = [
  ...ARC_REFUSALS,
  ...HEAD_REFUSALS,
  ...BLANK_REFUSALS,
  ...MACHINE_REFUSALS,
  ...STOCK_REFUSALS,
  ...OPENING_REFUSALS,
  ...TEXT_REFUSALS,
];
