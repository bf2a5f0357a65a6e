import type { CellValue } from './opening';
import { straightMarks } from './straightMarks';

/** A cell as text, trimmed: what is quoted back and kept as the source. A date is written as 2026-01-02. */
export function cellText(value: CellValue | undefined): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'string') return value.trim();
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return Number.isNaN(value.getTime()) ? 'a date that does not exist' : value.toISOString().slice(0, 10);
}

/** True for cells that say nothing: blank, a dash, "n/a", "none". */
export function isBlank(value: CellValue | undefined): boolean {
  if (isEmpty(value)) return true;
  return typeof value === 'string' && value.length < 12 && SAYS_NOTHING.test(value);
}

const SAYS_NOTHING = /^\s*(?:-+|–|—|\.|n\/?a|n\.a\.|none|nil)\s*$/i;

/** True for cells with nothing in them at all. */
export function isEmpty(value: CellValue | undefined): boolean {
  return value === null || value === undefined || value === '' || (typeof value === 'string' && !/\S/.test(value));
}

export function isRowEmpty(row: readonly CellValue[] | undefined): boolean {
  return row === undefined || row.every(isEmpty);
}

/** A row's cells that hold anything, as one text. */
export function rowText(row: readonly CellValue[] | undefined): string {
  return (row ?? [])
    .map(cellText)
    .filter((cell) => cell !== '')
    .join(' | ');
}

/** True for a cell that repeats the one above: a lone inch mark, "ditto", "do.". */
export function isDitto(value: CellValue | undefined): boolean {
  // The longest of them is "same as above".
  return (
    typeof value === 'string' &&
    value.length < 20 &&
    /^(?:"|''|,,|〃|-"-|ditto|do\.?|same(?: as above)?)$/i.test(straightMarks(value.trim()))
  );
}

/**
 * What was probably typed where a spreadsheet program stored a date: 1/2 becomes 2 January, 1/32 becomes January 1932.
 * Null where the cell is not a date.
 */
export function typedBeforeDate(value: CellValue | undefined): string | null {
  if (value instanceof Date) {
    if (Number.isNaN(value.getTime())) return '';
    const month = value.getUTCMonth() + 1;
    const day = value.getUTCDate();
    const year = value.getUTCFullYear();
    // Month and year alone ("1/32") are stored as the first of the month.
    return day === 1 && year >= 1930 && year <= 1999 ? `${month}/${year - 1900}` : `${month}/${day}`;
  }
  if (typeof value !== 'string' || !/^\s*(?:\d+[-\/ ]|[a-z]{3})/i.test(value)) return null;
  const text = value.trim();
  const dayFirst = DAY_FIRST.exec(text);
  if (dayFirst) return `${monthNumber(dayFirst[2])}/${Number(dayFirst[1])}`;
  const monthFirst = MONTH_FIRST.exec(text);
  if (monthFirst) return `${monthNumber(monthFirst[1])}/${Number(monthFirst[2])}`;
  const figures = DATE.exec(text) ?? ISO_DATE.exec(text);
  return figures === null ? null : `${Number(figures[1])}/${Number(figures[2])}`;
}

const MONTH = '(jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec)[a-z]*\\.?';
const DAY_FIRST = new RegExp(`^(\\d{1,2})[- ]${MONTH}(?:[- ,]+\\d{2,4})?$`, 'i');
const MONTH_FIRST = new RegExp(`^${MONTH}[- ](\\d{1,2})(?:,? *\\d{4})?$`, 'i');
const DATE = /^(\d{1,2})\/(\d{1,2})\/(?:\d{4}|\d{2})$/;
const ISO_DATE = /^(?:\d{4})-(\d{2})-(\d{2})(?:[T ].*)?$/;
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

function monthNumber(name: string | undefined): number {
  return MONTHS.indexOf((name ?? '').slice(0, 3).toLowerCase()) + 1;
}
