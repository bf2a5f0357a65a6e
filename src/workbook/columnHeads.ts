import type { Unit } from '../unit';
import { columnUnit, type ColumnMeasure } from './format';
import type { Cell } from './sheet';

/** What the rows above a table need to know of a column. */
interface HeadedColumn {
  readonly heading: string;
  readonly measure: ColumnMeasure;
}

interface GroupedColumn extends HeadedColumn {
  readonly group: string;
}

/** A column's heading. Over figures it stands right, as they do. */
export function headingCell(heading: string, over: 'text' | 'figures' = 'text'): Cell {
  return { value: heading, style: 'heading', wrap: true, ...(over === 'figures' ? { align: 'right' } : {}) };
}

/** What stands in the unit row below a heading. */
export function unitCell(unit: string, over: 'text' | 'figures' = 'text'): Cell {
  return { value: unit, style: 'unit', wrap: true, ...(over === 'figures' ? { align: 'right' } : {}) };
}

export function headingRow(columns: readonly HeadedColumn[]): Cell[] {
  return columns.map(({ heading, measure }) => headingCell(heading, over(measure)));
}

export function unitRow(columns: readonly HeadedColumn[], unit: Unit): Cell[] {
  return columns.map(({ measure }) => unitCell(columnUnit(measure, unit), over(measure)));
}

/** A band over neighboring columns of one group, named over the first of them that is not folded away. */
export function groupRow(columns: readonly GroupedColumn[], isFolded: (column: number) => boolean): Cell[] {
  const cells: Cell[] = columns.map(() => ({ value: null, style: 'group' }));
  for (let first = 0, next; first < columns.length; first = next) {
    const { group } = columns[first]!;
    next = first + 1;
    while (columns[next]?.group === group) next++;
    let named = first;
    while (named < next && isFolded(named)) named++;
    cells[named === next ? first : named] = { value: group, style: 'group' };
  }
  return cells;
}

function over(measure: ColumnMeasure): 'text' | 'figures' {
  return measure === 'text' || measure === 'length text' ? 'text' : 'figures';
}
