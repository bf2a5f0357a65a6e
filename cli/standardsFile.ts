import { ok, refuse, type Result } from '../src/result';
import { defaultStandards, type Standards } from '../src/standards';
import { readStandardsJson } from '../src/standardsJson';
import { readStandards } from '../src/workbook/readStandards';
import { readAllTables, readBytes } from './files';

/**
 * The shop's settings from a file: .json with a setting's key and value in each entry (`{"reveal": 0.25, "stock": […]}`), or a
 * table (.csv, .xlsx, a workbook's own Standards sheet) with a setting's label, key or cell name and its value in each row.
 * What the file leaves out stays the default, as all does where no file is named.
 */
export async function readStandardsFile(path: string | undefined): Promise<Result<Standards>> {
  if (path === undefined) return ok(defaultStandards());
  return /\.json$/i.test(path) ? readJson(path) : readSettingsTable(path);
}

async function readJson(path: string): Promise<Result<Standards>> {
  const bytes = await readBytes(path);
  return bytes.ok ? readStandardsJson(new TextDecoder().decode(bytes.value), path) : bytes;
}

async function readSettingsTable(path: string): Promise<Result<Standards>> {
  const tables = await readAllTables(path);
  if (!tables.ok) return tables;
  const table = tables.value.find(({ name }) => name === 'Standards') ?? tables.value[0];
  return table ? readStandards(table) : refuse(`"${path}" is empty.`);
}
