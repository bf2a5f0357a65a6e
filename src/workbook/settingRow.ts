import { NOT_SET, notSetPart } from '../notSet';
import { settingUnit } from '../settingUnit';
import {
  cellName,
  defaultStandards,
  isNotSet,
  limits,
  SETTINGS,
  type Setting,
  type SettingKey,
  type Standards,
} from '../standards';
import type { Unit } from '../unit';
import { quote } from '../formulaText';
import { lettersOf } from './address';
import { settingFormat } from './format';
import type { Cell, Validation } from './sheet';

export const SETTING_HEADINGS = ['Setting', 'Value', 'In use', 'Unit', 'Limits', 'Name in formulas', 'Note'] as const;
const LETTERS = lettersOf(SETTING_HEADINGS);
/** Where a setting is typed, and where formulas read it. */
export const [TYPED, USED] = [LETTERS.Value, LETTERS['In use']];

/** A setting as its row: what is set, what is used, unit, limits, name and note. */
export function settingRow(setting: Setting, standards: Standards, row: number): Cell[] {
  const { unit } = standards;
  const value = standards[setting.key as keyof Standards] as string | number;
  return [
    { value: setting.label, style: 'text' },
    {
      value: isNotSet(standards, setting.key as SettingKey) ? null : value,
      style: 'input',
      format: settingFormat(setting.measure, unit, value),
    },
    {
      value,
      formula: `IF(${TYPED}${row}="",${defaultText(setting, unit)},${TYPED}${row})`,
      style: 'figure',
      format: settingFormat(setting.measure, unit, value).replace('@', 'General'),
    },
    unitOf(setting, standards, row),
    { value: limitsText(setting, unit), style: 'text' },
    { value: cellName(setting.key), style: 'note' },
    { value: setting.note, style: 'note' },
  ];
}

/** A setting's unit; of one machine's setting also that nobody has set it. */
function unitOf(setting: Setting, standards: Standards, row: number): Cell {
  const unit = settingUnit(setting.measure, standards.unit);
  if (!setting.ofMachine) return { value: unit, style: 'text' };
  const open = `${unit}, not set yet`;
  return {
    value: isNotSet(standards, setting.key as SettingKey) ? open : unit,
    formula: `IF(${TYPED}${row}="",${quote(open)},${quote(unit)})`,
    style: 'text',
  };
}

/** The same sentence as `notSetSentence`, from the cells. */
export function notSetFormula(unit: Unit, rowOf: (setting: Setting) => number): string {
  const machine = (SETTINGS as readonly Setting[]).filter(({ ofMachine }) => ofMachine);
  const set = machine.map((setting) => `${TYPED}${rowOf(setting)}<>""`).join(',');
  const parts = machine.map((setting) => {
    const { before, after } = notSetPart(setting, unit);
    return `IF(${TYPED}${rowOf(setting)}="",${quote(`, ${before}`)}&${USED}${rowOf(setting)}&${quote(after)},"")`;
  });
  return `IF(AND(${set}),"",${quote(NOT_SET)}&MID(${parts.join('&')},3,1000)&".")`;
}

/** A setting's default as a formula writes it. */
function defaultText(setting: Setting, unit: Unit): string {
  const value = setting.key === 'unit' ? unit : defaultStandards(unit)[setting.key as SettingKey];
  return typeof value === 'number' ? String(value) : quote(value);
}

function limitsText(setting: Setting, unit: Unit): string {
  if (setting.measure === 'choice') return setting.choices.join(', ');
  if (setting.measure === 'text') return 'any text';
  const { min, max } = limits(setting, unit);
  const shown = (figure: number) =>
    setting.measure === 'percent' ? `${figure * 100}%` : String(Number(figure.toPrecision(4)));
  return `${shown(min)} to ${shown(max)}`;
}

export function validationOf(setting: Setting, unit: Unit, range: string): Validation | null {
  if (setting.measure === 'text') return null;
  const message = `${setting.label}: ${limitsText(setting, unit)}.`;
  if (setting.measure === 'choice') return { range, rule: { kind: 'list', choices: setting.choices }, message };
  const { min, max } = limits(setting, unit);
  return {
    range,
    rule: { kind: 'number', min, max, ...(setting.measure === 'count' ? { whole: true } : {}) },
    message,
  };
}
