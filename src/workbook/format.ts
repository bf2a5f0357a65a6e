import type { Measure } from '../standards';
import type { Unit } from '../unit';

/** What a column of a sheet measures; decides its number format and what stands in the row of units. */
export type ColumnMeasure =
  | 'text'
  | 'row'
  | 'count'
  | 'input length' // as a shop writes it: 36 1/2
  | 'length' // exact, in decimals
  | 'length text' // rounded, as on a tape
  | 'degrees'
  | 'boardFeet'
  | 'cuts'
  | 'minutes'
  | 'money'
  | 'number';

const MONEY = '#,##0.00';

/** The Excel number format of a cell with this value. */
export function columnFormat(measure: ColumnMeasure, unit: Unit, value: unknown = null): string {
  switch (measure) {
    case 'text':
    case 'length text':
      return '@';
    case 'row':
    case 'count':
      return '0';
    case 'input length':
      return inputLengthFormat(value, unit);
    case 'length':
      return unit === 'in' ? '0.000' : '0.0';
    case 'degrees':
      return '0.00';
    case 'boardFeet':
      return '0.00';
    case 'cuts':
    case 'minutes':
      return '0.0';
    case 'number':
      return '0.0##';
    case 'money':
      return MONEY;
  }
}

/** A length as a shop writes it, 36 1/2; what is no fraction of the tape is shown in decimals. */
function inputLengthFormat(value: unknown, unit: Unit): string {
  if (unit === 'mm') return '0.0##';
  return typeof value === 'number' && !Number.isInteger(value * 64) ? '0.000' : '# ??/??';
}

/** What stands in the unit row below a heading. */
export function columnUnit(measure: ColumnMeasure, unit: Unit): string {
  switch (measure) {
    case 'input length':
    case 'length':
      return unit;
    case 'length text':
      return unit === 'in' ? 'in, to 1/16' : 'mm, to 0.1';
    case 'degrees':
      return 'deg';
    case 'boardFeet':
      return 'bd ft';
    case 'minutes':
      return 'min';
    case 'money':
      return '$';
    case 'cuts':
      return 'per in';
    default:
      return '';
  }
}

export function settingFormat(measure: Measure, unit: Unit, value: unknown): string {
  switch (measure) {
    case 'length':
      return inputLengthFormat(value, unit);
    case 'percent':
      return '0.0%';
    case 'money':
    case 'moneyPerHour':
      return MONEY;
    case 'choice':
    case 'text':
      return '@';
    default:
      return 'General';
  }
}
