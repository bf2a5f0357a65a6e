/* eslint-disable @typescript-eslint/no-explicit-any -- a worksheet may hand over anything at all */
import { readDimension } from '../src/dimension';
import { bare } from '../src/unit';
import { figure } from '../src/require';
import { worksheetError } from './error';

/**
 * What a worksheet hands over, made into what the core takes. A reader gives back the value or throws a worksheet error
 * that names the argument, what it was and what is accepted. A cell may arrive as a 1 × 1 range; a blank as null,
 * undefined or "", and on the desktop as 0.
 */

/** Beyond this nothing is a size: even the radius of an arc that is nearly straight stays below. The core has its own limits. */
const MOST = 1e15;
const MOST_CELLS = 100_000;
const LONGEST_WORD = 40;

const LENGTH = 'a number or dimension text';

/** A length: a number in any unit, or dimension text, which is read as inches. */
export function length(name: string, given: any): number {
  return needed(name, given, LENGTH, asLength);
}

/** A length that may be left out. */
export function optionalLength(name: string, given: any): number | undefined {
  return optional(name, given, LENGTH, asLength);
}

/** As `optionalLength`, for a length that 0 can't be: a blank cell that arrives as 0 is left out too. */
export function optionalLengthNotZero(name: string, given: any): number | undefined {
  return optionalLength(name, given) || undefined;
}

/** A plain number: an angle, a count, a speed. */
export function number(name: string, given: any): number {
  return needed(name, given, 'a number', asNumber);
}

export function optionalNumber(name: string, given: any): number | undefined {
  return optional(name, given, 'a number', asNumber);
}

/** As `optionalNumber`, for a number that 0 can't be: a blank cell that arrives as 0 is left out too. */
export function optionalNumberNotZero(name: string, given: any): number | undefined {
  return optionalNumber(name, given) || undefined;
}

/** A word such as a head or a cut, as it was written. */
export function word(name: string, given: any, accepted: string): string {
  return needed(name, given, accepted, asWord);
}

/** A word that may be left out; a blank cell that arrives as 0 is left out too. */
export function optionalWord(name: string, given: any, accepted: string): string | undefined {
  const cell = single(name, given, accepted);
  return isBlank(cell) || cell === 0 ? undefined : asWord(name, cell, accepted);
}

/** One of a few words; letter case, spaces and hyphens are forgiven. */
export function optionalChoice<T extends string>(name: string, given: any, choices: readonly T[]): T | undefined {
  const accepted = oneOf(choices);
  const text = optionalWord(name, given, accepted);
  if (text === undefined) return undefined;
  const plain = (value: string) => value.toLowerCase().replace(/[\s-]+/g, '');
  const choice = choices.find((candidate) => plain(candidate) === plain(text));
  if (choice === undefined) throw refused(name, text, accepted);
  return choice;
}

/** The cells of a range of lengths, row by row; blanks as null. A single value counts as a range of one cell. */
export function lengths(name: string, given: any): (number | null)[] {
  return cellsOf(name, given, LENGTH, asLength);
}

/** The cells of a range of numbers, row by row; blanks as null. */
export function numbers(name: string, given: any): (number | null)[] {
  return cellsOf(name, given, 'a number', asNumber);
}

/** True for a range argument that was left out, or holds nothing but blanks. */
export function isLeftOut(given: any): boolean {
  if (Array.isArray(given)) return given.every(isLeftOut);
  return isBlank(given);
}

function needed<T>(name: string, given: any, accepted: string, read: Read<T>): T {
  const cell = single(name, given, accepted);
  if (isBlank(cell)) throw worksheetError(`${name} is missing: give ${accepted}`);
  return read(name, cell, accepted);
}

function optional<T>(name: string, given: any, accepted: string, read: Read<T>): T | undefined {
  const cell = single(name, given, accepted);
  return isBlank(cell) ? undefined : read(name, cell, accepted);
}

type Read<T> = (name: string, cell: any, accepted: string) => T;

function asLength(name: string, cell: any, accepted: string): number {
  if (typeof cell !== 'string') return asNumber(name, cell, accepted);
  const parsed = readDimension(cell);
  if (!parsed.ok) throw worksheetError(`${name}: ${parsed.message}`);
  return inRange(name, bare(parsed.value));
}

function asNumber(name: string, cell: any, accepted: string): number {
  if (typeof cell === 'number' && Number.isFinite(cell)) return inRange(name, cell);
  if (typeof cell === 'string' && /^\s*[+-]?(\d+\.?\d*|\.\d+)\s*$/.test(cell)) return inRange(name, Number(cell));
  throw refused(name, cell, accepted);
}

function asWord(name: string, cell: any, accepted: string): string {
  // No word is this long; the sentence must not be either.
  if (typeof cell !== 'string' || cell.length > LONGEST_WORD) throw refused(name, cell, accepted);
  return cell;
}

function inRange(name: string, value: number): number {
  if (Math.abs(value) <= MOST) return value;
  throw worksheetError(`${name} must be no more than ${MOST.toLocaleString('en-US')} either way; got ${figure(value)}`);
}

/** The one cell meant: a cell reference may arrive as one row of one cell. */
function single(name: string, given: any, accepted: string): any {
  const row = Array.isArray(given) && given.length === 1 ? given[0] : given;
  const cell = plainCell(Array.isArray(row) && row.length === 1 ? row[0] : row);
  if (Array.isArray(cell)) throw worksheetError(`${name} must be one cell with ${accepted}; got ${rangeSize(given)}`);
  return cell;
}

function cellsOf<T>(name: string, given: any, accepted: string, read: Read<T>): (T | null)[] {
  const rows: any[] = Array.isArray(given) ? given : [given];
  const cells = rows.flatMap((row: any) => (Array.isArray(row) ? row : [row])).map(plainCell);
  if (cells.length > MOST_CELLS) {
    throw worksheetError(
      `${name} must be a range of at most ${MOST_CELLS.toLocaleString('en-US')} cells; got ${cells.length}`,
    );
  }
  if (cells.every(isBlank)) throw worksheetError(`${name} is missing: give a range of cells, each ${accepted}`);
  return cells.map((cell, at) => (isBlank(cell) ? null : read(`${name}, cell ${at + 1},`, cell, accepted)));
}

/** A cell with a data type, such as a formatted number, may arrive as an object, which carries its plain value. */
function plainCell(cell: any): any {
  return typeof cell === 'object' && cell !== null && 'basicValue' in cell ? cell.basicValue : cell;
}

function isBlank(cell: any): boolean {
  return cell === null || cell === undefined || (typeof cell === 'string' && cell.trim() === '');
}

function refused(name: string, got: any, accepted: string): Error {
  return worksheetError(`${name} must be ${accepted}; got ${shown(got)}`);
}

export function oneOf(choices: readonly string[]): string {
  const quoted = choices.map((choice) => `"${choice}"`);
  return quoted.length < 2 ? quoted.join('') : `${quoted.slice(0, -1).join(', ')} or ${quoted[quoted.length - 1]}`;
}

/** What was given, as the sentence shows it: texts quoted and cut short, truth values as a sheet writes them. */
function shown(got: any): string {
  if (typeof got === 'string') return `"${got.length > LONGEST_WORD ? `${got.slice(0, LONGEST_WORD)}…` : got}"`;
  if (typeof got === 'boolean') return got ? 'TRUE' : 'FALSE';
  if (typeof got === 'number') return figure(got);
  if (Array.isArray(got)) return rangeSize(got);
  return 'something that is neither a number nor text';
}

function rangeSize(given: any[]): string {
  if (given.length === 0) return 'an empty range';
  const columns = Array.isArray(given[0]) ? given[0].length : 1;
  return `a range of ${given.length} × ${columns} cells`;
}
