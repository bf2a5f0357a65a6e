import { expect } from 'vitest';
import type { Result } from '../src/result';

/** The value of a result that has to be one. */
export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) expect.fail(`refused: ${result.message}`);
  return result.value;
}

/** The sentence of a result that has to be a refusal. */
export function refusalOf(result: Result<unknown>): string {
  if (result.ok) expect.fail(`accepted: ${JSON.stringify(result.value)}`);
  return result.message;
}

/** Fails where `actual` is further from `expected` than `within` times its size. */
export function expectNear(actual: number, expected: number, within = 1e-12): void {
  const error = Math.abs(actual - expected) / Math.max(Math.abs(expected), Number.MIN_VALUE);
  if (actual !== expected && !(error <= within)) {
    expect.fail(`got ${actual}, expected ${expected}: ${error.toExponential(2)} off, ${within} allowed`);
  }
}
