import { ok, refuse, type Result } from '../../src/result';
import type { CellValue, Table } from '../../src/schedule/opening';
import { addressOf } from '../../src/workbook/address';
import type { Engine } from './engine';
import type { WorkbenchHost } from './workbenchHost';

/** The sheet that holds the example in a workbench opened with it. */
export const EXAMPLE_SHEET = 'Example schedule';

/** Wide enough for the headings and most remarks of the example. */
const COLUMN_PX = 104;

/** The file of the example, from the server that gave the page. */
export async function exampleFile(): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  const name = 'schedule.csv';
  const response = await fetch(`examples/${name}`);
  if (!response.ok) throw new Error(`the example schedule is not there (${response.status})`);
  return { name, bytes: new Uint8Array(await response.arrayBuffer()) };
}

/** Puts the example's rows, as a builder would send them, into the still empty first sheet, and selects them all. */
export async function showExample(engine: Engine, host: WorkbenchHost): Promise<Result<void>> {
  const rows = await exampleRows();
  if (!rows.ok) return rows;
  const columns = Math.max(0, ...rows.value.map((row) => row.length));
  const cells = rows.value.map((row) => Array.from({ length: columns }, (_, column) => asTyped(row[column] ?? null)));
  const sheet = engine.api.getActiveWorkbook()?.getActiveSheet();
  sheet?.setName(EXAMPLE_SHEET);
  sheet?.setColumnWidths(0, columns, COLUMN_PX);
  const written = await host.writeCells(EXAMPLE_SHEET, 'A1', cells, false);
  if (!written.ok) return written;
  return host.show(EXAMPLE_SHEET, `A1:${addressOf({ row: cells.length - 1, column: columns - 1 })}`);
}

async function exampleRows(): Promise<Result<Table['rows']>> {
  try {
    const { name, bytes } = await exampleFile();
    const { readTables } = await import('../../src/schedule/readTables');
    const tables = await readTables(name, bytes);
    return tables.ok ? ok(tables.value[0]?.rows ?? []) : tables;
  } catch (error) {
    return refuse(`The example could not be opened: ${error instanceof Error ? error.message : String(error)}.`);
  }
}

/** Figures as numbers, as they are when somebody types a list into a grid; everything else as it stands in the file. */
export function asTyped(cell: CellValue): string | number | null {
  if (cell === null || cell === '') return null;
  const text = String(cell);
  return /^\d+(\.\d+)?$/.test(text) ? Number(text) : text;
}
