import { SCHEDULE } from '../../src/pdf/scheduleKind';
import { readPdf } from '../../src/pdf/readPdf';
import { valueOf } from '../value';
import { pdfLibrary } from './library';
import { SCHEDULE_ROWS, SCHEDULE_WIDTHS, type Sheet } from './plan';

export const read = async (bytes: Uint8Array, kind = SCHEDULE) =>
  readPdf(await pdfLibrary(), 'plan.pdf', bytes.slice(), kind);
export const rowsOf = async (bytes: Uint8Array) => valueOf(await read(bytes)).tables.map(({ table }) => table.rows);
export const blanks = (rows: readonly (readonly string[])[]) =>
  rows.map((row) => row.map((cell) => (cell === '' ? null : cell)));
export const schedule = (sheet: Sheet, y = 60) => sheet.table(SCHEDULE_ROWS, 50, y, SCHEDULE_WIDTHS);
