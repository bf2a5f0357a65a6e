import { matchHeading, type MeaningKey } from './meanings';

/** The unit a column is kept in; `ft-in` is feet and inches written together. */
export type ColumnUnit = 'in' | 'ft' | 'ft-in' | 'mm' | 'cm' | 'm';

export interface HeadingMeaning {
  readonly key: MeaningKey;
  readonly rank: number;
  readonly unit: ColumnUnit | null;
}

const UNIT_WORDS: Readonly<Record<string, ColumnUnit>> = {
  in: 'in',
  ins: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  "''": 'in',
  ft: 'ft',
  feet: 'ft',
  foot: 'ft',
  "'": 'ft',
  mm: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  millimetres: 'mm',
  cm: 'cm',
  centimeters: 'cm',
  centimetres: 'cm',
  m: 'm',
  meters: 'm',
  metres: 'm',
};
/** "(in feet and inches)" and a little more; longer text is no unit. */
const LONGEST_UNIT = 32;
const FEET_AND_INCHES = /^(?:ft|feet|foot|')\s*(?:-|–|\/|&|\+|and|,)?\s*(?:in|ins|inch|inches|"|'')$/;

/** Typographic marks and dashes as the plain ones. */
export function straightMarks(text: string): string {
  if (!/[^ -_a-~]/.test(text)) return text;
  return text
    .replace(/[\u2018\u2019\u2032\u00b4`]/g, "'")
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u00a0\u2000-\u200b\u202f\u3000\ufeff]/g, ' ');
}

/** A unit when the text is nothing but a unit: `in`, `(mm)`, `ft-in`, `[in.]`. */
export function readUnit(text: string): ColumnUnit | null {
  if (text.length > LONGEST_UNIT) return null;
  const bare = straightMarks(text)
    .toLowerCase()
    .replace(/^[\s([{]*(?:in (?=feet|inches|mm|milli|cm|meters))?/, '')
    .replace(/[\s)\]}]*$/, '')
    .replace(/\./g, '')
    .trim();
  if (bare === '') return null;
  if (FEET_AND_INCHES.test(bare)) return 'ft-in';
  return Object.hasOwn(UNIT_WORDS, bare) ? (UNIT_WORDS[bare] ?? null) : null;
}

/** Lower case, one space between words, `#` as "no", no other punctuation: `R.O. Width` becomes `ro width`. */
export function normalHeading(text: string): string {
  return straightMarks(text)
    .toLowerCase()
    .replace(/#/g, ' no ')
    .replace(/\b([a-z])\.(?=[a-z]\b)/g, '$1')
    .replace(/\br\s*[./]\s*o\b|\br o\b/g, 'ro')
    .replace(/'s\b|'d\b/g, (ending) => ending.slice(1))
    .replace(/[^a-z0-9]+/g, ' ')
    .trim()
    .replace(/ +/g, ' ');
}

/** A heading without its unit, and the unit: `Width (in)`, `Rise, mm`, `Face in.`, `Height ft-in`. */
export function splitUnit(heading: string): { readonly name: string; readonly unit: ColumnUnit | null } {
  const text = straightMarks(heading).replace(/\s+/g, ' ').trim();
  const bracketed = /^(.*?)[([{]([^()[\]{}]*)[)\]}](.*)$/.exec(text);
  if (bracketed) {
    const unit = readUnit(bracketed[2] ?? '');
    if (unit !== null) return { name: `${bracketed[1]} ${bracketed[3]}`.trim(), unit };
  }
  const both = /^(.+?)[\s,;:]+((?:ft|feet)\s*(?:[-/&+]|and)?\s*(?:in|inches)\.?)$/i.exec(text);
  if (both) return { name: both[1] ?? '', unit: 'ft-in' };
  const parted = /^(.+?)\s*[,;:\-/]\s*([^,;:]+)$/.exec(text);
  if (parted && (parted[1] ?? '').trim() !== '') {
    const unit = readUnit(parted[2] ?? '');
    if (unit !== null) return { name: parted[1] ?? '', unit };
  }
  // Without a mark before it only a word that cannot be anything else is a unit: not "m", not a lone quote.
  const trailing = /^(.+?)\s+(in\.?|inch(?:es)?|mm|cm|ft\.?|feet)$/i.exec(text);
  if (trailing) {
    const unit = readUnit(trailing[2] ?? '');
    if (unit !== null) return { name: trailing[1] ?? '', unit };
  }
  return { name: text, unit: null };
}

/** What a heading means, or null where it is not one that is known. */
export function readHeading(heading: string): HeadingMeaning | null {
  const { name, unit } = splitUnit(heading);
  // A bracket that only points elsewhere says nothing about the column; "(glass)" does.
  const plain = name.replace(/[([{]\s*(?:see|per|typ|verify|vif|v\.i\.f|note|all)\b[^()[\]{}]*[)\]}]/gi, ' ');
  const found = matchHeading(normalHeading(plain));
  return found === null ? null : { ...found, unit };
}
