import { refusalMessage } from './error';
import type { Answer } from './metadata';
import { findFunction } from './registry';

/** What a cell would show. */
export type Called = { readonly value: Answer } | CallError;

export interface CallError {
  readonly error: '#VALUE!' | '#NAME?';
  readonly message: string;
}

/**
 * Calls a worksheet function by its name (`RADIUS` or `ARCH.RADIUS`, letter case forgiven) as a cell would, for hosts
 * that are not Excel. Never throws.
 *
 * `call('RADIUS', [36, 6])` gives `{ value: 30 }`.
 */
export function call(name: string, args: readonly unknown[]): Called {
  const found = findFunction(name);
  if (!found) return { error: '#NAME?', message: `there is no worksheet function ${name}` };
  const { parameters } = found.metadata;
  if (args.length > parameters.length) {
    return {
      error: '#VALUE!',
      message: `${found.name} takes at most ${parameters.length} arguments; got ${args.length}`,
    };
  }
  try {
    return { value: found.run(...args) };
  } catch (thrown) {
    const refusal = refusalMessage(thrown);
    if (refusal !== null) return { error: '#VALUE!', message: refusal };
    return { error: '#VALUE!', message: `${found.name} failed, a fault in the program: ${String(thrown)}` };
  }
}
