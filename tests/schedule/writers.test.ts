import { readFileSync } from 'node:fs';
import readXlsxFile from 'read-excel-file/universal';
import { describe, expect, it } from 'vitest';
import { readTables, type Table } from '../../src/schedule';
import { sheetXml, workbookParts, zipParts } from './workbookFile';

/*
 * The same cells as nine ways of writing workbooks put them into a file, blanks in every column: openpyxl 3.1.5 (also write-only), pandas
 * 3.0.6 (also over XlsxWriter 3.2.9), SheetJS 0.20.3 (also with shared texts), exceljs 4.4.0 (also streamed, without shared texts) and
 * LibreOffice Calc, which opened openpyxl's file and saved it again. Blanks were handed to the first of each pair as empty texts, which is how they come out of a data frame.
 */
const CELLS = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Casing', 'Wood', 'Remarks'],
  ['2', null, 'segmental', 36, 6, 3.5, 'Poplar', 'blank quantity'],
  [null, 2, 'half round', 40, 20, 3.5, 'Poplar', 'blank mark'],
  ['A3', 1, null, 36, 6, 3.5, 'Poplar', 'blank head'],
  ['A4', 1, 'segmental', null, 6, 3.5, 'Poplar', 'blank width'],
  ['A5', 1, 'segmental', 36, null, 3.5, 'Poplar', 'blank rise'],
  ['A6', 1, 'segmental', 36, 6, null, 'Poplar', 'blank casing'],
  ['A7', 1, 'segmental', 36, 6, 3.5, null, 'blank wood'],
  ['A8', 3, 'pointed', 30.25, 26, 4.25, 'Oak', null],
  ['A9', '2 ea', 'segmental', '36 1/2', '6"', 3.5, 'Poplar', 'text & <marks> ⁄ ½'],
  [null, null, null, null, null, null, null, null],
  ['A11', 1, 'segmental', 48, 8, 3.5, 'Poplar', 'after a blank row'],
];
const WRITERS = [
  'openpyxl',
  'openpyxl-write-only',
  'pandas',
  'pandas-xlsxwriter',
  'sheetjs',
  'sheetjs-shared-texts',
  'exceljs',
  'exceljs-streamed',
  'libreoffice',
];

const bytesOf = (file: string) => readFileSync(new URL(`writers/${file}.xlsx`, import.meta.url));

async function tablesOf(bytes: Uint8Array): Promise<readonly Table[]> {
  const tables = await readTables('x.xlsx', bytes);
  if (!tables.ok) throw new Error(tables.message);
  return tables.value;
}

/** All columns of every row; an empty text is a blank, as it is for all that reads cells here. */
const filledUp = (rows: readonly (readonly unknown[])[]) =>
  rows.map((row) => CELLS[0]!.map((_, column) => (row[column] === '' ? null : (row[column] ?? null))));

describe('the cells of a list, with blanks in every column', () => {
  it.each(WRITERS)('come back cell for cell from %s', async (writer) => {
    const [table] = await tablesOf(bytesOf(writer));
    expect(filledUp(table!.rows)).toEqual(CELLS);
  });

  it.each(WRITERS)('agree with what another reader makes of %s', async (writer) => {
    const bytes = bytesOf(writer);
    const [other] = await readXlsxFile(new Uint8Array(bytes).buffer as ArrayBuffer, { trim: false });
    const [table] = await tablesOf(bytes);
    expect(filledUp(table!.rows)).toEqual(filledUp(other!.data));
  });

  it('are blank where a text cell is written without any text, in each of the ways there are', async () => {
    const blanks = [
      '<c r="@" t="inlineStr"/>',
      '<c r="@" t="inlineStr" />',
      '<c r="@" t="inlineStr"></c>',
      '<c r="@" t="inlineStr"><is/></c>',
      '<c r="@" t="inlineStr"><is><t></t></is></c>',
      '<c r="@" t="inlineStr"><is><t xml:space="preserve"/></is></c>',
      '<c r="@" t="s"/>',
      '<c r="@" t="str"><v></v></c>',
      '<c r="@" t="n"/>',
      '<c r="@"/>',
    ];
    const sheet = sheetXml(blanks.map((xml) => ['before', { xml }, 'behind']));
    const [table] = await tablesOf(zipParts(workbookParts({ Openings: sheet })));
    for (const row of table!.rows) expect(row).toEqual(['before', null, 'behind']);
  });
});

describe('what a workbook shows of its cells', () => {
  it('is said: struck through, hidden, filtered', async () => {
    const [table] = await tablesOf(bytesOf('openpyxl-struck'));
    expect([...table!.struck!]).toEqual([
      [3, [0, 1, 2, 3, 4, 5]],
      [4, [3]],
      [6, [6]],
    ]);
    expect(table!.remarks).toEqual([
      'Hidden by a filter, and read all the same: row 5.',
      'Hidden in the file, and read all the same: column F.',
    ]);
  });
});
