import { ENDS, HEAD_SHAPES } from '../../src/head/head';
import type { Opening, OpeningField } from '../../src/schedule/opening';
import type { Setting, SettingKey, Standards } from '../../src/standards';
import { decimal, typedLength } from './format';

/** The fields of an opening as the pane asks for them: by what name, and how they are typed or chosen. */
export interface Field {
  readonly key: OpeningField;
  readonly label: string;
  readonly kind: 'text' | 'count' | 'length' | 'choice';
  readonly choices?: readonly string[];
  /** The shop setting that stands in where the schedule gives nothing. */
  readonly standard?: 'reveal' | 'face' | 'thickness' | 'species' | 'profile' | 'ends';
}

export const FIELDS: readonly Field[] = [
  { key: 'mark', label: 'Mark', kind: 'text' },
  { key: 'quantity', label: 'Quantity', kind: 'count' },
  { key: 'head', label: 'Head', kind: 'choice', choices: HEAD_SHAPES },
  { key: 'span', label: 'Span', kind: 'length' },
  { key: 'rise', label: 'Rise', kind: 'length' },
  { key: 'leg', label: 'Leg', kind: 'length' },
  { key: 'reveal', label: 'Reveal', kind: 'length', standard: 'reveal' },
  { key: 'face', label: 'Casing width', kind: 'length', standard: 'face' },
  { key: 'thickness', label: 'Casing thickness', kind: 'length', standard: 'thickness' },
  { key: 'species', label: 'Species', kind: 'text', standard: 'species' },
  { key: 'profile', label: 'Profile', kind: 'text', standard: 'profile' },
  { key: 'ends', label: 'Ends', kind: 'choice', choices: ENDS, standard: 'ends' },
];

export function fieldOf(key: OpeningField): Field {
  return FIELDS.find((field) => field.key === key) ?? { key, label: key, kind: 'text' };
}

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

/** A setting as it could be typed: lengths as on a tape, shares in percent. */
export function settingText(setting: Setting, standards: Standards, locale?: string): string {
  const value = standards[setting.key as SettingKey];
  if (typeof value === 'string') return value;
  if (setting.measure === 'length') return typedLength(value, standards.unit, locale);
  return decimal(setting.measure === 'percent' ? value * 100 : value, 6, locale);
}
