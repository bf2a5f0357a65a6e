import { ok, refuse, type Result } from '../result';
import { cellText } from '../schedule/cell';
import { quote } from '../schedule/figure';
import { straightMarks } from '../schedule/straightMarks';
import type { CellValue } from '../schedule/opening';

/** A price or amount that means nothing is charged for this line by itself. */
const FREE = /^(?:incl(?:uded|\.)?|n\/?c|no charge|free|in above)$/i;
const MONEY =
  /^(?:us ?)?\$?\s*(-?)\s*\$?\s*((?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d+)?)\s*(?:usd|dollars)?\s*(?:\/?\s*(?:ea|each|pc|pcs|piece|lot|lf|ft|foot)\.?)?\s*(-|cr)?$/i;

/** The largest amount that is taken for money: a hundred million dollars. */
const MOST = 1e8;

/**
 * Dollars from a cell that is not blank: `1,234.50`, `$85`, `(120.00)`, `120.00-`, `14.50/lf`; "included" and "no charge" are 0.
 * Anything else is refused with the text quoted back.
 */
export function readMoney(cell: CellValue): Result<number> {
  const text = straightMarks(cellText(cell));
  const refusal = refuse(`${quote(text)} is not an amount of money; figures such as 1,234.50 or $85 are understood.`);
  if (typeof cell === 'number') return Number.isFinite(cell) && Math.abs(cell) <= MOST ? ok(cell) : refusal;
  if (typeof cell !== 'string') return refusal;
  if (FREE.test(text)) return ok(0);
  const bracketed = /^\(\s*(.+?)\s*\)$/.exec(text);
  const match = MONEY.exec(bracketed?.[1] ?? text);
  const digits = (match?.[2] ?? '').replaceAll(',', '');
  if (!match || digits === '') return refusal;
  const amount = Number(digits);
  if (!(amount <= MOST)) return refusal;
  const below = bracketed !== null || match[1] === '-' || match[3] !== undefined;
  return ok(below && amount !== 0 ? -amount : amount);
}

/** Dollars as a letter has them: 1234.5 → `$1,234.50`, -85 → `-$85.00`. */
export function dollars(amount: number): string {
  const cents = Math.round(Math.abs(amount) * 100);
  const whole = String(Math.floor(cents / 100)).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${amount < 0 && cents > 0 ? '-' : ''}$${whole}.${String(cents % 100).padStart(2, '0')}`;
}

/** Half a cent, which rounding to cents may move an amount by. */
export const HALF_CENT = 0.005;
/** The same with what arithmetic itself rounds. */
export const HALF_CENT_NEARLY = 0.0050001;

/** Rounding a unit price to cents moves the extension by up to half a cent for each piece. */
export function extensionTolerance(quantity: number): number {
  return HALF_CENT * Math.max(1, quantity) + HALF_CENT_NEARLY;
}
