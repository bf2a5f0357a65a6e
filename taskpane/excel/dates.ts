import { dateOfSerial, isDateFormat } from '../../src/schedule/dates';
import type { CellValue } from '../../src/schedule/opening';

/** A cell as the schedule reader wants it: '' is empty, and a number that its format shows as a date is a date (UTC). */
export function cellValue(value: unknown, format: unknown): CellValue {
  if (value === '' || value === undefined || value === null) return null;
  if (typeof value === 'number') {
    return typeof format === 'string' && isDateFormat(format) ? dateOfSerial(value) : value;
  }
  return typeof value === 'boolean' ? value : String(value);
}
