import { ENDS, HEAD_SHAPES } from '../../src/head/head';
import type { Opening, OpeningField } from '../../src/schedule/opening';
import type { Setting, SettingKey, Standards } from '../../src/standards';
import { decimal, typedLength } from './format';

/** A field of an opening as the pane asks for it: by what name, and how it is typed or chosen. */
export interface Field {
  readonly key: OpeningField;
  readonly label: string;
  readonly kind: 'text' | 'count' | 'length' | 'money' | 'choice';
  readonly choices?: readonly string[];
  /** The shop setting that stands in where the schedule gives nothing. */
  readonly standard?: 'reveal' | 'face' | 'thickness' | 'species' | 'profile' | 'ends';
}

const BY_KEY: Readonly<Record<OpeningField, Omit<Field, 'key'>>> = {
  mark: { label: 'Mark', kind: 'text' },
  quantity: { label: 'Quantity', kind: 'count' },
  head: { label: 'Head', kind: 'choice', choices: HEAD_SHAPES },
  span: { label: 'Span', kind: 'length' },
  rise: { label: 'Rise', kind: 'length' },
  leg: { label: 'Leg', kind: 'length' },
  reveal: { label: 'Reveal', kind: 'length', standard: 'reveal' },
  face: { label: 'Casing width', kind: 'length', standard: 'face' },
  thickness: { label: 'Casing thickness', kind: 'length', standard: 'thickness' },
  species: { label: 'Species', kind: 'text', standard: 'species' },
  profile: { label: 'Profile', kind: 'text', standard: 'profile' },
  ends: { label: 'Ends', kind: 'choice', choices: ENDS, standard: 'ends' },
  otherLeg: { label: 'Other leg', kind: 'length' },
  haunch: { label: 'Haunch', kind: 'length' },
  arcs: { label: 'Arcs', kind: 'count' },
  segmentsWanted: { label: 'Segments wanted', kind: 'count' },
  sides: { label: 'Sides cased', kind: 'count' },
  priceAgreed: { label: 'Price agreed', kind: 'money' },
  place: { label: 'Place', kind: 'text' },
  remarks: { label: 'Remarks', kind: 'text' },
};

export function fieldOf(key: OpeningField): Field {
  return { key, ...BY_KEY[key] };
}

/** In the order in which the pane asks for them. */
export const FIELDS: readonly Field[] = (Object.keys(BY_KEY) as OpeningField[]).map(fieldOf);

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
