import { readFileSync } from 'node:fs';
import type { Schedule } from '../../src/schedule/opening';
import { readSchedule } from '../../src/schedule/readSchedule';
import { readTables } from '../../src/schedule/readTables';
import { defaultStandards, type Standards } from '../../src/standards';
import { planTakeoff, type PlannedTakeoff } from '../../src/takeoff/planned';
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

const planned = new Map<string, PlannedTakeoff>();

/** The example's takeoff and its boards, which are planned once for all tests that ask for them. */
export function plannedExample({ openings }: Schedule, standards: Standards): PlannedTakeoff {
  const key = JSON.stringify([openings, standards]);
  const known = planned.get(key) ?? planTakeoff(takeoff(openings, standards));
  planned.set(key, known);
  return known;
}

/** The example's schedule taken off with these standards, as the core gives it. */
export async function exampleSheets(standards: Standards = defaultStandards()): Promise<readonly Sheet[]> {
  const schedule = await exampleSchedule(standards);
  const { boards } = plannedExample(schedule, standards);
  return workbookSheets(schedule, takeoff(schedule.openings, standards), { boards });
}
