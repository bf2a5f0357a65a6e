import { refuse, type Refusal } from './result';

/**
 * What a figure must be. Each check gives back null when the figure will do, else the refusal, so that checks chain:
 * `const refusal = positive('span', span) ?? positive('rise', rise);`
 */

/** No opening, molding or board is longer than this, in inches or millimeters; no speed, price or count is larger. */
const LONGEST = 1_000_000;
/** Below this a length is a rounding error, not a length. */
const SHORTEST = 1e-9;

/** A figure as a person would write it in a sentence: 12 digits at most, no thousands separators. */
export function figure(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toPrecision(12))) : String(value);
}

/** Longer text is cut where a sentence quotes it. */
const LONGEST_QUOTE = 60;

/** Text as a sentence quotes it back. */
export function quoted(text: string): string {
  const said = text.trim();
  if (said === '') return 'nothing';
  return `"${said.length > LONGEST_QUOTE ? `${said.slice(0, LONGEST_QUOTE)}…` : said}"`;
}

/** Any number, also below 0, that isn't absurdly large. */
export function finite(name: string, value: number, most = LONGEST): Refusal | null {
  if (!Number.isFinite(value)) return refuse(`${name} must be a number; got ${figure(value)}`);
  if (value > most) return refuse(`${name} must be no more than ${figure(most)}; got ${figure(value)}`);
  if (value < -most) return refuse(`${name} must be no less than ${figure(-most)}; got ${figure(value)}`);
  return null;
}

/** More than 0 and no more than `most`. */
export function positive(name: string, value: number, most = LONGEST): Refusal | null {
  if (Number.isFinite(value) && value < SHORTEST) {
    return refuse(`${name} must be ${value > 0 ? `at least ${SHORTEST}` : 'more than 0'}; got ${figure(value)}`);
  }
  return finite(name, value, most);
}

export function notNegative(name: string, value: number, most = LONGEST): Refusal | null {
  if (Number.isFinite(value) && value < 0) return refuse(`${name} must be 0 or more; got ${figure(value)}`);
  return finite(name, value, most);
}

export function wholeBetween(name: string, value: number, least: number, most: number): Refusal | null {
  if (Number.isInteger(value) && value >= least && value <= most) return null;
  if (!Number.isFinite(value)) return finite(name, value);
  return refuse(`${name} must be a whole number from ${figure(least)} to ${figure(most)}; got ${figure(value)}`);
}
