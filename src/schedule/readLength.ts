import { readDimensionIn } from '../dimension';
import { ok, refuse, type Refusal, type Result } from '../result';
import { bare, inches, inWorkbook, type Inches, type Unit } from '../unit';
import { cellText } from './cell';
import { inWorkbookUnit, UNIT_NAMES, type ColumnUnit } from './columnUnit';
import { capital, figure, quote } from './figure';
import type { MeaningKey } from './meanings';
import type { CellValue } from './opening';
import { straightMarks } from './straightMarks';
import { trapped } from './trapped';

/** Nothing on a building is longer: 1,000 ft. */
const LONGEST = inches(12_000, 'in');
/** Widths and heights of whole openings lie between these; a figure that doesn't is most likely in another unit. */
const LEAST_WHOLE = inches(4, 'in');
const MOST_WHOLE = inches(600, 'in');
/** Where a heading gives the unit, wider is most likely in another: 36 under feet, 914 under centimeters. */
const MOST_WHOLE_IN_COLUMN = inches(300, 'in');
/** No casing is wider or thicker, no reveal larger: a reveal of 5 is in millimeters. */
export const MOST_OF_CASING: Partial<Record<MeaningKey, Inches>> = {
  reveal: inches(2, 'in'),
  face: inches(24, 'in'),
  thickness: inches(6, 'in'),
};
/** Longer text is no figure; the patterns below never see it. */
const LONGEST_TEXT = 60;
const A_FOOT = inches(12, 'in');
const BARE_FIGURE = /^[-+]?[\d\s.,/\u2044\u00bc-\u00be\u2150-\u215e-]+$/;

export interface LengthOptions {
  /** For sentences: "width", "spring height". */
  readonly name: string;
  readonly column: ColumnUnit | null;
  readonly unit: Unit;
  /** Reveals, rises and legs may be 0. */
  readonly zero?: boolean;
  /** A width or height of a whole opening: a figure without a unit of its own must be a likely one. */
  readonly whole?: boolean;
  /** Greatest length that can be meant; 1,000 ft unless said. */
  readonly most?: Inches | undefined;
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
  const { column, unit } = options;
  // A number under "ft-in" could be either, as much as the text 7 could.
  const read =
    typeof cell === 'number' && column !== 'ft-in'
      ? ok(inWorkbookUnit(cell, column ?? unit, unit))
      : lengthText(text, options);
  if (!read.ok) return refuse(`${name} can't be read: the cell says ${quote(text)}. ${read.message}`);
  const { value } = read;
  if (!Number.isFinite(value)) return refuse(`${name} can't be read: the cell says ${quote(text)}.`);
  if (value < 0 || (value === 0 && !options.zero))
    return refuse(`${name} must be more than 0; the cell says ${quote(text)}.`);
  const most = options.most ?? LONGEST;
  if (value > inWorkbook(most, unit)) {
    const serial = /^[345]\d{4}$/.test(text);
    const why = serial ? ' It may be a fraction that a spreadsheet program turned into a date.' : '';
    const limit = most === LONGEST ? '1,000 ft' : `${figure(bare(most))} in`;
    return refuse(`${name} of ${figure(value)} is more than ${limit}, which can't be right.${why}`);
  }
  return (options.whole && isBare(cell) ? unlikely(text, value, options) : null) ?? ok(value);
}

/** A figure without any unit of its own. */
export function isBare(cell: CellValue): boolean {
  return typeof cell === 'number' || BARE_FIGURE.test(straightMarks(cellText(cell).slice(0, LONGEST_TEXT)));
}

/** Whether a whole opening may be this wide or high; the length in the workbook's unit. */
export function isLikelyWhole(value: number, unit: Unit): boolean {
  return value >= inWorkbook(LEAST_WHOLE, unit) && value < inWorkbook(MOST_WHOLE, unit);
}

/** A bare 914 in a workbook of inches is most likely millimeters, a bare 3 feet: better asked than priced. */
function unlikely(text: string, value: number, options: LengthOptions): Refusal | null {
  const { name, column, unit } = options;
  const likely = isLikelyWhole(value, unit) && (column === null || value < inWorkbook(MOST_WHOLE_IN_COLUMN, unit));
  if (likely) return null;
  if (column !== null)
    return refuse(
      `${capital(name)} ${text} would be ${text} ${UNIT_NAMES[column]}, the unit of its column; please check it and write the unit beside the figure.`,
    );
  const read = unit === 'mm' ? `${figure(value)} mm` : `${figure(value)} inches`;
  return refuse(`${capital(name)} ${figure(value)} has no unit and would be ${read}; please write the unit.`);
}

const ACCEPTED = `Figures such as 36, 36 1/2, 3'-0" or 914 mm are understood.`;

function lengthText(text: string, { column, unit }: LengthOptions): Result<number> {
  if (text.length > LONGEST_TEXT) return refuse(ACCEPTED);
  const from = column ?? unit;
  if (/^\d{1,7}(?:\.\d+)?$/.test(text) && column !== 'ft-in') return ok(inWorkbookUnit(Number(text), from, unit));
  const plain = straightMarks(text);
  if (BARE_FIGURE.test(plain)) {
    if (column === 'ft-in') return feetAndInches(plain, unit);
    const read = readDimensionIn(plain, from === 'mm' ? { bare: 'mm', answer: 'mm' } : { answer: 'in' });
    return read.ok ? ok(inWorkbookUnit(read.value, from, unit)) : refuse(ACCEPTED);
  }
  const read = readDimensionIn(text, { answer: unit });
  return read.ok ? read : refuse(ACCEPTED);
}

/**
 * In a column of feet and inches `3-6`, `3-6 1/2` and `7/0` are feet and inches, `80 1/2` is more inches than a foot has; a
 * lone `7` or `6 1/2` could be either.
 */
function feetAndInches(text: string, unit: Unit): Result<number> {
  const parts = /^\s*(\d+)\s*(?:-\s*(\d{1,2}(?:(?:\s+|\s*-\s*)\d+\/\d+|\.\d+)?)|\/\s*(0))\s*$/.exec(text);
  if (parts === null) {
    const read = readDimensionIn(text, { answer: unit });
    if (read.ok && /\d[\s-]+\d+\/\d+/.test(text) && read.value >= inWorkbook(A_FOOT, unit)) return read;
    return refuse(`In a column of feet and inches, write the marks: 7' or 7".`);
  }
  const read = readDimensionIn(`${parts[1]}' ${parts[2] ?? parts[3] ?? 0}"`, { answer: unit });
  return read.ok ? read : refuse(ACCEPTED);
}
