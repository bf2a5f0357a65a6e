import { cellText } from './cell';
import type { ColumnUnit } from './columnUnit';
import type { MeaningKey } from './meanings';
import type { CellValue } from './opening';
import { cellsOf, type RawOpening } from './rowCells';

export const METRIC: ReadonlySet<ColumnUnit> = new Set<ColumnUnit>(['mm', 'cm', 'm']);
const OF_THE_OPENING: readonly MeaningKey[] = ['width', 'height', 'rise', 'radius', 'springHeight', 'leg'];

/** A length of the opening that is written in the other system than this unit; null where the row has none. */
export function inOtherSystem(raw: RawOpening, unit: ColumnUnit): { text: string; unit: ColumnUnit } | null {
  for (const key of OF_THE_OPENING)
    for (const { column, cell } of cellsOf(raw, key)) {
      const own = column.unit === null ? writtenUnit(cell) : null;
      if (own !== null && METRIC.has(own) !== METRIC.has(unit)) return { text: cellText(cell), unit: own };
    }
  return null;
}

/** The unit that stands behind a figure; null for none. */
function writtenUnit(cell: CellValue): ColumnUnit | null {
  if (typeof cell !== 'string') return null;
  const said = /\d\s*(mm|cm|m|in|"|″|”|''|')\.?$/i.exec(cell.trim().slice(-12))?.[1]?.toLowerCase();
  if (said === undefined) return null;
  return said === 'mm' || said === 'cm' || said === 'm' ? said : 'in';
}
