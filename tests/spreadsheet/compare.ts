import { columnLetters } from '../../src/workbook/address';
import type { Sheet } from '../../src/workbook/sheet';
import { writeXlsx } from '../../src/workbook/xlsx';
import { sameValue } from '../figures';
import { valueOf } from '../value';
import { calculated, type Book } from './calc';

/** The workbook's own figures are within this of what the spreadsheet computes, absolute below 1 and relative above. */
const WITHIN = 1e-9;

/** How many cells a spreadsheet program calculates, and where it differs from the values the sheets were made with. */
export async function compare(sheets: readonly Sheet[]): Promise<{ cells: number; differences: string[] }> {
  const found = await calculated(valueOf(writeXlsx(withoutValues(sheets))));
  const cells = sheets.flatMap((sheet) => sheet.rows.flat()).filter((cell) => cell?.formula !== undefined).length;
  return { cells, differences: differences(sheets, found) };
}

/** Cached values replaced by nonsense, so that agreement can only come from calculation. */
function withoutValues(sheets: readonly Sheet[]): Sheet[] {
  return sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows.map((row) =>
      row.map((cell) => (cell?.formula === undefined ? cell : { ...cell, value: 'not calculated' })),
    ),
  }));
}

function differences(sheets: readonly Sheet[], found: Book): string[] {
  const said: string[] = [];
  for (const sheet of sheets) {
    sheet.rows.forEach((row, at) =>
      row.forEach((cell, column) => {
        if (cell?.formula === undefined) return;
        const expected = cell.value ?? '';
        const actual = found.get(sheet.name)?.[at]?.[column] ?? '';
        if (!sameValue(expected, actual, WITHIN))
          said.push(`${sheet.name}!${columnLetters(column)}${at + 1}: core ${expected}, Calc ${actual}`);
      }),
    );
  }
  return said;
}
