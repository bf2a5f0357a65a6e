import { cellText } from './cell';
import type { Bare } from './listUnit';
import { meaningOf, type MeaningKey } from './meanings';
import { isBare, readLength } from './readLength';
import { cellsOf, type RawOpening } from './rowCells';
import { straightMarks } from './straightMarks';
import { pushTo } from '../pushTo';

/*
 * Whether a list that reads well in inches reads as well in centimeters. Between the two lies a factor of 2.54, less than openings of
 * one job differ by: no single figure tells, and a rise next to nothing (6 is a rise in either). What tells is the smallest opening of
 * the list, its usual one, and whatever nobody writes in centimeters. Openings of 25 to 38 are the most usual there are in inches and
 * next to none in centimeters: such a list is asked about only where something in it leans to centimeters.
 */

interface Likely {
  /** Every figure is at least so large, or it is a list in inches. */
  readonly every: number;
  /** And so is the middle one, unless every figure is at least `sure`. */
  readonly middle: number;
  readonly sure: number;
  readonly most: number;
  /** Enough where something leans to centimeters. */
  readonly leaning: number;
}

/** Openings as they are made, in centimeters: a 36 in window is no 36 cm window. */
const IN_CENTIMETERS: Partial<Record<MeaningKey, Likely>> = {
  width: { every: 40, middle: 60, sure: 50, most: 500, leaning: 20 },
  roughWidth: { every: 40, middle: 60, sure: 50, most: 510, leaning: 20 },
  diameter: { every: 40, middle: 60, sure: 50, most: 300, leaning: 20 },
  radius: { every: 30, middle: 45, sure: 40, most: 1000, leaning: 15 },
  height: { every: 45, middle: 60, sure: 60, most: 370, leaning: 30 },
  roughHeight: { every: 45, middle: 60, sure: 60, most: 380, leaning: 30 },
  headHeight: { every: 150, middle: 150, sure: 150, most: 500, leaning: 150 },
  leg: { every: 10, middle: 10, sure: 10, most: 400, leaning: 10 },
  rise: { every: 5, middle: 5, sure: 5, most: 250, leaning: 2 },
};
/** A casing's figures that are one in inches and none in centimeters. */
const CASING_IN_INCHES: Partial<Record<MeaningKey, readonly [number, number]>> = {
  face: [1.5, 4.75],
  thickness: [0.5, 1.125],
  reveal: [0.125, 0.375],
};
/** And those that are one in centimeters and seldom in inches. */
const CASING_IN_CENTIMETERS = { face: [6.5, 15], thickness: [1.8, 4] } as const;
const INCH_OR_FOOT_MARKS = /\d\s*(?:"|''|'|in\b|inch|ft\b|feet)/i;
const FRACTION = /\d\s*\/\s*\d|[½¼¾⅛⅜⅝⅞]/;
/** 36.25: an eighth or a quarter, which nobody measures in centimeters. */
const EIGHTHS = /\.(?:25|75|125|375|625|875)0*$/;
/** So many widths of the list are whole half feet, where those that are whole tens of centimeters as well tell nothing. */
const HALF_FEET_PART = 2 / 3;

/** Whether a list that fits openings in inches fits others in centimeters, and shows by nothing that it is in inches. */
export function mayBeCentimeters(raws: readonly RawOpening[], bare: readonly Bare[]): boolean {
  const across = bare.flatMap(({ key, value }) => (WIDTHS.has(key) ? [value] : []));
  if (across.length === 0 || showsInches(raws)) return false;
  const leans = areByFives(across) || areTenths(across) || raws.some(hasCentimeterCasing);
  if (!leans && areHalfFeet(across)) return false;
  const byKey = new Map<MeaningKey, number[]>();
  for (const { key, value } of bare) {
    pushTo(byKey, key, value);
  }
  return [...byKey].every(([key, values]) => fits(values, IN_CENTIMETERS[key], leans));
}

const WIDTHS: ReadonlySet<MeaningKey> = new Set<MeaningKey>(['width', 'roughWidth', 'diameter', 'radius']);

function fits(values: readonly number[], likely: Likely | undefined, leans: boolean): boolean {
  if (likely === undefined) return true;
  const sorted = [...values].sort((one, other) => one - other);
  const [least = 0] = sorted;
  const most = sorted.at(-1) ?? 0;
  const middle = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
  if (most > likely.most) return false;
  if (leans) return least >= likely.leaning;
  return least >= likely.every && (middle >= likely.middle || least >= likely.sure);
}

/** 25, 30, 35: whole fives, and not only tens, which are sizes in inches as well. */
function areByFives(widths: readonly number[]): boolean {
  return widths.every((width) => width % 5 === 0) && widths.some((width) => width % 10 !== 0);
}

/** 30.4 or 36.7: a tenth that is no half, eighth or sixteenth. Half of the widths may be whole. */
function areTenths(widths: readonly number[]): boolean {
  const tenths = widths.filter((width) => /^\d+\.[1-46-9]$/.test(String(width)));
  return tenths.length * 2 >= widths.length && widths.every((width) => /^\d+(?:\.\d)?$/.test(String(width)));
}

/** A casing wider or thicker than one is in inches, as it would be in centimeters. */
function hasCentimeterCasing(raw: RawOpening): boolean {
  return (['face', 'thickness'] as const).some((key) => {
    const value = casingFigure(raw, key);
    const [least, most] = CASING_IN_CENTIMETERS[key];
    return value !== null && value >= least && value <= most;
  });
}

function casingFigure(raw: RawOpening, key: MeaningKey): number | null {
  const [first] = cellsOf(raw, key);
  if (first === undefined || first.column.unit !== null || !isBare(first.cell)) return null;
  const read = readLength(first.cell, { name: '', column: 'in', unit: 'in', zero: true });
  return read.ok ? read.value : null;
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
  const value = range === undefined ? null : casingFigure(raw, key);
  return range !== undefined && value !== null && value >= range[0] && value <= range[1];
}

/** Most widths are whole half feet: 66, 72, 84. 60, 90 and 120 are tens as well and count for neither. */
function areHalfFeet(widths: readonly number[]): boolean {
  const telling = [...new Set(widths)].filter((width) => width % 30 !== 0);
  const halfFeet = telling.filter((width) => width % 6 === 0);
  return halfFeet.length > 0 && halfFeet.length >= telling.length * HALF_FEET_PART;
}
