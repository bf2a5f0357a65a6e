import type { CellValue } from '../../../src/schedule/opening';
import { readRange } from '../../../src/workbook/address';

/** What an argument as written stands for. */
export type ArgumentKind =
  | { readonly kind: 'value'; readonly value: string | number | boolean | null }
  | { readonly kind: 'cells'; readonly sheet: string | null; readonly range: string; readonly single: boolean }
  | { readonly kind: 'expression' };

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i;
const CELLS =
  /^(?:(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_.]*))!)?(\$?[A-Z]{1,3}\$?\d{1,7}(?::\$?[A-Z]{1,3}\$?\d{1,7})?)$/iu;

export function readArgument(text: string): ArgumentKind {
  const written = text.trim();
  if (written === '') return { kind: 'value', value: null };
  if (NUMBER.test(written)) return { kind: 'value', value: Number(written) };
  if (/^(?:true|false)$/i.test(written)) return { kind: 'value', value: written.toLowerCase() === 'true' };
  const quoted = /^"((?:[^"]|"")*)"$/.exec(written);
  if (quoted) return { kind: 'value', value: (quoted[1] ?? '').replace(/""/g, '"') };
  const cells = CELLS.exec(written);
  if (cells) {
    const sheet = cells[1]?.replace(/''/g, "'") ?? cells[2] ?? null;
    const range = (cells[3] ?? '').replace(/\$/g, '').toUpperCase();
    return { kind: 'cells', sheet, range, single: !range.includes(':') };
  }
  return { kind: 'expression' };
}

/** The cells of a range in a sheet's used part; null where the range can't be read. */
export function cellsOf(
  range: string,
  rows: readonly (readonly CellValue[])[],
  firstRow: number,
): readonly (readonly CellValue[])[] | null {
  const read = readRange(range);
  if (!read.ok) return null;
  const { first, last } = read.value;
  // A whole used sheet is never this large; a longer range is cut to what can hold something.
  const lastRow = Math.min(last.row, firstRow - 1 + rows.length + 1);
  return Array.from({ length: Math.max(1, lastRow - first.row + 1) }, (_, down) =>
    Array.from({ length: last.column - first.column + 1 }, (__, along) => {
      const row = rows[first.row + down - (firstRow - 1)];
      return row?.[first.column + along] ?? null;
    }),
  );
}
