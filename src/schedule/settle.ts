import { readHead } from '../head/words';
import { cellText, isBlank, isEmpty } from './cell';
import { readUnit, type ColumnUnit } from './columnUnit';
import type { Choices, Column, Layout } from './layout';
import type { CellValue } from './opening';
import { readLength } from './readLength';

type Row = readonly CellValue[];

/** The unit a note such as "All dimensions in mm" gives the whole table. */
export function statedUnit(rows: readonly Row[]): { unit: ColumnUnit; text: string } | null {
  for (const row of rows) {
    const filled = row.filter((cell) => !isEmpty(cell));
    const text = filled.length === 1 ? cellText(filled[0]) : '';
    if (text.length < 8 || text.length > 200) continue;
    const said =
      /\b(?:dimensions?|dims|sizes|measurements?|units?)\b(?: are)?(?: given)?(?::| in| are in)?\s+(?:in )?([a-z&/ -]+?)(?: only)?(?: unless.*)?[.)]?$/i.exec(
        text,
      );
    const unit = said ? readUnit(said[1] ?? '') : null;
    if (unit !== null) return { unit, text };
  }
  return null;
}

/**
 * Meanings that only the cells can settle: a "Type" column that names no head at all holds type codes, and a "Casing"
 * column without a single length names profiles. Columns without a unit take the table's.
 */
export function settle(layout: Layout, rows: readonly Row[], unit: ColumnUnit | null, choices: Choices): Layout {
  const from = (layout.unitRow ?? layout.headingRows.at(-1) ?? -1) + 1;
  const body = rows.slice(from, from + 2000);
  const settled = new Map<number, Column>();
  for (const column of layout.columns) {
    const chosen = choices[column.index] !== undefined;
    let key = column.key;
    const cells = body.map((row) => row[column.index] ?? null).filter((cell) => !isBlank(cell));
    if (!chosen && key === 'head' && column.rank >= 1 && !cells.some((cell) => readHead(cellText(cell)).ok)) key = null;
    if (!chosen && key === 'face' && column.rank >= 1 && cells.length > 0 && !cells.some((cell) => isLengthLike(cell)))
      key = cells.some((cell) => /\d\s*[x×]\s*\d/i.test(cellText(cell))) ? 'casingSize' : 'profile';
    settled.set(column.index, { ...column, key, unit: column.unit ?? unit });
  }
  const get = (column: Column): Column => settled.get(column.index) ?? column;
  return { ...layout, columns: layout.columns.map(get), blocks: layout.blocks.map((block) => block.map(get)) };
}

function isLengthLike(cell: CellValue): boolean {
  return typeof cell === 'number' || readLength(cell, { name: 'casing', column: null, unit: 'in' }).ok;
}
