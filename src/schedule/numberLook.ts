import { readUnit } from './columnUnit';
import type { CellValue } from './opening';

/** What a number's format makes of it: a date or a time, a figure with a unit (` mm`), or null: the number as it is. */
export type NumberLook = 'date' | { readonly unit: string } | null;

/** The look that a number format code gives. */
export function lookOf(code: string): NumberLook {
  if (isDateFormat(code)) return 'date';
  const unit = unitOfFormat(code);
  return unit === null ? null : { unit };
}

/**
 * A number as whoever reads its cell sees it: `450` under the format `0" mm"` is the text `450 mm`, and a day number under a date
 * format is a date, as a fraction may have been taken for one. Days count from 1900, or from 1904.
 */
export function shownAs(value: number, look: NumberLook, from1904 = false): CellValue {
  if (look === null) return value;
  return look === 'date' ? dateOfSerial(value, from1904) : `${value} ${look.unit}`;
}

/** A format code is a date's when letters of date parts stand in it outside quotes, colors and escapes. */
function isDateFormat(code: string): boolean {
  const bare = code
    .replace(/"[^"]*"|\\.|_.|\*./g, '')
    .replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, '')
    .replace(/general/gi, '')
    .split(';')[0];
  return /[ymdhs]/i.test(bare ?? '') && !/[#0?]\s*\/|^[^ymdhs]*[#?]/i.test(bare ?? '');
}

/** The unit that a format writes behind its digits, in quotation marks or behind backslashes. */
function unitOfFormat(code: string): string | null {
  const plain = code.replace(/\[[^\]]*\]|_.|\*./g, '');
  const behind = /^(?:general|[#0-9?.,/ ]+)((?:"[^"]*"|\\.|['\s])+)(?:;|$)/i.exec(plain)?.[1] ?? '';
  const text = behind.replace(/"([^"]*)"|\\(.)/g, '$1$2').trim();
  return readUnit(text) === null ? null : text;
}

/** Serial day numbers count from 1900 (with its 29 February that never was) or from 1904. */
function dateOfSerial(serial: number, from1904: boolean): Date {
  const days = from1904 ? serial + 1462 : serial < 60 ? serial + 1 : serial;
  return new Date(Math.round((days - 25_569) * 86_400_000));
}
