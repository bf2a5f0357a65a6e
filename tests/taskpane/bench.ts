import { readFileSync } from 'node:fs';
import { defaultStandards } from '../../src/standards';
import { MemoryHost } from '../../taskpane/memory/host';
import type { Bench } from '../../taskpane/pane/deeds/bench';
import { coreWith } from '../../taskpane/pane/loadCore';
import { reduce } from '../../taskpane/pane/reducer';
import { initialState } from '../../taskpane/pane/state';
import { createStore } from '../../taskpane/pane/store';

export const EXAMPLE = new URL('../../examples/schedule.csv', import.meta.url);

/** The pane without its views, on a workbook in memory and the real core. */
export function benchOn(host: MemoryHost): Bench {
  return {
    store: createStore(reduce, initialState(defaultStandards())),
    host,
    core: coreWith(null),
    options: {
      locale: 'en-US',
      example: async () => ({ name: 'schedule.csv', bytes: new Uint8Array(readFileSync(EXAMPLE)) }),
    },
  };
}

export function noticeOf(bench: Bench): string {
  return bench.store.get().notice?.text ?? '';
}
