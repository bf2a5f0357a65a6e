import { readUnit, type ColumnUnit } from './columnUnit';
import { matchHeading, type MeaningKey } from './meanings';
import { straightMarks } from './straightMarks';

export interface HeadingMeaning {
  readonly key: MeaningKey;
  readonly rank: number;
  readonly unit: ColumnUnit | null;
}

/** Lower case, one space between words, `#` as "no", no other punctuation: `R.O. Width` becomes `ro width`. */
export function normalHeading(text: string): string {
  return straightMarks(text)
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
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
  const trailing = /^(.+?)\s+(?:in\s+)?(in|inch(?:es)?|mm|cm|ft|feet)\.?$/i.exec(text);
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

/** "No.", which may count, number the lines or mark the openings. */
export function isNumberHeading(heading: string): boolean {
  return /^(?:no|number|nr|num)$/.test(normalHeading(heading));
}
