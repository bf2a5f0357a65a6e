import { figure, quoted } from './require';
import { ON_HAND_KINDS, type OnHand } from './onHand';
import { ok, refuse, type Result } from './result';
import {
  cellName,
  defaultStandards,
  readSetting,
  SETTINGS,
  type Setting,
  type SettingKey,
  type Standards,
} from './standards';
import type { StockBoard } from './stockList';
import { UNITS, type Unit } from './unit';

/**
 * The shop's settings and lists as ranges of cells hold them: a setting's name beside its value, and the rows of the stock
 * list and of what is on hand. This is what the worksheet functions get, and what the Standards sheet is read back by.
 */

type Cell = string | number | boolean | Date | null | undefined;
type Rows = readonly (readonly Cell[])[];

/** The columns of the stock list, in their order on the sheet and in the range `Wood`. */
export const STOCK_COLUMNS = [
  { key: 'species', heading: 'Species' },
  { key: 'quarters', heading: 'Quarters' },
  { key: 'thickness', heading: 'Dressed thickness' },
  { key: 'width', heading: 'Width' },
  { key: 'length', heading: 'Length' },
  { key: 'price', heading: 'Price per board foot' },
  { key: 'onHand', heading: 'On hand' },
] as const;
export type StockColumnKey = (typeof STOCK_COLUMNS)[number]['key'];

/** The columns of the list of knives and guides, in the range `OnHand`. A list without the optional ones is as good. */
export const ON_HAND_COLUMNS = [
  { key: 'kind', heading: 'Knife or guides' },
  { key: 'profile', heading: 'Profile' },
  { key: 'face', heading: 'Casing width' },
  { key: 'thickness', heading: 'Thickness' },
  { key: 'insideRadius', heading: 'Inside radius' },
  { key: 'depth', heading: 'Depth', optional: true },
  { key: 'passes', heading: 'Passes', optional: true },
  { key: 'charge', heading: 'Charge', optional: true },
] as const;
export type OnHandColumnKey = (typeof ON_HAND_COLUMNS)[number]['key'];

const NAMED: ReadonlyMap<string, Setting> = new Map(
  (SETTINGS as readonly Setting[]).flatMap((setting) =>
    [setting.key, setting.label, cellName(setting.key)].map((name) => [name.toLowerCase(), setting] as const),
  ),
);

/** The setting of this label, key or name in formulas, letter case forgiven. */
function settingNamed(name: string): Setting | undefined {
  return NAMED.get(name.trim().toLowerCase());
}

export interface ReadShop {
  readonly standards: Omit<Standards, 'stock' | 'onHand'>;
  /** Settings whose cell can't be read; the default stands in for them. */
  readonly wrong: ReadonlyMap<SettingKey, string>;
}

/**
 * Settings from rows of name and value; other rows are passed over. A blank is not set and means the default of the unit.
 * Refused: rows without any setting, or a unit that is none, since every default hangs on it.
 */
export function readShop(rows: Rows): Result<ReadShop> {
  const given = new Map<SettingKey, Cell>();
  for (const [name, value] of rows) {
    const setting = typeof name === 'string' ? settingNamed(name) : undefined;
    if (setting) given.set(setting.key as SettingKey, isBlank(value) ? null : value);
  }
  if (given.size === 0)
    return refuse('shop must be the range Shop, with the name of a setting and its value in each row');
  const unit = given.get('unit') ?? 'in';
  if (!UNITS.some((each) => each === unit))
    return refuse(`the unit of length must be ${UNITS.join(' or ')}; got ${shown(unit)}`);
  const defaults = defaultStandards(unit as Unit);
  const values: Record<string, unknown> = { ...defaults };
  const wrong = new Map<SettingKey, string>();
  for (const [key, value] of given) {
    if (value === null) continue;
    const setting = settingNamed(key)!;
    const read = readSetting(setting, value, unit as Unit);
    if (read.ok) values[key] = read.value;
    else wrong.set(key, read.message);
  }
  values['notSet'] = defaults.notSet.filter((key) => (given.get(key) ?? null) === null);
  return ok({ standards: values as unknown as Standards, wrong });
}

/** Boards from rows of the stock list; blank rows are passed over. `firstRow` is where they stand, for the sentences. */
export function readWood(rows: Rows, firstRow = 1): Result<StockBoard[]> {
  const boards: StockBoard[] = [];
  for (const [at, row] of rows.entries()) {
    if (row.every(isBlank)) continue;
    const board = readBoard(row, firstRow + at);
    if (!board.ok) return board;
    boards.push(board.value);
  }
  return boards.length === 0 ? refuse('The stock list has no board: give at least one.') : ok(boards);
}

function readBoard(row: readonly Cell[], at: number): Result<StockBoard> {
  const species = text(row[0]);
  if (species === '') return refuse(`Stock list, row ${at}: the species is missing.`);
  const figures: Partial<Record<StockColumnKey, number>> = {};
  for (const [column, { key, heading }] of STOCK_COLUMNS.entries()) {
    if (key === 'species' || (key === 'onHand' && isBlank(row[column]))) continue;
    const read = readFigure(row[column], key === 'price' || key === 'onHand');
    if (!read.ok) return refuse(`Stock list, row ${at}: ${heading.toLowerCase()} must be ${read.message}.`);
    figures[key] = read.value;
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

/** Knives and guides from the rows of their list; blank rows are passed over, and no row at all is an empty list. */
export function readOnHand(rows: Rows, firstRow = 1): Result<OnHand[]> {
  const owned: OnHand[] = [];
  for (const [at, row] of rows.entries()) {
    if (row.every(isBlank)) continue;
    const say = (sentence: string) => refuse(`On hand, row ${firstRow + at}: ${sentence}.`);
    const kind = ON_HAND_KINDS.find((each) => each === text(row[0]).toLowerCase());
    if (kind === undefined) return say(`it must be ${ON_HAND_KINDS.join(' or ')}; got ${shown(row[0])}`);
    const profile = text(row[1]);
    if (profile === '') return say('the profile is missing');
    const face = readFigure(row[2], false);
    if (!face.ok) return say(`casing width must be ${face.message}`);
    const thickness = readFigure(row[3], false);
    if (!thickness.ok) return say(`thickness must be ${thickness.message}`);
    const isKnife = kind !== 'guides';
    const radius = isKnife ? ok(null) : readFigure(row[4], false);
    if (!radius.ok) return say(`inside radius must be ${radius.message}`);
    const more: Partial<Record<'depth' | 'passes' | 'charge', number | null>> = {};
    for (const [column, { key, heading }] of ON_HAND_COLUMNS.entries()) {
      if (key !== 'depth' && key !== 'passes' && key !== 'charge') continue;
      if (!isKnife || isBlank(row[column])) continue;
      const read = readFigure(row[column], key === 'charge');
      if (!read.ok) return say(`${heading.toLowerCase()} must be ${read.message}`);
      if (key === 'passes' && !Number.isInteger(read.value))
        return say(`passes must be a whole number; got ${shown(row[column])}`);
      more[key] = read.value;
    }
    owned.push({ kind, profile, face: face.value, thickness: thickness.value, insideRadius: radius.value, ...more });
  }
  return ok(owned);
}

/** A figure in a list; text that is a number counts, since a .csv holds nothing else. */
function readFigure(cell: Cell, mayBeZero: boolean): Result<number> {
  const value = typeof cell === 'string' && cell.trim() !== '' ? Number(cell) : cell;
  if (typeof value === 'number' && Number.isFinite(value) && (value > 0 || (mayBeZero && value === 0)))
    return ok(value);
  return refuse(`a number, ${mayBeZero ? '0 or more' : 'more than 0'}; got ${shown(cell)}`);
}

function shown(cell: Cell): string {
  return typeof cell === 'number' ? figure(cell) : quoted(text(cell));
}

function isBlank(cell: Cell): boolean {
  return cell === null || cell === undefined || (typeof cell === 'string' && cell.trim() === '');
}

function text(cell: Cell): string {
  return isBlank(cell) ? '' : String(cell).trim();
}
