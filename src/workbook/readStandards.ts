import { refuse, ok, type Result } from '../result';
import type { CellValue, Table } from '../schedule/opening';
import { cellName, defaultStandards, SETTINGS, withSettings, type Setting, type Standards } from '../standards';
import type { StockBoard } from '../stockList';
import { UNITS, type Unit } from '../unit';
import { QUARTERS_UNIT, STOCK_COLUMNS, STOCK_HEADING, type StockColumnKey } from './standardsSheet';

/**
 * Reads the shop's standards from a table: in each row a setting (its label, its key or the name formulas know it by) and
 * its value, in any order; further down, perhaps, the stock list. That is the Standards sheet as this program writes it
 * and as a user may have changed it. What isn't there keeps its default. Refused: a table without a setting, and the first
 * value outside its limits.
 */
export function readStandards(table: Table): Result<Standards> {
  const given = new Map<string, CellValue>();
  const list = stockHeading(table);
  for (const row of list < 0 ? table.rows : table.rows.slice(0, list)) {
    const setting = settingNamed(text(row[0]));
    if (setting) given.set(setting.key, numberIfIs(row[1] ?? null));
  }
  const stock = readStock(table);
  if (!stock.ok) return stock;
  if (given.size === 0 && stock.value === null) {
    return refuse(`${table.name} holds no setting: a row has a setting's name and its value, such as Reveal, 0.25.`);
  }
  const unit = unitOf(given.get('unit'));
  if (!unit.ok) return unit;
  const settings = withSettings(defaultStandards(unit.value), Object.fromEntries(given));
  if (!settings.ok) return refuse(`${table.name}: ${settings.message}`);
  return ok(stock.value === null ? settings.value : { ...settings.value, stock: stock.value });
}

function settingNamed(name: string): Setting | undefined {
  const wanted = name.toLowerCase();
  return (SETTINGS as readonly Setting[]).find(({ key, label }) =>
    [key, label, cellName(key)].some((each) => each.toLowerCase() === wanted),
  );
}

/** A .csv holds text only. */
function numberIfIs(value: CellValue): CellValue {
  return typeof value === 'string' && value.trim() !== '' && Number.isFinite(Number(value)) ? Number(value) : value;
}

function unitOf(cell: CellValue | undefined): Result<Unit> {
  if (cell === undefined) return ok('in');
  const unit = UNITS.find((each) => each === text(cell).toLowerCase());
  return unit ? ok(unit) : refuse(`The unit of length must be ${UNITS.join(' or ')}; got "${text(cell)}".`);
}

function stockHeading(table: Table): number {
  return table.rows.findIndex((row) => text(row[0]) === STOCK_HEADING);
}

/** The stock list below its heading; null where the sheet has none. */
function readStock(table: Table): Result<readonly StockBoard[] | null> {
  const start = stockHeading(table);
  if (start < 0) return ok(null);
  const headings = table.rows[start + 1] ?? [];
  const at = new Map<StockColumnKey, number>();
  for (const { key, heading } of STOCK_COLUMNS) {
    const column = headings.findIndex((cell) => text(cell) === heading);
    if (column < 0) return refuse(`The stock list needs a column "${heading}".`);
    at.set(key, column);
  }
  const boards: StockBoard[] = [];
  const firstRow = start + 2;
  for (const [offset, row] of table.rows.slice(firstRow).entries()) {
    const cell = (key: StockColumnKey) => row[at.get(key)!] ?? null;
    if (STOCK_COLUMNS.every(({ key }) => text(cell(key)) === '') || text(cell('quarters')) === QUARTERS_UNIT) continue;
    const board = readBoard(cell, table.firstRow + firstRow + offset);
    if (!board.ok) return board;
    boards.push(board.value);
  }
  return boards.length === 0 ? refuse('The stock list has no board: give at least one.') : ok(boards);
}

function readBoard(cell: (key: StockColumnKey) => CellValue, row: number): Result<StockBoard> {
  const species = text(cell('species'));
  if (species === '') return refuse(`Stock list, row ${row}: the species is missing.`);
  const figures: Partial<Record<StockColumnKey, number>> = {};
  for (const { key, heading } of STOCK_COLUMNS) {
    if (key === 'species') continue;
    const value = numberIfIs(cell(key));
    if (key === 'onHand' && text(value) === '') continue;
    const least = key === 'price' || key === 'onHand' ? 0 : Number.MIN_VALUE;
    if (typeof value !== 'number' || !(value >= least) || !Number.isFinite(value)) {
      const accepted = least === 0 ? '0 or more' : 'more than 0';
      return refuse(
        `Stock list, row ${row}: ${heading.toLowerCase()} must be a number, ${accepted}; got "${text(value)}".`,
      );
    }
    figures[key] = value;
  }
  return ok({
    species,
    quarters: figures.quarters!,
    thickness: figures.thickness!,
    width: figures.width!,
    length: figures.length!,
    pricePerBoardFoot: figures.price!,
    onHand: figures.onHand ?? null,
  });
}

function text(cell: CellValue | undefined): string {
  return cell === null || cell === undefined ? '' : String(cell).trim();
}
