import { ok, type Result } from '../../../src/result';
import type { CellValue, Table } from '../../../src/schedule/opening';
import { asTyped } from '../example';
import type { HeldSheet } from '../worksheet';

/** The tables of a text file as sheets of values, cells as if they had been typed. */
export async function textSheets(name: string, bytes: Uint8Array): Promise<Result<HeldSheet[]>> {
  const { readTables } = await import('../../../src/schedule/readTables');
  const tables = await readTables(name, bytes);
  if (!tables.ok) return tables;
  return ok(tables.value.map((table) => tableSheet(table, withoutExtension(name))));
}

function tableSheet({ rows, firstRow }: Table, name: string): HeldSheet {
  const cells = [
    ...Array.from({ length: firstRow - 1 }, () => []),
    ...rows.map((row) => row.map((value: CellValue) => ({ value: asTyped(value) }))),
  ];
  const columns = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const widths = Array.from({ length: columns }, (_, column) =>
    Math.min(40, Math.max(9, ...rows.map((row) => String(row[column] ?? '').length + 1))),
  );
  // No sheet's name may be longer, or hold these signs.
  const title = name.replace(/[\\/?*[\]:]/g, ' ').slice(0, 31) || 'List';
  return { name: title, rows: cells, widths, frozenRows: 0, frozenColumns: 0, home: 'A1' };
}

/** A file's name without the ending that says what it is. */
export function withoutExtension(name: string): string {
  return name.replace(/\.(xlsx|csv|tsv|txt)$/i, '');
}
