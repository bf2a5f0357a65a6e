import type { Measure } from '../standards';
import type { Unit } from '../unit';
import type { ColumnMeasure } from './columns/column';

/** Excel number formats, each figure's in one place. */
const MONEY = '#,##0.00';

export function columnFormat(measure: ColumnMeasure, unit: Unit): string {
  switch (measure) {
    case 'text':
      return '@';
    case 'row':
    case 'count':
      return '0';
    case 'input length':
      return unit === 'in' ? '# ??/??' : '0.0##';
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

/** An input as a shop writes it, 36 1/2; what is no fraction of the tape is shown in decimals. */
export function inputLengthFormat(value: unknown, unit: Unit): string {
  const onTape = typeof value !== 'number' || Number.isInteger(value * 64);
  return onTape ? columnFormat('input length', unit) : columnFormat('length', unit);
}

/** What stands in the unit row below a heading. */
export function columnUnit(measure: ColumnMeasure, unit: Unit): string {
  switch (measure) {
    case 'input length':
    case 'length':
      return unit;
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

export function settingFormat(measure: Measure, unit: Unit): string {
  switch (measure) {
    case 'length':
      return columnFormat('input length', unit);
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

export function settingUnit(measure: Measure, unit: Unit): string {
  switch (measure) {
    case 'length':
      return unit;
    case 'feed':
      return unit === 'in' ? 'ft/min' : 'm/min';
    case 'rpm':
      return 'rev/min';
    case 'count':
      return 'number';
    case 'degrees':
      return 'degrees';
    case 'percent':
      return '%';
    case 'minutes':
      return 'min';
    case 'minutesPerLength':
      return unit === 'in' ? 'min/ft' : 'min/m';
    case 'money':
      return '$';
    case 'moneyPerHour':
      return '$/hour';
    case 'choice':
    case 'text':
      return '';
  }
}
