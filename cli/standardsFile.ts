import * as v from 'valibot';
import { ok, refuse, type Result } from '../src/result';
import { defaultStandards, SETTINGS, withSettings, type SettingKey, type Standards } from '../src/standards';
import type { StockBoard } from '../src/stockList';
import type { Unit } from '../src/unit';
import { readStandards } from '../src/workbook/readStandards';
import { readAllTables, readBytes } from './files';

const size = v.pipe(v.number(), v.finite(), v.gtValue(0));
const STOCK = v.array(
  v.strictObject({
    species: v.pipe(v.string(), v.trim(), v.nonEmpty()),
    quarters: size,
    thickness: size,
    width: size,
    length: size,
    pricePerBoardFoot: v.pipe(v.number(), v.finite(), v.minValue(0)),
    onHand: v.optional(v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0))), null),
  }),
);

/**
 * The shop's settings from a file: .json with a setting's key and value in each entry (`{"reveal": 0.25, "stock": […]}`), or a
 * table (.csv, .xlsx, a workbook's own Standards sheet) with a setting's label, key or cell name and its value in each row.
 * What the file leaves out stays the default.
 */
export async function readStandardsFile(path: string): Promise<Result<Standards>> {
  return /\.json$/i.test(path) ? readJson(path) : readSettingsTable(path);
}

async function readJson(path: string): Promise<Result<Standards>> {
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  let given: unknown;
  try {
    given = JSON.parse(new TextDecoder().decode(bytes.value));
  } catch (error) {
    return refuse(`"${path}" is not JSON: ${error instanceof Error ? error.message : String(error)}.`);
  }
  if (typeof given !== 'object' || given === null || Array.isArray(given)) {
    return refuse(`"${path}" must hold an object such as {"reveal": 0.25}.`);
  }
  const { stock, ...settings } = given as Record<string, unknown>;
  const unknown = Object.keys(settings).find((key) => !SETTINGS.some((setting) => setting.key === key));
  if (unknown !== undefined) return refuse(`"${path}" has the setting "${unknown}", which there is not.`);
  const standards = withDefaults(settings);
  if (!standards.ok || stock === undefined) return standards;
  const boards = v.safeParse(STOCK, stock);
  if (boards.success) return ok({ ...standards.value, stock: boards.output as StockBoard[] });
  const [issue] = boards.issues;
  return refuse(
    `"${path}" has a stock list that can't be used at ${v.getDotPath(issue) ?? 'its top'}: ${issue.message}.`,
  );
}

async function readSettingsTable(path: string): Promise<Result<Standards>> {
  const tables = await readAllTables(path);
  if (!tables.ok) return tables;
  const table = tables.value.find(({ name }) => name === 'Standards') ?? tables.value[0];
  return table ? readStandards(table) : refuse(`"${path}" is empty.`);
}

/** The unit decides the defaults of everything that is not given. */
function withDefaults(settings: Partial<Record<SettingKey, unknown>>): Result<Standards> {
  const unit: Unit = settings.unit === 'mm' ? 'mm' : 'in';
  return withSettings(defaultStandards(unit), settings);
}
