/* eslint-disable @typescript-eslint/no-explicit-any -- ranges arrive as they are */
import { readOnHand, readShop, readWood } from '../src/shopRange';
import type { Standards } from '../src/standards';
import { computeRow, type RowFigures } from '../src/takeoff/computeRow';
import { BLANK_ROW, MAIN, MORE, type Row, type RowCell } from '../src/takeoff/row';
import type { Shop } from '../src/takeoff/shop';
import { give, worksheetError } from './error';

/**
 * A takeoff asks for ten figures of each row, with the same settings and the same stock list in every call. What was read
 * and computed is kept, by the very cells it came from, so that the work is done once.
 */
const MOST_SHOPS = 4;
const MOST_ROWS = 20_000;

interface KeptShop {
  readonly shop: Shop;
  readonly rows: Map<string, RowFigures>;
}

const shops = new Map<string, KeptShop>();
/** The last ranges given, with knives and without, which a host may hand over again as they are. */
interface Given {
  readonly shop: unknown;
  readonly wood: unknown;
  readonly onhand: unknown;
  readonly kept: KeptShop;
}
let lastGiven: readonly Given[] = [];

/** The shop's settings, boards and knives, as the worksheet hands them over. */
function shopOf(shop: any, wood: any, onhand: any): KeptShop {
  for (const last of lastGiven)
    if (last.shop === shop && last.wood === wood && last.onhand === onhand) return last.kept;
  const key = keyOf([shop, wood, onhand]);
  const kept = shops.get(key) ?? readShopOf(shop, wood, onhand);
  shops.delete(key);
  shops.set(key, kept);
  if (shops.size > MOST_SHOPS) shops.delete(shops.keys().next().value!);
  lastGiven = [{ shop, wood, onhand, kept }, ...lastGiven.slice(0, 1)];
  return kept;
}

/** Ranges as text, whatever a host puts into a cell. */
function keyOf(ranges: unknown): string {
  return JSON.stringify(ranges, (_key, value: unknown) =>
    typeof value === 'bigint' || typeof value === 'symbol' || typeof value === 'function' ? String(value) : value,
  );
}

function readShopOf(shop: any, wood: any, onhand: any): KeptShop {
  const settings = give(readShop(rowsOf('shop', shop)));
  const stock = give(readWood(rowsOf('wood', wood)));
  const onHand = isBlank(onhand) ? [] : give(readOnHand(rowsOf('onhand', onhand)));
  const standards = { ...settings.standards, stock, onHand } as Standards;
  return { shop: { standards, wrong: settings.wrong }, rows: new Map() };
}

/** The figures of one row, from its two blocks of cells. */
export function figuresOf(
  main: any,
  more: any,
  shop: any,
  wood: any,
  onhand: any,
): { figures: RowFigures; standards: Standards } {
  const kept = shopOf(shop, wood, onhand);
  const cells = [...cellsIn('main', main, MAIN.length), ...cellsIn('more', more, MORE.length)];
  return { figures: computed(cells, kept), standards: kept.shop.standards };
}

function computed(cells: readonly RowCell[], { shop, rows }: KeptShop): RowFigures {
  const key = JSON.stringify(cells);
  let figures = rows.get(key);
  if (figures === undefined) {
    figures = computeRow(rowFrom(cells), shop);
    if (rows.size >= MOST_ROWS) rows.clear();
    rows.set(key, figures);
  }
  return figures;
}

export interface SharingRow {
  readonly no: number;
  readonly figures: RowFigures;
}

/** Many rows at once, those that have a number, and what they are computed with. */
export function sharingRows(
  no: any,
  main: any,
  more: any,
  shop: any,
  wood: any,
  onhand: any,
): { rows: readonly SharingRow[]; standards: Standards } {
  const kept = shopOf(shop, wood, onhand);
  const numbers = rowsOf('no', no);
  const mains = rowsOf('main', main);
  const mores = rowsOf('more', more);
  if (mains.length !== numbers.length || mores.length !== numbers.length)
    throw worksheetError(
      `no, main and more must have the same number of rows; got ${numbers.length}, ${mains.length} and ${mores.length}`,
    );
  const seen = new Set<number>();
  const rows = numbers.flatMap(([cell], at) => {
    if (typeof cell !== 'number' || !Number.isFinite(cell)) return [];
    if (seen.has(cell)) throw worksheetError(`no must name each opening once; got ${cell} twice`);
    seen.add(cell);
    return [{ no: cell, figures: computed(cellsOfRow(mains[at]!, mores[at]!), kept) }];
  });
  return { rows, standards: kept.shop.standards };
}

/** Computes the rows of `sharingRows` one at a time. Of what is wrong with them the call itself tells. */
export function* rowsAhead([no, main, more, shop, wood, onhand]: readonly any[]): Generator<void> {
  if (![no, main, more].every(Array.isArray) || main.length !== no.length || more.length !== no.length) return;
  let kept: KeptShop;
  try {
    kept = shopOf(shop, wood, onhand);
  } catch {
    return;
  }
  for (const [at, [number]] of no.entries()) {
    if (typeof number !== 'number') continue;
    computed(cellsOfRow(main[at], more[at]), kept);
    yield;
  }
}

function cellsOfRow(main: readonly any[], more: readonly any[]): RowCell[] {
  return [...padded(main, MAIN.length), ...padded(more, MORE.length)];
}

function rowFrom(cells: readonly RowCell[]): Row {
  const row: Record<string, RowCell> = { ...BLANK_ROW };
  [...MAIN, ...MORE].forEach((field, at) => (row[field] = cells[at] ?? null));
  return row as Row;
}

/** A block of cells in one row; a single column is forgiven, and cells that are missing at its end are blanks. */
function cellsIn(name: string, given: any, most: number): RowCell[] {
  const rows = isBlank(given) ? [[]] : rowsOf(name, given);
  const cells = rows.length === 1 ? rows[0]! : rows.every((row) => row.length === 1) ? rows.flat() : null;
  if (cells === null || cells.length > most)
    throw worksheetError(
      `${name} must be one row of at most ${most} cells; got ${rows.length} × ${rows[0]?.length ?? 0} cells`,
    );
  return padded(cells, most);
}

function padded(cells: readonly any[], width: number): RowCell[] {
  return Array.from({ length: width }, (_, at): RowCell => {
    const cell: unknown = cells[at];
    if (isBlank(cell)) return null;
    return typeof cell === 'number' && Number.isFinite(cell) ? cell : String(cell);
  });
}

function rowsOf(name: string, given: any): any[][] {
  if (isBlank(given)) throw worksheetError(`${name} is missing: give a range of cells`);
  if (!Array.isArray(given)) return [[given]];
  return given.map((row: unknown) => (Array.isArray(row) ? row : [row]));
}

function isBlank(cell: unknown): boolean {
  return cell === null || cell === undefined || (typeof cell === 'string' && cell.trim() === '');
}
