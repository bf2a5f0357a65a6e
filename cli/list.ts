import { basename } from 'node:path';
import type { Job } from '../src/job/fields';
import { ok, refuse, type Result } from '../src/result';
import { answersFor, keepAnswers, type KeptAnswers } from '../src/schedule/keptAnswers';
import { answersOf, readSchedule } from '../src/schedule/readSchedule';
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
  /** What was answered, to be kept with a workbook; null where the openings are those of a takeoff. */
  readonly answered: KeptAnswers | null;
}

type Values = ListValues & { readonly standards?: string | undefined; readonly job?: string | undefined };

/** What the workbook holds that is filled again. */
interface Before {
  readonly standing?: Settings | null;
  readonly kept?: KeptAnswers | null;
}

/**
 * The openings of a schedule, or of a takeoff workbook as they stand there. Its settings are those of the file that is named,
 * else `standing`, else the takeoff workbook's own, else the defaults; so is its job.
 */
export async function readPricedList(
  path: string,
  values: Values,
  { standing = null, kept = null, ...pdf }: Before & PdfWish = {},
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
  const read = scheduleIn(tables.value, path, standards.value, { ...list.value, kept });
  return read.ok ? ok({ ...read.value, standards: standards.value, job: job.value }) : read;
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

type Read = Pick<PricedList, 'schedule' | 'answered'>;

/** The openings on the sheet that is named; else those of a Takeoff of ours, or of the sheet that reads most like a schedule. */
function scheduleIn(
  tables: readonly Table[],
  path: string,
  standards: Standards,
  { sheet, how, kept }: ListHow & { readonly kept: KeptAnswers | null },
): Result<Read> {
  const ours = sheet === null ? takeoffIn(tables, basename(path), standards.unit) : null;
  if (ours !== null)
    return ok({ schedule: { ...ours.schedule, questions: [], unread: [], rowRemarks: [] }, answered: null });
  const named = sheet === null ? ok(chooseTable(tables)) : tableNamed(tables, sheet);
  if (!named.ok) return refuse(`"${path}": ${named.message}`);
  const table = named.value;
  if (table === null) return refuse(`"${path}" holds no table.`);
  // What is answered now stands above what was answered before.
  const answers = { ...(kept === null ? {} : answersFor(kept, table)), ...answersOf(how) };
  const schedule = readSchedule(table, standards, {}, { answers });
  if (!schedule.ok) return schedule;
  return ok({ schedule: schedule.value, answered: keepAnswers(table, schedule.value.headingRow, answers) });
}
