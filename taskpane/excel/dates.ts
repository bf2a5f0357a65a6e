import type { CellValue } from '../../src/schedule/opening';

const DAY = 86_400_000;
/** Day 0 of Excel's count, which has a 29 February 1900 that never was; right from March 1900 on. */
const DAY_ZERO = Date.UTC(1899, 11, 30);

/** Does a number format (English codes, as Office.js gives it) show a number as a date or a time? */
export function showsDate(format: unknown): boolean {
  if (typeof format !== 'string' || format === 'General' || format === '@') return false;
  const codes = format.replace(/"[^"]*"|\\.|\[[^\]]*\]|_.|\*./g, '');
  return /[dmyhs]/i.test(codes) && !/General/i.test(codes);
}

/** A cell as the schedule reader wants it: '' is empty, and a number shown as a date is a date (UTC). */
export function cellValue(value: unknown, format: unknown): CellValue {
  if (value === '' || value === undefined || value === null) return null;
  if (typeof value === 'number' && showsDate(format)) return new Date(DAY_ZERO + Math.round(value * DAY));
  return typeof value === 'number' || typeof value === 'boolean' ? value : String(value);
}
