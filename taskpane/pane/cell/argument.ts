import type { CellValue } from '../../../src/schedule/opening';
import { readRange, splitReference } from '../../../src/workbook/address';
import { partsOf } from '../../../src/workbook/formulas/lexer';

/** What an argument as written stands for. */
export type ArgumentKind =
  | { readonly kind: 'value'; readonly value: string | number | boolean | null }
  | { readonly kind: 'cells'; readonly sheet: string | null; readonly range: string; readonly single: boolean }
  | { readonly kind: 'expression' };

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i;

export function readArgument(text: string): ArgumentKind {
  const written = text.trim();
  if (written === '') return { kind: 'value', value: null };
  // A sign is a part of its own in a formula.
  if (NUMBER.test(written)) return { kind: 'value', value: Number(written) };
  const parts = partsOf(written);
  const [first] = parts;
  if (parts.length === 1 && first!.kind === 'logical')
    return { kind: 'value', value: written.toUpperCase() === 'TRUE' };
  if (parts.length === 1 && first!.kind === 'text')
    return { kind: 'value', value: written.slice(1, -1).replace(/""/g, '"') };
  const shape = parts.map(({ kind, text: own }) => (kind === 'operator' ? own : kind)).join(' ');
  if (!/^(?:sheet ! )?cells(?: : cells)?$/.test(shape)) return { kind: 'expression' };
  const { sheet, cells } = splitReference(written);
  const range = cells.replace(/\$/g, '').toUpperCase();
  return { kind: 'cells', sheet: sheet === '' ? null : sheet, range, single: !range.includes(':') };
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
