import { ok, refuse, type Result } from '../result';
import { cellText, typedBeforeDate } from './cell';
import { quote } from './figure';
import type { CellValue } from './opening';

/** Longer text is no count. */
const LONGEST_TEXT = 60;
const MOST = 100_000;
/** A comma parts thousands or nothing: "1,5" is not fifteen. */
const COUNT =
  /^[([]?\s*([-+]?(?:\d{1,3}(?:,\d{3})+|\d*)(?:\.\d+)?)\s*[)\]]?\s*(?:ea\.?|each|pcs?\.?|pieces?|units?|req'?d|required|off|x|no\.?)?$/i;

/** A count of openings: a whole number of 1 or more, alone or with a word such as "2 ea". */
export function readQuantity(cell: CellValue, name = 'Quantity'): Result<number> {
  const text = cellText(cell).slice(0, LONGEST_TEXT + 1);
  const unread = refuse(`${name} can't be read: the cell says ${quote(text)}; a whole number is needed.`);
  if (typedBeforeDate(cell) !== null || typeof cell === 'boolean' || text.startsWith('=') || text.startsWith('#'))
    return unread;
  const digits = COUNT.exec(text)?.[1]?.replaceAll(',', '') ?? '';
  const value = typeof cell === 'number' ? cell : digits === '' ? NaN : Number(digits);
  if (!Number.isFinite(value)) return unread;
  if (!Number.isInteger(value) || value < 1)
    return refuse(`${name} must be a whole number of 1 or more; the cell says ${quote(text)}.`);
  if (value > MOST) return refuse(`${name} of ${value} can't be right; please check it.`);
  return ok(value);
}
