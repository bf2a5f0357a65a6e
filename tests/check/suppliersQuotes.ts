import { readFileSync } from 'node:fs';
import { checkTable, chooseQuoteTable, type QuoteCheck } from '../../src/check/quote';
import { readSchedule } from '../../src/schedule/readSchedule';
import { chooseTable, readTables } from '../../src/schedule/readTables';
import { defaultStandards, withSettings } from '../../src/standards';
import { takeoff, type Takeoff } from '../../src/takeoff/takeoff';
import { valueOf } from '../value';

/** What was done to one row when the quotes were made; see README.md beside them. */
export interface Made {
  readonly row: number;
  readonly mark?: string;
  readonly line?: string;
  readonly verdict: string;
  readonly kind?: string;
}
export interface Answer {
  readonly wording: 'plain' | 'odd';
  readonly layout: string;
  readonly omitted: readonly string[];
  readonly lines: readonly Made[];
}

const FOLDER = 'tests/check/suppliers/';

/** By file how its rows were made. */
export const ANSWERS = JSON.parse(readFileSync(`${FOLDER}ANSWERS.json`, 'utf8')) as Readonly<Record<string, Answer>>;

/** A row that is a sum, or a charge: no opening. */
export const isSum = ({ line }: Made) => line !== undefined && line !== 'alternate';

async function tableOf(file: string) {
  return valueOf(await readTables(file, readFileSync(FOLDER + file)));
}

/** Our takeoff of what they quote. Their prices are not near ours: only what doesn't rest on them is judged. */
export async function quotedTakeoff(): Promise<Takeoff> {
  const standards = valueOf(withSettings(defaultStandards(), { priceBand: 10 }));
  const schedule = valueOf(readSchedule(chooseTable(await tableOf('schedule.csv'))!, standards));
  return takeoff(schedule.openings, standards);
}

export async function checkOf(file: string, taken: Takeoff): Promise<QuoteCheck> {
  return valueOf(checkTable(chooseQuoteTable(await tableOf(file))!, taken));
}
