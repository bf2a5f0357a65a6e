import { ON_HAND_KINDS, type OnHand } from '../onHand';
import { ON_HAND_COLUMNS, STOCK_COLUMNS, type OnHandColumnKey, type StockColumnKey } from '../shopRange';
import type { Standards } from '../standards';
import type { StockBoard } from '../stockList';
import type { Unit } from '../unit';
import { columnLetters } from './address';
import { headingCell, unitCell } from './columnHeads';
import { columnFormat } from './format';
import type { Cell, Validation } from './sheet';

/* The lists below the settings of Standards: boards on sale, and knives and guides that the shop owns. */

export const STOCK_HEADING = 'Stock list';
export const ON_HAND_HEADING = 'Knives and guides on hand';
/** Stands below the heading Quarters; the unit row is told by it when the sheet is read back. */
export const QUARTERS_UNIT = 'of an inch, rough';
/** Stands below the last row of a list: what is added above it is inside the named range. */
export const LIST_END = 'Add rows above this line.';
/** Stands below the heading of what a row on hand is. */
export const KIND_UNIT = 'knife, new knife or guides';
/** Blank rows below a list, so that rows can be added inside the named ranges. */
export const SPARE_ROWS = 16;

export type Rows = (Cell | null)[][];
export type Names = { name: string; ref: string }[];

export function addStockList(rows: Rows, names: Names, { unit, stock }: Standards): void {
  const over = (key: StockColumnKey) => (key === 'species' ? 'text' : 'figures');
  rows.push([{ value: STOCK_HEADING, style: 'group' }]);
  rows.push(STOCK_COLUMNS.map(({ key, heading }) => headingCell(heading, over(key))));
  rows.push(STOCK_COLUMNS.map(({ key }) => unitCell(stockUnit(key, unit), over(key))));
  const first = rows.length + 1;
  for (const board of stock) {
    const value = stockCells(board);
    rows.push(
      STOCK_COLUMNS.map(({ key }, at) => ({
        value: value[at]!,
        style: 'input',
        format: stockFormat(key, unit, value[at]),
      })),
    );
  }
  for (let spare = 0; spare < SPARE_ROWS; spare++)
    rows.push(STOCK_COLUMNS.map(({ key }) => ({ value: null, style: 'input', format: stockFormat(key, unit, null) })));
  nameColumns(names, 'Stock', 'Wood', STOCK_COLUMNS, first, rows.length);
}

export function addOnHand(rows: Rows, names: Names, validations: Validation[], { unit, onHand }: Standards): void {
  const figures = (key: OnHandColumnKey) => key !== 'kind' && key !== 'profile';
  const units: Partial<Record<OnHandColumnKey, string>> = {
    ...{ kind: KIND_UNIT, profile: '', passes: 'blank: by the depth', charge: '$, of a new knife' },
  };
  const format = (key: OnHandColumnKey, value: unknown) =>
    !figures(key)
      ? '@'
      : key === 'passes'
        ? '0'
        : key === 'charge'
          ? columnFormat('money', unit)
          : columnFormat('input length', unit, value);
  rows.push([{ value: ON_HAND_HEADING, style: 'group' }]);
  rows.push(ON_HAND_COLUMNS.map(({ key, heading }) => headingCell(heading, figures(key) ? 'figures' : 'text')));
  rows.push(ON_HAND_COLUMNS.map(({ key }) => unitCell(units[key] ?? unit, figures(key) ? 'figures' : 'text')));
  const first = rows.length + 1;
  const cells = [
    ...onHand.map(onHandCells),
    ...Array.from({ length: SPARE_ROWS }, () => [] as (string | number | null)[]),
  ];
  for (const values of cells) {
    rows.push(
      ON_HAND_COLUMNS.map(({ key }, at) => ({
        value: values[at] ?? null,
        style: 'input',
        format: format(key, values[at] ?? null),
      })),
    );
  }
  validations.push({
    range: `A${first}:A${rows.length}`,
    rule: { kind: 'list', choices: ON_HAND_KINDS },
    message: `A row is a ${KIND_UNIT}.`,
  });
  nameColumns(names, 'OnHand', 'OnHand', ON_HAND_COLUMNS, first, rows.length);
  rows.push([{ value: LIST_END, style: 'note' }]);
}

/** A list's name, and one for each of its columns: `Stock_on_hand`. */
function nameColumns(
  names: Names,
  prefix: string,
  whole: string,
  columns: readonly { readonly key: string }[],
  first: number,
  last: number,
): void {
  names.push({ name: whole, ref: `Standards!$A$${first}:$${columnLetters(columns.length - 1)}$${last}` });
  columns.forEach(({ key }, at) => {
    const letter = columnLetters(at);
    const end = key.replace(/[A-Z]/g, (capital) => `_${capital.toLowerCase()}`);
    names.push({ name: `${prefix}_${end}`, ref: `Standards!$${letter}$${first}:$${letter}$${last}` });
  });
}

/** A board as the cells of its row. */
export function stockCells({ species, quarters, thickness, width, length, pricePerBoardFoot, onHand }: StockBoard) {
  return [species, quarters, thickness, width, length, pricePerBoardFoot, onHand] as const;
}

export function onHandCells({
  kind,
  profile,
  face,
  thickness,
  insideRadius,
  ...more
}: OnHand): (string | number | null)[] {
  const { depth = null, passes = null, charge = null } = more;
  return [kind, profile, face, thickness, insideRadius, depth, passes, charge];
}

function stockFormat(key: StockColumnKey, unit: Unit, value: unknown): string {
  switch (key) {
    case 'species':
      return '@';
    case 'quarters':
    case 'onHand':
      return '0';
    case 'price':
      return columnFormat('money', unit);
    default:
      return columnFormat('input length', unit, value);
  }
}

function stockUnit(key: StockColumnKey, unit: Unit): string {
  switch (key) {
    case 'thickness':
    case 'width':
    case 'length':
      return unit;
    case 'quarters':
      return QUARTERS_UNIT;
    case 'price':
      return '$';
    case 'onHand':
      return 'boards; blank: buy';
    default:
      return '';
  }
}
