import { expect } from 'vitest';
import type { Answer } from '../../functions/metadata';
import { expectNear } from '../value';

/** Fails where an answer is not the expected one: texts alike, numbers within `within` of their size, blocks cell by cell. */
export function expectAnswer(actual: unknown, expected: Answer, within = 1e-12): void {
  if (typeof expected === 'string') return expect(actual).toBe(expected);
  if (typeof expected === 'number') {
    expect(actual).toBeTypeOf('number');
    return expectNear(actual as number, expected, within);
  }
  expect(Array.isArray(actual)).toBe(true);
  const rows = actual as unknown[][];
  expect(rows.map((row) => row.length)).toEqual(expected.map((row) => row.length));
  expected.forEach((row, at) => row.forEach((cell, column) => expectAnswer(rows[at]![column], cell, within)));
}
