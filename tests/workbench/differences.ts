import type { Sheet } from '../../src/workbook/sheet';
import { addressOf } from '../../src/workbook/address';
import type { CellValue } from '../../src/schedule/opening';
import type { Host } from '../../taskpane/host';

/** Each computed cell of `sheets` that a host shows otherwise, with both values; the first 20. */
export async function differences(
  host: Pick<Host, 'readSheet'>,
  sheets: readonly Sheet[],
  within: number,
): Promise<string[]> {
  const found: string[] = [];
  for (const sheet of sheets) {
    const read = await host.readSheet(sheet.name);
    if (!read.ok || !read.value) return [`${sheet.name} can't be read`];
    for (const [row, cells] of sheet.rows.entries()) {
      for (const [column, cell] of cells.entries()) {
        if (cell?.formula === undefined) continue;
        // An empty text and an empty cell look alike.
        const expected = cell.value === '' ? null : cell.value;
        const shown = read.value.rows[row]?.[column] ?? null;
        if (same(shown, expected, within)) continue;
        const at = `${sheet.name}!${addressOf({ row, column })}`;
        found.push(`${at} (${sheet.columnKeys?.[column] ?? ''}) shows ${String(shown)} for ${String(expected)}`);
      }
    }
  }
  return found.slice(0, 20);
}

function same(shown: CellValue, expected: CellValue, within: number): boolean {
  if (typeof shown !== 'number' || typeof expected !== 'number') return shown === expected;
  return Math.abs(shown - expected) <= within * Math.max(1, Math.abs(expected));
}
