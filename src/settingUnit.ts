import type { Measure } from './standards';
import type { Unit } from './unit';

/** What a setting is counted in, as it stands beside its figure. */
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
