import { readFileSync } from 'node:fs';
import { checkTable, chooseQuoteTable, type QuoteCheck } from '../../../src/check/quote';
import type { Schedule } from '../../../src/schedule/opening';
import { readTables } from '../../../src/schedule/readTables';
import { defaultStandards, withSettings, type Standards } from '../../../src/standards';
import type { BoardNeeds } from '../../../src/takeoff/boards';
import { planTakeoff } from '../../../src/takeoff/planned';
import { takeoff, type Takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { valueOf } from '../../value';
import { exampleSchedule, plannedExample } from '../../workbench/example';

export interface Example {
  readonly schedule: Schedule;
  readonly takeoff: Takeoff;
  readonly boards: BoardNeeds;
  readonly check: QuoteCheck;
}

/** The example schedule taken off and the example quote checked against it. */
export async function exampleCheck(standards: Standards = defaultStandards()): Promise<Example> {
  const schedule = await exampleSchedule(standards);
  const { taken, boards } = plannedExample(schedule, standards);
  const quoteTables = valueOf(await readTables('quote.csv', readFileSync('examples/quote.csv')));
  return { schedule, takeoff: taken, boards, check: valueOf(checkTable(chooseQuoteTable(quoteTables)!, taken)) };
}

/** A quote in rows of text, checked against a takeoff. */
export function checkRows(rows: readonly (readonly (string | number | null)[])[], taken: Takeoff): QuoteCheck {
  const table = { name: 'quote.csv', firstRow: 1, rows };
  return valueOf(checkTable(table, taken));
}

/** A quote with several lines for one opening: pieces divided between them, with some missing, quoted twice, an alternate. */
export function sharedLines(): QuoteCheck {
  const openings = [
    opening({ head: 'segmental', span: 36, rise: 6, mark: 'W1', row: 2, quantity: 2 }),
    opening({ head: 'segmental', span: 48, rise: 9, mark: 'W2', row: 3, quantity: 5 }),
    opening({ head: 'segmental', span: 36, rise: 6, mark: 'W3', row: 4, quantity: 1 }),
  ];
  // A band this wide calls any price right: these lines are about counts.
  const { taken } = planTakeoff(takeoff(openings, valueOf(withSettings(defaultStandards(), { priceBand: 10 }))));
  return checkRows(
    [
      ['Mark', 'Description', 'Qty', 'Length', 'Unit price', 'Extension'],
      ['W1', 'left', 1, '43 3/8', 100, 100],
      ['W1', 'right', 1, '43 3/8', 100, 100],
      ['W2', 'north', 1, '57 11/16', 100, 100],
      ['W2', 'south', 2, '57 11/16', 100, 200],
      ['W3', '', 1, '43 3/8', 100, 100],
      ['W3', '', 1, '43 3/8', 100, 100],
      ['W1', 'Alternate: in red oak', 2, '43 3/8', 120, 240],
    ],
    taken,
  );
}
