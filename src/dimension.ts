import { quoted } from './require';
import { ok, refuse, type Result } from './result';
import { inches, type Inches, type Unit } from './unit';

export interface DimensionOptions {
  /** What a number without a unit is in: inches unless said. */
  readonly bare?: Unit;
  /** What the answer is in. Millimeters read as millimeters come back unrounded. */
  readonly answer: Unit;
}

const ACCEPTED = `36, 36.5, 36 1/2, 36-1/2, 36", 3', 3'-6 1/2", 3ft 6in, 914 mm, 91.4 cm or 0.914 m`;
/** Longer text is no dimension. */
const LONGEST_TEXT = 60;

/**
 * Inches from dimension text: a number, a number with a fraction, feet, feet and inches, or mm, cm, m, with or without
 * spaces, with straight or typographic marks and fraction characters; a hyphen joins (`80-1/2` is 80.5), one in front is a
 * minus. A comma is a decimal comma where it can't separate thousands (`914,4 mm`), and refused where it may be either.
 * A bare fraction is read only as it stands on a tape (`7/16`): `6/8` may be a call-out. Inches after feet are less
 * than 12. Everything else is refused with the text quoted back.
 *
 * Example: `3'-6 1/2"` is 42.5; `914,4 mm` is 36.
 */
export function readDimension(text: string): Result<Inches> {
  const read = readDimensionIn(text, { answer: 'in' });
  return read.ok ? ok(inches(read.value, 'in')) : read;
}

/** The same as a workbook has it: the answer in its unit, a number without one in `bare`. */
export function readDimensionIn(text: string, options: DimensionOptions): Result<number> {
  const written = text.trim();
  if (written === '') return refuse(`a dimension is missing; accepted are ${ACCEPTED}`);
  const refusal = refuse(`${quoted(written)} is not a dimension; accepted are ${ACCEPTED}`);
  if (written.length > LONGEST_TEXT) return refusal;
  const plain = plainMarks(written);
  const negative = plain.startsWith('-');
  const size = readSize(negative ? plain.slice(1).trim() : plain, options);
  if (size === null) return refusal;
  const amount = options.answer === 'mm' ? size.millimeters : size.inches;
  if (!Number.isFinite(amount)) return refusal;
  return ok(negative && amount !== 0 ? -amount : amount);
}

const FRACTION_CHARACTERS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅒': '1/10',
};
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';

/** Text with straight marks, plain digits, single spaces, units as `'`, `"`, `mm`, `cm`, `m`. */
export function plainMarks(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⅒]/g, (character) => ` ${FRACTION_CHARACTERS[character]!}`)
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]+[⁄∕/]/g, (digits) => ` ${[...digits].map((digit) => digitIn(SUPERSCRIPTS, digit)).join('')}`)
    .replace(/[₀₁₂₃₄₅₆₇₈₉]/g, (digit) => digitIn(SUBSCRIPTS, digit))
    .replace(/[⁄∕]/g, '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[″“”‟〃]/g, '"')
    .replace(/[′‘’‛`´ʹ]/g, "'")
    .replace(/''/g, '"')
    .toLowerCase()
    .replace(/(?<![a-z])(?:feet|foot|ft)(?![a-z])\.?/g, "'")
    .replace(/(?<![a-z])(?:inches|inch|in)(?![a-z])\.?/g, '"')
    .replace(/(?<![a-z])(?:millimeters?|millimetres?|mm)(?![a-z])\.?/g, 'mm')
    .replace(/(?<![a-z])(?:centimeters?|centimetres?|cm)(?![a-z])\.?/g, 'cm')
    .replace(/(?<![a-z])(?:meters?|metres?|m)(?![a-z])\.?/g, 'm')
    .replace(/\s+/g, ' ')
    .trim();
}

function digitIn(digits: string, character: string): string {
  const at = digits.indexOf(character);
  return at < 0 ? character : String(at);
}

interface Size {
  readonly inches: number;
  readonly millimeters: number;
}

const NUMBER = '(\\d[\\d.,]*|[.,]\\d+)';
const FRACTION = '(\\d{1,3}) ?/ ?(\\d{1,3})';
/** Whole inches, decimal inches, inches and a fraction, or a fraction alone. */
const INCHES = `(?:${NUMBER}(?:(?: ?- ?| )${FRACTION})?|${FRACTION})`;
const METRIC_SIZE = new RegExp(`^${NUMBER} ?(mm|cm|m)$`);
const INCH_SIZE = new RegExp(`^${INCHES} ?(")?$`);
const FOOT_SIZE = new RegExp(`^${NUMBER}(?:(?: ?- ?| )${FRACTION})? ?'$`);
const FOOT_INCH_SIZE = new RegExp(`^(\\d+) ?' ?-? ?${INCHES} ?"?$`);

function readSize(text: string, options: DimensionOptions): Size | null {
  const metric = METRIC_SIZE.exec(text);
  if (metric) return inMillimeters(metric[1]!, metric[2]!);

  const inches = INCH_SIZE.exec(text);
  if (inches) {
    const marked = inches[6] !== undefined;
    if (marked) return inInches(mixed(inches, 1, 'tape or not'));
    const bareNumber = inches[2] === undefined ? inches[1] : undefined;
    if (options.bare === 'mm') return bareNumber === undefined ? null : inMillimeters(bareNumber, 'mm');
    // A comma in a number without any unit may as well part two numbers.
    return bareNumber?.includes(',') ? null : inInches(mixed(inches, 1, 'tape only'));
  }

  const feetOnly = FOOT_SIZE.exec(text);
  if (feetOnly) {
    const feet = mixed([...feetOnly, undefined, undefined], 1, 'tape or not');
    return inInches(feet === null ? null : feet * 12);
  }

  const feetAndInches = FOOT_INCH_SIZE.exec(text);
  if (!feetAndInches) return null;
  const rest = mixed(feetAndInches, 2, 'tape or not');
  return rest === null || rest >= 12 ? null : inInches(Number(feetAndInches[1]) * 12 + rest);
}

function inInches(amount: number | null): Size | null {
  return amount === null ? null : { inches: amount, millimeters: (amount * 254) / 10 };
}

const PLACES: Readonly<Record<string, number>> = { mm: 0, cm: 1, m: 3 };

/**
 * The decimal point is moved in the text, so that 91.4 cm is the same number as 914 mm and 1219.2 mm, taken as 12192/254, is
 * 48 to the last bit.
 */
function inMillimeters(digits: string, unit: string): Size | null {
  const decimal = decimalText(digits);
  if (decimal === null) return null;
  const moved = (places: number) => Number(`${decimal}e${places}`);
  const places = PLACES[unit]!;
  return { inches: moved(places + 1) / 254, millimeters: moved(places) };
}

/** Number, number and fraction, or fraction alone, in five groups of a match from `at` on. */
function mixed(
  match: readonly (string | undefined)[],
  at: number,
  bareFraction: 'tape only' | 'tape or not',
): number | null {
  const [number, over, under, aloneOver, aloneUnder] = match.slice(at);
  if (number === undefined) {
    const alone = proper(aloneOver!, aloneUnder!);
    return bareFraction === 'tape only' && !onTape(Number(aloneOver), Number(aloneUnder)) ? null : alone;
  }
  if (over === undefined) {
    const decimal = decimalText(number);
    return decimal === null ? null : Number(decimal);
  }
  const fraction = proper(over, under!);
  return fraction === null || !/^\d+$/.test(number) ? null : Number(number) + fraction;
}

function proper(over: string, under: string): number | null {
  return Number(over) < Number(under) ? Number(over) / Number(under) : null;
}

/** Reduced halves to 128ths. `6/8` is not: as a call-out it would be six feet eight. */
function onTape(over: number, under: number): boolean {
  return over % 2 === 1 && [2, 4, 8, 16, 32, 64, 128].includes(under);
}

/** The digits with a decimal point; null where the comma could as well part thousands, or does so wrongly. */
function decimalText(digits: string): string | null {
  const marks = digits.replace(/\d/g, '');
  if (marks === '' || marks === '.') return digits;
  // "1,219.5": a point after thousands can only be the decimal one.
  if (/^[1-9]\d{0,2}(,\d{3})+\.\d+$/.test(digits)) return digits.replaceAll(',', '');
  const partsThousands = /^[1-9]\d{0,2},\d{3}$/.test(digits);
  return marks === ',' && !partsThousands ? digits.replace(',', '.') : null;
}
