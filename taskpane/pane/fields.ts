import { ENDS, HEAD_SHAPES } from '../../src/head/head';
import { FIELDS as FIELD_KEYS, FIELD_KINDS, type FieldKind } from '../../src/schedule/fieldKinds';
import type { Opening, OpeningField } from '../../src/schedule/opening';
import { isNotSet, type Setting, type SettingKey, type Standards } from '../../src/standards';
import { decimal, typedLength } from './format';

/** A field of an opening as the pane asks for it: by what name, and how it is typed or chosen. */
export interface Field extends FieldKind {
  readonly key: OpeningField;
  /** Where one of a few is chosen. */
  readonly choices?: readonly string[];
  /** The shop setting that stands in where the schedule gives nothing. */
  readonly standard?: (typeof OF_SHOP)[number];
}

const CHOICES: Partial<Record<FieldKind['kind'], readonly string[]>> = { head: HEAD_SHAPES, ends: ENDS };
const OF_SHOP = ['reveal', 'face', 'thickness', 'species', 'profile', 'ends'] as const;

export function fieldOf(key: OpeningField): Field {
  const { label, kind } = FIELD_KINDS[key];
  return { key, label, kind, choices: CHOICES[kind], standard: OF_SHOP.find((one) => one === key) };
}

/** In the order in which the pane asks for them. */
export const FIELDS: readonly Field[] = FIELD_KEYS.map(fieldOf);

/** What the field holds now, as it could be typed; '' where it holds nothing. */
export function fieldText(opening: Opening, key: OpeningField, standards: Standards, locale?: string): string {
  const value = opening[key];
  if (value === null) return '';
  if (fieldOf(key).kind === 'length' && typeof value === 'number') return typedLength(value, standards.unit, locale);
  return String(value);
}

/** The shop's own figure, shown where the field is empty. */
export function standardText(key: OpeningField, standards: Standards, locale?: string): string {
  const setting = fieldOf(key).standard;
  if (!setting) return '';
  const value = standards[setting];
  return `shop: ${typeof value === 'number' ? typedLength(value, standards.unit, locale) : value}`;
}

/** A setting as it could be typed: lengths as on a tape, shares in percent; '' where one of the machine's is not set. */
export function settingText(setting: Setting, standards: Standards, locale?: string): string {
  return isNotSet(standards, setting.key as SettingKey) ? '' : figureText(setting, standards, locale);
}

/** What an empty input of a setting says: the neutral figure that stands in for a machine's own. */
export function notSetHint(setting: Setting, standards: Standards, locale?: string): string | undefined {
  return setting.ofMachine ? `not set yet: using ${figureText(setting, standards, locale)}` : undefined;
}

function figureText(setting: Setting, standards: Standards, locale?: string): string {
  const value = standards[setting.key as SettingKey];
  if (typeof value === 'string') return value;
  if (setting.measure === 'length') return typedLength(value, standards.unit, locale);
  return decimal(setting.measure === 'percent' ? value * 100 : value, 6, locale);
}
