import type { Result } from '../src/result';

/** The value of a result that the pages rely on. */
export function sure<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.message);
  return result.value;
}
