import { BLANK_JOB, type Job } from '../src/job/fields';
import { readJobJson } from '../src/job/jobJson';
import { ok, refuse, type Result } from '../src/result';
import { readJob } from '../src/workbook/jobBlock';
import { readAllTables, readBytes } from './files';

/**
 * The job from `--job`: JSON (`{"customer": "…", "taxRate": 0.0625}`), or a workbook of ours, from its Standards sheet. Without it
 * the job of the workbook that `--standards` names; blank where neither holds one.
 */
export async function readJobFile(path: string | undefined, standards: string | undefined): Promise<Result<Job>> {
  if (path === undefined) {
    return standards !== undefined && /\.xlsx$/i.test(standards) ? readFromWorkbook(standards) : ok(BLANK_JOB);
  }
  if (!/\.json$/i.test(path)) return readFromWorkbook(path);
  const bytes = await readBytes(path);
  return bytes.ok ? readJobJson(new TextDecoder().decode(bytes.value), path) : bytes;
}

async function readFromWorkbook(path: string): Promise<Result<Job>> {
  const tables = await readAllTables(path);
  if (!tables.ok) return tables;
  const table = tables.value.find(({ name }) => name === 'Standards') ?? tables.value[0];
  return table ? readJob(table) : refuse(`"${path}" is empty.`);
}
