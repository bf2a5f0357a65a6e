import { lookOf, shownAs } from '../../src/schedule/numberLook';
import type { CellValue } from '../../src/schedule/opening';

/** A cell as the schedule reader wants it: '' is empty, and a number is what its format shows: a date (UTC), or with its unit. */
export function cellValue(value: unknown, format: unknown): CellValue {
  if (value === '' || value === undefined || value === null) return null;
  if (typeof value === 'number') return typeof format === 'string' ? shownAs(value, lookOf(format)) : value;
  return typeof value === 'boolean' ? value : String(value);
}
