import { ok, refuse, type Result } from '../result';
import { isRowEmpty } from './cell';
import { readCsv } from './csv';
import { listed, quote } from './figure';
import { findLayout } from './layout';
import type { Table } from './opening';
import { readXlsx } from './xlsx';

/** A sheet with fewer headings understood is no schedule. */
const FEWEST_HEADINGS = 3;
/** Larger files are not schedules. */
const LARGEST_FILE_BYTES = 60e6;

/**
 * The tables of a schedule file: one for a .csv or .tsv, one for each sheet of an .xlsx. What the file is shows in its
 * bytes, not in its name. Refused in a sentence: an empty, damaged, locked or oversized file, and any other kind.
 */
export async function readTables(name: string, bytes: Uint8Array): Promise<Result<Table[]>> {
  try {
    const read = readAnyKind(name, bytes);
    return read.ok ? read : refuse(`${quote(name)} can't be read. ${read.message}`);
  } catch (error) {
    // A file may be wrong in a way nobody has met; the user gets a sentence all the same.
    return refuse(`${quote(name)} can't be read. ${error instanceof Error ? error.message : 'It is damaged.'}`);
  }
}

/** The sentence for a file that is too large to be a list of any kind; null for any other. */
export function refusedSize({ length }: Uint8Array): string | null {
  if (length <= LARGEST_FILE_BYTES) return null;
  return `It has ${Math.round(length / 1e6)} MB; a schedule has at most ${LARGEST_FILE_BYTES / 1e6} MB.`;
}

function readAnyKind(name: string, bytes: Uint8Array): Result<Table[]> {
  if (bytes.length === 0) return refuse('The file is empty.');
  const tooLarge = refusedSize(bytes);
  if (tooLarge !== null) return refuse(tooLarge);
  const starts = (...signature: number[]) => signature.every((byte, index) => bytes[index] === byte);
  if (starts(0x50, 0x4b)) return readXlsx(bytes);
  if (starts(0xd0, 0xcf, 0x11, 0xe0))
    return refuse(
      'It is an old .xls workbook or one protected with a password; please save it as .xlsx without a password.',
    );
  if (starts(0x25, 0x50, 0x44, 0x46)) return refuse('It is a PDF; a schedule is a .csv, .tsv or .xlsx file.');
  const head = String.fromCharCode(...bytes.subarray(0, 200))
    .replace(/^\xef\xbb\xbf/, '')
    .trimStart();
  if (/^<(?:!doctype|html|\?xml|table)/i.test(head))
    return refuse('It is a web page or XML file; a schedule is a .csv, .tsv or .xlsx file.');
  const table = readCsv(name, bytes);
  if (!table.ok) return table;
  const remarks = /\.xls[xm]?$/i.test(name) ? ['The file is text, not a workbook, and was read as such.'] : [];
  return ok([{ ...table.value, remarks: [...remarks, ...(table.value.remarks ?? [])] }]);
}

/**
 * The table that reads most like a schedule: the most headings understood, visible sheets first. Null for no tables. The sheets that
 * hold anything and are not this one are among what is unread; its remarks name those that read like schedules.
 */
export function chooseTable(tables: readonly Table[]): Table | null {
  let best: { table: Table; score: number } | null = null;
  const schedules: Table[] = [];
  for (const table of tables) {
    const layout = findLayout(table.rows, 0, {});
    const known = new Set(layout?.columns.map(({ key }) => key).filter((key) => key !== null)).size;
    if (known >= FEWEST_HEADINGS && table.rows.length > 1) schedules.push(table);
    const score = known * 2 - (table.hidden ? 1 : 0);
    if (best === null || score > best.score) best = { table, score };
  }
  if (best === null) return null;
  const { table } = best;
  const unread = schedules.filter((other) => other !== table).map(({ name }) => quote(name));
  const are = unread.length === 1 ? 'reads like a schedule, too, and was' : 'read like schedules, too, and were';
  const remarks = [`The sheet${unread.length === 1 ? '' : 's'} ${listed(unread)} ${are} not read.`];
  return besideOthers(
    unread.length === 0 ? table : { ...table, remarks: [...(table.remarks ?? []), ...remarks] },
    tables,
    table,
  );
}

/** The sheet of that name; letter case and spaces at the ends are forgiven. Refused with the names there are. */
export function tableNamed(tables: readonly Table[], name: string): Result<Table> {
  const plain = (text: string) => text.trim().toLowerCase();
  const found =
    tables.find((table) => table.name === name) ?? tables.find((table) => plain(table.name) === plain(name));
  if (found !== undefined) return ok(besideOthers(found, tables, found));
  return refuse(`There is no sheet ${quote(name)}; there are ${listed(tables.map((table) => quote(table.name)))}.`);
}

function besideOthers(table: Table, tables: readonly Table[], itself: Table): Table {
  const unread = tables
    .filter((other) => other !== itself && !other.rows.every(isRowEmpty))
    .map(({ name, hidden }) => ({
      what: `sheet ${quote(name)}`,
      why: hidden ? 'hidden, and not chosen' : 'not chosen',
    }));
  return unread.length === 0 ? table : { ...table, unread: [...(table.unread ?? []), ...unread] };
}
