import { readCallout, readDimension } from '../dimension';
import { ok, refuse, type Refusal, type Result } from '../result';
import { perInch, type Unit } from '../unit';
import { cellText, typedBeforeDate } from './cell';
import { capital, figure, quote } from './figure';
import { straightMarks, type ColumnUnit } from './headingText';
import type { CellValue } from './opening';

/** Nothing on a building is longer: 1,000 ft. */
const LONGEST_INCHES = 12_000;
/** Longer text is no figure; the patterns below never see it. */
const LONGEST_TEXT = 60;
const BARE_FIGURE = /^[-+]?[\d\s.,/\u2044\u00bc-\u00be\u2150-\u215e-]+$/;

const MILLIMETERS = { in: 25.4, ft: 304.8, 'ft-in': 25.4, mm: 1, cm: 10, m: 1000 } as const;
const INCHES = { in: 1, ft: 12, 'ft-in': 1 } as const;

/** A figure without a unit of its own, taken in the column's unit, in the workbook's. 152.4 mm is 6 in to the last bit. */
function inWorkbookUnit(value: number, column: ColumnUnit | null, unit: Unit): number {
  const from = column ?? unit;
  if (from === unit) return value;
  if (unit === 'mm') return value * MILLIMETERS[from];
  if (from in INCHES) return value * INCHES[from as keyof typeof INCHES];
  const inches = (value * MILLIMETERS[from]) / 25.4;
  const onTape = Math.round(inches * 64) / 64;
  return Math.abs(onTape - inches) <= inches * 1e-14 ? onTape : inches;
}

export interface LengthOptions {
  /** For sentences: "width", "spring height". */
  readonly name: string;
  readonly column: ColumnUnit | null;
  readonly unit: Unit;
  /** Reveals, rises and legs may be 0. */
  readonly zero?: boolean;
  /** A width or height of a whole opening: without a unit it must be a likely one. */
  readonly whole?: boolean;
  /** Greatest length in inches that can be meant; 1,000 ft unless said. */
  readonly most?: number;
}

/**
 * A length in the workbook's unit from a cell that is not blank. A bare figure is in the column's unit, or the
 * workbook's where the column names none; text with its own unit (`914 mm`, `3'-0"`) is converted, 25.4 mm to the inch.
 */
export function readLength(cell: CellValue, options: LengthOptions): Result<number> {
  const text = cellText(cell);
  const name = capital(options.name);
  const trap = trapped(cell, name);
  if (trap !== null) return refuse(trap);
  const read =
    typeof cell === 'number' ? ok(inWorkbookUnit(cell, options.column, options.unit)) : lengthText(text, options);
  if (!read.ok) return refuse(`${name} can't be read: the cell says ${quote(text)}. ${read.message}`);
  const { value } = read;
  if (!Number.isFinite(value)) return refuse(`${name} can't be read: the cell says ${quote(text)}.`);
  if (value < 0 || (value === 0 && !options.zero))
    return refuse(`${name} must be more than 0; the cell says ${quote(text)}.`);
  const most = options.most ?? LONGEST_INCHES;
  if (value > most * perInch(options.unit)) {
    const serial = /^[345]\d{4}$/.test(text);
    const why = serial ? ' It may be a fraction that a spreadsheet program turned into a date.' : '';
    const limit = most === LONGEST_INCHES ? '1,000 ft' : `${figure(most)} in`;
    return refuse(`${name} of ${figure(value)} is more than ${limit}, which can't be right.${why}`);
  }
  return unlikely(cell, value, options) ?? ok(value);
}

/** A bare 914 in a workbook of inches is most likely millimeters, a bare 3 feet: better asked than priced. */
function unlikely(cell: CellValue, value: number, { name, column, unit, whole }: LengthOptions): Refusal | null {
  if (!whole || column !== null || !(typeof cell === 'number' || BARE_FIGURE.test(straightMarks(cellText(cell)))))
    return null;
  const inches = value / perInch(unit);
  if (inches >= 4 && inches < 600) return null;
  const read = unit === 'mm' ? `${figure(value)} mm` : `${figure(value)} inches`;
  return refuse(`${capital(name)} ${figure(value)} has no unit and would be ${read}; please write the unit.`);
}

const ACCEPTED = `Figures such as 36, 36 1/2, 3'-0" or 914 mm are understood.`;

function lengthText(text: string, { column, unit }: LengthOptions): Result<number> {
  if (text.length > LONGEST_TEXT) return refuse(ACCEPTED);
  if (/^\d{1,7}(?:\.\d+)?$/.test(text) && column !== 'ft-in') return ok(inWorkbookUnit(Number(text), column, unit));
  const plain = straightMarks(text);
  if (BARE_FIGURE.test(plain)) {
    if (column === 'ft-in') return feetAndInches(plain, unit);
    const from = column ?? unit;
    const read = readDimension(plain, from === 'mm' ? { bare: 'mm', answer: 'mm' } : {});
    return read.ok ? ok(inWorkbookUnit(read.value, column, unit)) : refuse(ACCEPTED);
  }
  const read = readDimension(text, { answer: unit });
  return read.ok ? read : refuse(ACCEPTED);
}

/** In a column of feet and inches `3-6`, `3-6 1/2` and `7/0` are feet and inches; a lone figure could be either. */
function feetAndInches(text: string, unit: Unit): Result<number> {
  const parts = /^\s*(\d+)\s*(?:-\s*(\d{1,2}(?:\s+\d+\/\d+|\.\d+)?)|\/\s*(0))\s*$/.exec(text);
  if (parts === null) {
    const read = readDimension(text, { answer: unit });
    if (read.ok && /\d[\s-]+\d+\/\d+/.test(text)) return read;
    return refuse(`In a column of feet and inches, write the marks: 7' or 7".`);
  }
  const read = readDimension(`${parts[1]}' ${parts[2] ?? parts[3] ?? 0}"`, { answer: unit });
  return read.ok ? read : refuse(ACCEPTED);
}

/** The sentence for a cell that holds no length at all but something a spreadsheet program put there, or null. */
function trapped(cell: CellValue, name: string): string | null {
  const text = cellText(cell);
  const typed = typedBeforeDate(cell);
  if (typed === '') return `${name} can't be read: the cell holds a date that does not exist.`;
  if (typed !== null)
    return (
      `${name} is the date ${quote(text)}, which is what a spreadsheet program makes of ${typed} when the cell is ` +
      `not formatted as text; please confirm the figure and type it as 0 ${typed} or as a decimal.`
    );
  if (typeof cell === 'boolean') return `${name} can't be read: the cell says ${text}.`;
  if (text.startsWith('='))
    return `${name} is a formula (${quote(text)}) whose result is not stored in the file; please open the file in a spreadsheet program and save it again.`;
  if (/^#(?:DIV\/0!|N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!|SPILL!|CALC!|GETTING_DATA)/i.test(text))
    return `${name} is the error ${text} in the file.`;
  return null;
}

/** A width and a height from a cell of sizes: `3068`, `3/0 x 6/8`, `36 x 54`, `3'-0" x 6'-8"`. */
export function readSize(cell: CellValue, options: LengthOptions): Result<{ width: number; height: number }> {
  const text = straightMarks(cellText(cell).slice(0, LONGEST_TEXT + 1));
  const name = capital(options.name);
  const trap = trapped(cell, name);
  if (trap !== null) return refuse(trap);
  const parts = text.split(/\s*(?:[x×X*]|\bby\b)\s*/);
  const feetInches = parts.every((part) => /^\d{1,2}\s*[/-]\s*\d{1,2}$/.test(part));
  if (parts.length === 2 && !feetInches) {
    const [width, height] = parts.map((part) => readLength(part.replace(/\s*[wWhH]$/, ''), options));
    if (width?.ok && height?.ok) return ok({ width: width.value, height: height.value });
    return refuse(
      `${name} can't be read: the cell says ${quote(text)}. Sizes such as 36 x 80, 3/0 x 6/8 or 3068 are understood.`,
    );
  }
  const callout = readCallout(text, { answer: options.unit });
  if (!callout.ok)
    return refuse(
      `${name} can't be read: the cell says ${quote(text)}. Sizes such as 36 x 80, 3/0 x 6/8 or 3068 are understood.`,
    );
  return callout;
}

/** A count of openings: a whole number, alone or with a word such as "2 ea". */
export function readQuantity(cell: CellValue): Result<number> {
  const text = cellText(cell).slice(0, LONGEST_TEXT + 1);
  if (typedBeforeDate(cell) !== null || typeof cell === 'boolean' || text.startsWith('=') || text.startsWith('#'))
    return refuse(`Quantity can't be read: the cell says ${quote(text)}; a whole number is needed.`);
  const digits =
    /^[([]?\s*([-+]?[\d,]*\.?\d+)\s*[)\]]?\s*(?:ea\.?|each|pcs?\.?|pieces?|units?|req'?d|required|off|x|no\.?)?$/i.exec(
      text,
    );
  const value = typeof cell === 'number' ? cell : Number((digits?.[1] ?? 'x').replace(/,/g, ''));
  if (!Number.isFinite(value))
    return refuse(`Quantity can't be read: the cell says ${quote(text)}; a whole number is needed.`);
  if (!Number.isInteger(value) || value < 1)
    return refuse(`Quantity must be a whole number of 1 or more; the cell says ${quote(text)}.`);
  if (value > 100_000) return refuse(`Quantity of ${value} can't be right; please check it.`);
  return ok(value);
}
