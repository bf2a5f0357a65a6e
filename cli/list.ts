import { basename } from 'node:path';
import type { Job } from '../src/job/fields';
import { ok, refuse, type Result } from '../src/result';
import { readSchedule } from '../src/schedule/readSchedule';
import { chooseTable, tableNamed } from '../src/schedule/readTables';
import type { Reading, Table } from '../src/schedule/opening';
import type { Standards } from '../src/standards';
import { readJob } from '../src/workbook/jobBlock';
import { readStandards } from '../src/workbook/readStandards';
import { isTakeoff, takeoffIn } from '../src/workbook/revisedList';
import { readAllTables, type PdfWish } from './files';
import { readJobFile } from './jobFile';
import { readListOptions, type ListHow, type ListValues } from './listOptions';
import { readStandardsFile } from './standardsFile';

/** What a list is priced by. */
export interface Settings {
  readonly standards: Standards;
  readonly job: Job;
}

/** A list of openings, with the settings and the job that it is priced by. */
export interface PricedList extends Settings {
  readonly schedule: Reading;
}

type Values = ListValues & { readonly standards?: string | undefined; readonly job?: string | undefined };

/**
 * The openings of a schedule, or of a takeoff workbook as they stand there. Its settings are those of the file that is named,
 * else `standing`, else the takeoff workbook's own, else the defaults; so is its job.
 */
export async function readPricedList(
  path: string,
  values: Values,
  { standing = null, ...pdf }: { readonly standing?: Settings | null } & PdfWish = {},
): Promise<Result<PricedList>> {
  const list = await readListOptions(values);
  if (!list.ok) return list;
  const tables = await readAllTables(path, 'schedule', pdf);
  if (!tables.ok) return tables;
  const settings = standing === null ? settingsIn(tables.value) : ok(standing);
  if (!settings.ok) return refuse(`"${path}": ${settings.message}`);
  const own = values.standards === undefined ? settings.value : null;
  const standards = own === null ? await readStandardsFile(values.standards) : ok(own.standards);
  if (!standards.ok) return standards;
  const job = own !== null && values.job === undefined ? ok(own.job) : await readJobFile(values.job, values.standards);
  if (!job.ok) return job;
  const schedule = scheduleIn(tables.value, path, standards.value, list.value);
  return schedule.ok ? ok({ schedule: schedule.value, standards: standards.value, job: job.value }) : schedule;
}

/** The settings of a takeoff workbook; null: the tables are not one's. */
export function settingsIn(tables: readonly Table[]): Result<Settings | null> {
  const table = tables.find(({ name }) => name === 'Standards');
  if (table === undefined || !tables.some(isTakeoff)) return ok(null);
  const standards = readStandards(table);
  if (!standards.ok) return standards;
  const job = readJob(table);
  return job.ok ? ok({ standards: standards.value, job: job.value }) : job;
}

/** The openings on the sheet that is named; else those of a Takeoff of ours, or of the sheet that reads most like a schedule. */
function scheduleIn(
  tables: readonly Table[],
  path: string,
  standards: Standards,
  { sheet, how }: ListHow,
): Result<Reading> {
  if (sheet !== null) {
    const named = tableNamed(tables, sheet);
    return named.ok ? readSchedule(named.value, standards, {}, how) : refuse(`"${path}": ${named.message}`);
  }
  const ours = takeoffIn(tables, basename(path), standards.unit);
  if (ours !== null) return ok({ ...ours.schedule, questions: [], unread: [], rowRemarks: [] });
  const table = chooseTable(tables);
  return table === null ? refuse(`"${path}" holds no table.`) : readSchedule(table, standards, {}, how);
}
