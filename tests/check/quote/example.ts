import { readFileSync } from 'node:fs';
import { checkQuote, chooseQuoteTable, readQuote, type QuoteCheck } from '../../../src/check/quote';
import type { Schedule } from '../../../src/schedule/opening';
import { readSchedule } from '../../../src/schedule/readSchedule';
import { chooseTable, readTables } from '../../../src/schedule/readTables';
import { defaultStandards, type Standards } from '../../../src/standards';
import { takeoff, type Takeoff } from '../../../src/takeoff/takeoff';
import { valueOf } from '../../value';

export interface Example {
  readonly schedule: Schedule;
  readonly takeoff: Takeoff;
  readonly check: QuoteCheck;
}

/** The example schedule taken off and the example quote checked against it. */
export async function exampleCheck(standards: Standards = defaultStandards()): Promise<Example> {
  const scheduleTables = valueOf(await readTables('schedule.csv', readFileSync('examples/schedule.csv')));
  const schedule = valueOf(readSchedule(chooseTable(scheduleTables)!, standards));
  const taken = takeoff(schedule.openings, standards);
  const quoteTables = valueOf(await readTables('quote.csv', readFileSync('examples/quote.csv')));
  const quote = valueOf(readQuote(chooseQuoteTable(quoteTables)!, standards));
  return { schedule, takeoff: taken, check: checkQuote(quote, taken) };
}

/** A quote in rows of text, checked against a takeoff. */
export function checkRows(rows: readonly (readonly (string | number | null)[])[], taken: Takeoff): QuoteCheck {
  const table = { name: 'quote.csv', firstRow: 1, rows };
  return checkQuote(valueOf(readQuote(table, taken.standards)), taken);
}
