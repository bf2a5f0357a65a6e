import ExcelJS from 'exceljs';
import fc from 'fast-check';
import readXlsxFile from 'read-excel-file/universal';
import { describe, expect, it } from 'vitest';
import { readTables } from '../../src/schedule';
import type { CellValue } from '../../src/schedule/opening';

async function written(rows: CellValue[][]): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet('Sheet');
  rows.forEach((row, rowIndex) =>
    row.forEach((value, column) => {
      if (value !== null) sheet.getCell(rowIndex + 1, column + 1).value = value;
    }),
  );
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

async function rowsOf(bytes: Uint8Array): Promise<readonly (readonly CellValue[])[]> {
  const tables = await readTables('x.xlsx', bytes);
  if (!tables.ok) throw new Error(tables.message);
  return tables.value[0]!.rows;
}

/** Rows without the blanks that a writer need not keep. */
const trimmed = (rows: readonly (readonly CellValue[])[]): CellValue[][] => {
  const short = rows.map((row) => {
    const cells = [...row];
    while (cells.length > 0 && cells.at(-1) === null) cells.pop();
    return cells;
  });
  while (short.length > 0 && short.at(-1)!.length === 0) short.pop();
  return short;
};

const text = fc.string({
  minLength: 1,
  maxLength: 12,
  unit: fc.constantFrom('a', 'Z', '½', '"', '<', '&', '=', "'", '_', 'x', '0', ' ', 'é', '水'),
});
const cell = fc.oneof(
  fc.constant(null),
  text.filter((given) => given.trim() !== ''),
  fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }),
  fc.boolean(),
  fc.integer({ min: 20_000, max: 60_000 }).map((day) => new Date(Date.UTC(1970, 0, day - 25_569 + 1))),
);

describe('sheets of an .xlsx', () => {
  it('come back cell for cell as another library wrote them', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 6 }),
        async (rows) => {
          const first = rows.findIndex((row) => row.some((value) => value !== null));
          fc.pre(first >= 0);
          expect(trimmed(await rowsOf(await written(rows)))).toEqual(trimmed(rows).slice(first));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('agree with what a third library reads, blanks and spaces at the ends aside', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 6 }),
        async (rows) => {
          fc.pre(rows[0]!.some((value) => value !== null));
          const bytes = await written(rows);
          const [other] = await readXlsxFile(bytes.slice().buffer as ArrayBuffer, { trim: false });
          expect(trimmed(await rowsOf(bytes))).toEqual(trimmed(other!.data as CellValue[][]));
        },
      ),
      { numRuns: 40 },
    );
  });
});
