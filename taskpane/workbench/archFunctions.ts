import { call } from '../../functions/call';
import { FUNCTIONS } from '../../functions/registry';
import { rowsAhead } from '../../functions/rows';
import { ok, refuse } from '../../src/result';
import type { GridFunction } from './functions';

/** The worksheet functions for the grid, from the same registry that Excel's come from. */
export const ARCH_FUNCTIONS: readonly GridFunction[] = FUNCTIONS.map(({ name, metadata }) => ({
  name: `ARCH.${name}`,
  description: metadata.description,
  parameters: metadata.parameters,
  call: (args) => {
    const called = call(name, args);
    return 'error' in called ? refuse(called.message) : ok(called.value);
  },
  ...(name === 'SHARES' ? { steps: rowsAhead } : {}),
}));
