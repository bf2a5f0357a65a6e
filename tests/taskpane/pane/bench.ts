import { readFileSync } from 'node:fs';
import { defaultStandards } from '../../../src/standards';
import { addressOf } from '../../../src/workbook/address';
import type { Host } from '../../../taskpane/host';
import { MemoryHost } from '../../../taskpane/memory/host';
import type { Bench } from '../../../taskpane/pane/deeds/bench';
import { takeSheet } from '../../../taskpane/pane/deeds/chooseList';
import { coreWith } from '../../../taskpane/pane/loadCore';
import { reduce } from '../../../taskpane/pane/reducer';
import { initialState } from '../../../taskpane/pane/state';
import { createStore } from '../../../taskpane/pane/store';

const EXAMPLE = new URL('../../../examples/schedule.csv', import.meta.url);

/** The pane without its views, on a workbook and the real core. */
export function benchOn(host: Host): Bench {
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

/** A short list: W3 lacks its rise. */
export const LIST = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
  ['W1', 2, 'segmental', 36, 6],
  ['W2', 1, 'half round', '3\'-0"', null],
  ['W3', 1, 'segmental', 48, null],
];

/** The pane once it has read the sheet "List" of the workbook. */
export async function readList(host = new MemoryHost({ List: LIST })): Promise<{ host: MemoryHost; bench: Bench }> {
  const bench = benchOn(host);
  await takeSheet(bench, 'List');
  return { host, bench };
}

/** The cell of the first opening's input in the filled Takeoff. */
export function inputCell(host: MemoryHost, key: string): string {
  const sheet = host.written.get('Takeoff');
  return addressOf({ row: (sheet?.body?.[0] ?? 0) - 1, column: sheet?.columnKeys?.indexOf(key) ?? -1 });
}

/** The row (from 1) of a setting on the Standards sheet. */
export async function settingRow(host: MemoryHost, label: string): Promise<number> {
  const table = await host.readSheet('Standards');
  return table.ok ? table.value!.rows.findIndex((row) => row[0] === label) + 1 : 0;
}
