import { cellText } from './cell';
import type { Bare } from './listUnit';
import { meaningOf, type MeaningKey } from './meanings';
import { readLength } from './readLength';
import { cellsOf, type RawOpening } from './rowCells';
import { straightMarks } from './straightMarks';

/*
 * Whether a list that reads well in inches reads as well in centimeters. Between the two lies a factor of 2.54, less than openings of
 * one job differ by: no single figure tells, and a rise next to nothing (6 is a rise in either). What tells is the smallest opening of
 * the list, its usual one, and whatever nobody writes in centimeters.
 */

interface Likely {
  /** Every figure is at least so large, or it is a list in inches. */
  readonly every: number;
  /** And so is the middle one, unless every figure is at least `sure`. */
  readonly middle: number;
  readonly sure: number;
  readonly most: number;
}

/** Openings as they are made, in centimeters: a 36 in window is no 36 cm window. */
const IN_CENTIMETERS: Partial<Record<MeaningKey, Likely>> = {
  width: { every: 40, middle: 60, sure: 50, most: 500 },
  roughWidth: { every: 40, middle: 60, sure: 50, most: 510 },
  diameter: { every: 40, middle: 60, sure: 50, most: 300 },
  radius: { every: 30, middle: 45, sure: 40, most: 1000 },
  height: { every: 45, middle: 60, sure: 60, most: 370 },
  roughHeight: { every: 45, middle: 60, sure: 60, most: 380 },
  headHeight: { every: 150, middle: 150, sure: 150, most: 500 },
  leg: { every: 10, middle: 10, sure: 10, most: 400 },
  rise: { every: 5, middle: 5, sure: 5, most: 250 },
};
/** A casing's figures that are one in inches and none in centimeters. */
const CASING_IN_INCHES: Partial<Record<MeaningKey, readonly [number, number]>> = {
  face: [1.5, 4.75],
  thickness: [0.5, 1.125],
  reveal: [0.125, 0.375],
};
const INCH_OR_FOOT_MARKS = /\d\s*(?:"|''|'|in\b|inch|ft\b|feet)/i;
const FRACTION = /\d\s*\/\s*\d|[½¼¾⅛⅜⅝⅞]/;
/** 36.25: an eighth or a quarter, which nobody measures in centimeters. */
const EIGHTHS = /\.(?:25|75|125|375|625|875)0*$/;
/** So many widths of the list are whole half feet, where those that are whole tens of centimeters as well tell nothing. */
const HALF_FEET_PART = 2 / 3;

/** Whether a list that fits openings in inches fits others in centimeters, and shows by nothing that it is in inches. */
export function mayBeCentimeters(raws: readonly RawOpening[], bare: readonly Bare[]): boolean {
  const across = bare.filter(({ key }) => WIDTHS.has(key));
  if (across.length === 0 || showsInches(raws) || areHalfFeet(across.map(({ value }) => value))) return false;
  const byKey = new Map<MeaningKey, number[]>();
  for (const { key, value } of bare) {
    const there = byKey.get(key);
    if (there) there.push(value);
    else byKey.set(key, [value]);
  }
  return [...byKey].every(([key, values]) => fits(values, IN_CENTIMETERS[key]));
}

const WIDTHS: ReadonlySet<MeaningKey> = new Set<MeaningKey>(['width', 'roughWidth', 'diameter', 'radius']);

function fits(values: readonly number[], likely: Likely | undefined): boolean {
  if (likely === undefined) return true;
  const sorted = [...values].sort((one, other) => one - other);
  const [least = 0] = sorted;
  const most = sorted.at(-1) ?? 0;
  const middle = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
  return most <= likely.most && least >= likely.every && (middle >= likely.middle || least >= likely.sure);
}

/** Something in the list that nobody writes of centimeters: an inch mark, a fraction, a quarter, a casing of 3.5. */
function showsInches(raws: readonly RawOpening[]): boolean {
  return raws.some((raw) =>
    raw.block.some(({ key, unit, index }) => {
      if (key === null) return false;
      const { kind } = meaningOf(key);
      if (kind !== 'length' && kind !== 'size') return false;
      if (unit === 'in' || unit === 'ft' || unit === 'ft-in') return true;
      const text = straightMarks(cellText(raw.cells[index])).slice(0, 60);
      if (unit !== null) return false;
      return INCH_OR_FOOT_MARKS.test(text) || FRACTION.test(text) || EIGHTHS.test(text) || isInchCasing(raw, key);
    }),
  );
}

function isInchCasing(raw: RawOpening, key: MeaningKey): boolean {
  const range = CASING_IN_INCHES[key];
  const [first] = range === undefined ? [] : cellsOf(raw, key);
  if (range === undefined || first === undefined) return false;
  const read = readLength(first.cell, { name: '', column: 'in', unit: 'in', zero: true });
  return read.ok && read.value >= range[0] && read.value <= range[1];
}

/** Most widths are whole half feet: 66, 72, 84. 60, 90 and 120 are tens as well and count for neither. */
function areHalfFeet(widths: readonly number[]): boolean {
  const telling = [...new Set(widths)].filter((width) => width % 30 !== 0);
  const halfFeet = telling.filter((width) => width % 6 === 0);
  return halfFeet.length > 0 && halfFeet.length >= telling.length * HALF_FEET_PART;
}
