import { isFormula } from '../../src/formulaText';
import { lookOf, shownAs } from '../../src/schedule/numberLook';
import type { CellValue } from '../../src/schedule/opening';
import { withoutIntersection } from '../../src/workbook/formulas/calls';

/** A cell as the schedule reader wants it: '' is empty, and a number is what its format shows: a date (UTC), or with its unit. */
export function cellValue(value: unknown, format: unknown): CellValue {
  const plain = basicValue(value);
  if (plain === '' || plain === undefined || plain === null) return null;
  if (typeof plain === 'number') return typeof format === 'string' ? shownAs(plain, lookOf(format)) : plain;
  return typeof plain === 'boolean' ? plain : String(plain);
}

/** A cell's formula, or the constant that it holds. */
export function cellFormula(entry: unknown): CellValue {
  return isFormula(entry) ? withoutIntersection(entry) : cellValue(entry, null);
}

/** A cell with a data type (a formatted number, a linked record) may come as an object, which carries its plain value. */
function basicValue(value: unknown): unknown {
  return typeof value === 'object' && value !== null && 'basicValue' in value ? value.basicValue : value;
}
