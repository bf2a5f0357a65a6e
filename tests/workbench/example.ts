import { readFileSync } from 'node:fs';
import type { Schedule } from '../../src/schedule/opening';
import { readSchedule } from '../../src/schedule/readSchedule';
import { readTables } from '../../src/schedule/readTables';
import { defaultStandards, type Standards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import type { Sheet } from '../../src/workbook/sheet';
import { workbookSheets } from '../../src/workbook/workbook';

/** The example's schedule as it is read with these standards. */
export async function exampleSchedule(standards: Standards = defaultStandards()): Promise<Schedule> {
  const tables = await readTables('schedule.csv', new Uint8Array(readFileSync('examples/schedule.csv')));
  if (!tables.ok) throw new Error(tables.message);
  const schedule = readSchedule(tables.value[0]!, standards, {});
  if (!schedule.ok) throw new Error(schedule.message);
  return schedule.value;
}

/** The example's schedule taken off with these standards, as the core gives it. */
export async function exampleSheets(standards: Standards = defaultStandards()): Promise<readonly Sheet[]> {
  const schedule = await exampleSchedule(standards);
  return workbookSheets(schedule, takeoff(schedule.openings, standards));
}
