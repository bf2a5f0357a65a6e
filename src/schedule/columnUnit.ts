import type { Unit } from '../unit';
import { straightMarks } from './straightMarks';

/** The unit a column is kept in; `ft-in` is feet and inches written together. */
export type ColumnUnit = 'in' | 'ft' | 'ft-in' | 'mm' | 'cm' | 'm';

/** For sentences. */
export const UNIT_NAMES: Readonly<Record<ColumnUnit, string>> = {
  in: 'inches',
  ft: 'feet',
  'ft-in': 'feet and inches',
  mm: 'millimeters',
  cm: 'centimeters',
  m: 'meters',
};

const UNIT_WORDS: Readonly<Record<string, ColumnUnit>> = {
  in: 'in',
  ins: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  "''": 'in',
  ft: 'ft',
  feet: 'ft',
  foot: 'ft',
  "'": 'ft',
  mm: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  millimetres: 'mm',
  cm: 'cm',
  centimeters: 'cm',
  centimetres: 'cm',
  m: 'm',
  meters: 'm',
  metres: 'm',
};
/** "(in feet and inches)" and a little more; longer text is no unit. */
const LONGEST_UNIT = 32;
const FEET_AND_INCHES = /^(?:ft|feet|foot|')\s*(?:-|–|\/|&|\+|and|,)?\s*(?:in|ins|inch|inches|"|'')$/;

/** A unit when the text is nothing but a unit: `in`, `(mm)`, `ft-in`, `[in.]`. */
export function readUnit(text: string): ColumnUnit | null {
  if (text.length > LONGEST_UNIT) return null;
  const bare = straightMarks(text)
    .toLowerCase()
    .replace(/^[\s([{]*(?:in (?=feet|inches|mm|milli|cm|meters))?/, '')
    .replace(/[\s)\]}]*$/, '')
    .replace(/\./g, '')
    .trim();
  if (bare === '') return null;
  if (FEET_AND_INCHES.test(bare)) return 'ft-in';
  return Object.hasOwn(UNIT_WORDS, bare) ? (UNIT_WORDS[bare] ?? null) : null;
}

const INCHES = { in: 1, ft: 12, 'ft-in': 1 } as const;
const MILLIMETERS = { in: 25.4, ft: 304.8, 'ft-in': 25.4, mm: 1, cm: 10, m: 1000 } as const;

/** A figure in a column's unit, in the workbook's. 152.4 mm is 6 in to the last bit. */
export function inWorkbookUnit(value: number, from: ColumnUnit, unit: Unit): number {
  if (from === unit) return value;
  if (unit === 'mm') return value * MILLIMETERS[from];
  if (from in INCHES) return value * INCHES[from as keyof typeof INCHES];
  const inches = (value * MILLIMETERS[from]) / 25.4;
  const onTape = Math.round(inches * 64) / 64;
  return Math.abs(onTape - inches) <= inches * 1e-14 ? onTape : inches;
}
