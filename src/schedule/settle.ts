import { readHead } from '../head/words';
import type { Unit } from '../unit';
import { cellText, isBlank } from './cell';
import { isDimensionWord } from './headingRows';
import { isNumberHeading } from './headingText';
import type { Choices, Column, Layout } from './layout';
import { meaningOf, type MeaningKey } from './meanings';
import type { CellValue } from './opening';
import { isBare, isLikelyWhole, readLength } from './readLength';
import { readQuantity } from './readQuantity';
import { isHeadings } from './sortRows';
import type { TableNotes } from './tableNotes';

type Row = readonly CellValue[];

/** Rows looked at to settle a column. */
const SAMPLED_ROWS = 2000;
const ROUGH_OF: Partial<Record<MeaningKey, MeaningKey>> = {
  width: 'roughWidth',
  height: 'roughHeight',
  size: 'roughSize',
};

/**
 * Meanings that only the cells and the table's notes can settle; a column whose meaning the user chose keeps it. Columns without
 * a unit take the table's.
 */
export function settle(
  layout: Layout,
  rows: readonly Row[],
  { notes, choices, unit }: { readonly notes: TableNotes; readonly choices: Choices; readonly unit: Unit },
): Layout {
  const from = (layout.unitRow ?? layout.headingRows.at(-1) ?? -1) + 1;
  const body = bodyFrom(rows, from);
  const saysRough = layout.columns.some(({ key }) => key !== null && Object.values(ROUGH_OF).includes(key));
  const settled = layout.columns.map((column): Column => {
    const cells = body.map((row) => row[column.index] ?? null).filter((cell) => !isBlank(cell));
    const chosen = choices[column.index] !== undefined;
    const byCells = chosen ? column.key : settledByCells(column, cells);
    const rough = notes.rough && !saysRough && !chosen && isDimensionWord(column.heading);
    const key = (rough && byCells !== null ? ROUGH_OF[byCells] : undefined) ?? byCells;
    const inUnit = { ...column, key, unit: column.unit ?? notes.unit };
    return { ...inUnit, unitInDoubt: isUnitInDoubt(inUnit, cells, unit) };
  });
  const get = (column: Column): Column => settled[column.index] ?? column;
  return { ...layout, columns: settled, blocks: layout.blocks.map((block) => block.map(get)) };
}

/** The rows below the headings, as far as other headings. */
function bodyFrom(rows: readonly Row[], from: number): readonly Row[] {
  let to = from;
  while (to < Math.min(rows.length, from + SAMPLED_ROWS) && !isHeadings(rows, to)) to += 1;
  return rows.slice(from, to);
}

/**
 * A "Type" column that names no head at all holds type codes, a "Casing" column without a single length names profiles, and
 * "No." over 1, 2, 3 numbers the lines.
 */
function settledByCells({ key, rank, heading }: Column, cells: readonly CellValue[]): MeaningKey | null {
  if (key === 'head' && rank >= 1 && !cells.some((cell) => readHead(cellText(cell)).ok)) return null;
  if (key === 'face' && rank >= 1 && cells.length > 0 && !cells.some(isLengthLike))
    return cells.some((cell) => /\d\s*[x×]\s*\d/i.test(cellText(cell))) ? 'casingSize' : 'profile';
  if (key === 'quantity' && isNumberHeading(heading) && countsUp(cells)) return null;
  return key;
}

function countsUp(cells: readonly CellValue[]): boolean {
  const counts = cells.map((cell) => readQuantity(cell)).flatMap((count) => (count.ok ? [count.value] : []));
  return counts.length >= 3 && counts.every((count, index) => count === index + 1);
}

function isLengthLike(cell: CellValue): boolean {
  return typeof cell === 'number' || readLength(cell, { name: 'casing', column: null, unit: 'in' }).ok;
}

/** Where half of a column's bare figures or more are no likely widths, as in 450, 914, 1200, the others are in their unit. */
function isUnitInDoubt(column: Column, cells: readonly CellValue[], unit: Unit): boolean {
  if (column.unit !== null || column.key === null || meaningOf(column.key).kind !== 'length') return false;
  const values = cells.filter(isBare).flatMap((cell) => {
    const read = readLength(cell, { name: '', column: null, unit });
    return read.ok ? [read.value] : [];
  });
  const odd = values.filter((value) => !isLikelyWhole(value, unit)).length;
  return odd > 0 && odd * 2 >= values.length;
}
