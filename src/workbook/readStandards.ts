import type { CellValue, Table } from '../schedule/opening';
import { ok, refuse, type Result } from '../result';
import { ON_HAND_COLUMNS, readOnHand, readShop, readWood, STOCK_COLUMNS } from '../shopRange';
import { defaultStandards, type Standards } from '../standards';
import { KIND_UNIT, LIST_END, ON_HAND_HEADING, QUARTERS_UNIT, STOCK_HEADING } from './standardsLists';

/**
 * Reads the shop's standards from a table: in each row a setting (its label, its key or the name formulas know it by) and
 * its value, in any order; further down, perhaps, the stock list and what is on hand. That is the Standards sheet as this
 * program writes it and as a user may have changed it. What isn't there, or is blank, keeps its default. Refused: a table
 * without a setting, and the first value outside its limits.
 */
export function readStandards(table: Table): Result<Standards> {
  const stockAt = headingRow(table, STOCK_HEADING);
  const onHandAt = headingRow(table, ON_HAND_HEADING);
  const lists = [stockAt, onHandAt].filter((at) => at >= 0);
  const rows = lists.length === 0 ? table.rows : table.rows.slice(0, Math.min(...lists));
  const read = readShop(rows.map(([name, value]) => [name, numberIfIs(value ?? null)]));
  if (!read.ok && stockAt < 0)
    return refuse(`${table.name} holds no setting: a row has a setting's name and its value, such as Reveal, 0.25.`);
  const [wrong] = read.ok ? read.value.wrong.values() : [];
  if (wrong !== undefined) return refuse(`${table.name}: ${wrong}`);
  const defaults = defaultStandards(read.ok ? read.value.standards.unit : 'in');
  const stock = listBelow(table, stockAt, STOCK_COLUMNS, 'The stock list', readWood);
  if (!stock.ok) return stock;
  const onHand = listBelow(table, onHandAt, ON_HAND_COLUMNS, 'The list of what is on hand', readOnHand);
  if (!onHand.ok) return onHand;
  return ok({
    ...defaults,
    ...(read.ok ? read.value.standards : {}),
    stock: stock.value ?? defaults.stock,
    onHand: onHand.value ?? defaults.onHand,
  });
}

/** A list below its heading, its columns put in order; null where the table has none. */
function listBelow<T>(
  table: Table,
  at: number,
  columns: readonly { readonly heading: string; readonly optional?: boolean }[],
  name: string,
  read: (rows: readonly (readonly CellValue[])[], firstRow: number) => Result<T[]>,
): Result<T[] | null> {
  if (at < 0) return ok(null);
  const headings = table.rows[at + 1] ?? [];
  const places: number[] = [];
  for (const { heading, optional } of columns) {
    const place = headings.findIndex((cell) => text(cell) === heading);
    if (place < 0 && !optional) return refuse(`${name} needs a column "${heading}".`);
    places.push(place);
  }
  const first = at + 2;
  const below = table.rows.slice(first);
  const end = below.findIndex((row) => [STOCK_HEADING, ON_HAND_HEADING, LIST_END].includes(text(row[0])));
  const rows = (end < 0 ? below : below.slice(0, end)).map((row) => places.map((place) => row[place] ?? null));
  // The row of units below the headings is no row of the list.
  const units =
    rows[0]?.some(
      (cell) => text(cell) === QUARTERS_UNIT || text(cell) === KIND_UNIT || text(cell) === 'knife or guides',
    ) ?? false;
  return read(units ? [[], ...rows.slice(1)] : rows, table.firstRow + first);
}

function headingRow(table: Table, heading: string): number {
  return table.rows.findIndex((row) => text(row[0]) === heading);
}

/** A .csv holds text only. */
function numberIfIs(value: CellValue): CellValue {
  return typeof value === 'string' && value.trim() !== '' && Number.isFinite(Number(value)) ? Number(value) : value;
}

function text(cell: CellValue | undefined): string {
  return cell === null || cell === undefined ? '' : String(cell).trim();
}
