/** Writes examples/schedule.xlsx from examples/schedule.csv: `npx tsx examples/make.ts`. */
import { readFile, writeFile } from 'node:fs/promises';
import ExcelJS from 'exceljs';
import { readTables } from '../src/schedule';

const here = new URL('.', import.meta.url);

async function main(): Promise<void> {
  const read = await readTables('schedule.csv', await readFile(new URL('schedule.csv', here)));
  const table = read.ok ? read.value[0] : undefined;
  if (table === undefined) throw new Error(read.ok ? 'no table' : read.message);
  const workbook = new ExcelJS.Workbook();
  workbook.created = workbook.modified = new Date(Date.UTC(2026, 0, 5));
  const sheet = workbook.addWorksheet('Openings');
  table.rows.forEach((row, rowIndex) => {
    row.forEach((text, columnIndex) => {
      if (text === '' || text === null) return;
      const cell = sheet.getCell(rowIndex + 1, columnIndex + 1);
      if (text === '4-Jan') {
        // What a spreadsheet program stores when somebody types 1/4 into an unformatted cell.
        cell.value = new Date(Date.UTC(2026, 0, 4));
        cell.numFmt = 'd-mmm';
      } else cell.value = /^\d+(\.\d+)?$/.test(String(text)) ? Number(text) : String(text);
    });
  });
  sheet.mergeCells('A1:N1');
  sheet.getRow(5).font = { bold: true };
  sheet.columns.forEach((column, index) => (column.width = index === 13 ? 34 : 13));
  await writeFile(new URL('schedule.xlsx', here), new Uint8Array(await workbook.xlsx.writeBuffer()));
}

await main();
