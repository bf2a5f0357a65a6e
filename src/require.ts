import { refuse, type Refusal } from './result';

/**
 * What a figure must be. Each check gives back null when the figure will do, else the refusal, so that checks chain:
 * `const refusal = positive('span', span) ?? positive('rise', rise);`
 */

/** A figure as a person would write it in a sentence: 12 digits at most, no thousands separators. */
export function figure(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toPrecision(12))) : String(value);
}

export function finite(name: string, value: number): Refusal | null {
  return Number.isFinite(value) ? null : refuse(`${name} must be a number; got ${figure(value)}`);
}

export function positive(name: string, value: number): Refusal | null {
  if (value > 0 && Number.isFinite(value)) return null;
  return finite(name, value) ?? refuse(`${name} must be more than 0; got ${figure(value)}`);
}

export function notNegative(name: string, value: number): Refusal | null {
  if (value >= 0 && Number.isFinite(value)) return null;
  return finite(name, value) ?? refuse(`${name} must be 0 or more; got ${figure(value)}`);
}

/** More than 0 and no more than `most`. */
export function positiveUpTo(name: string, value: number, most: number): Refusal | null {
  return (
    positive(name, value) ??
    (value <= most ? null : refuse(`${name} must be no more than ${figure(most)}; got ${figure(value)}`))
  );
}

export function wholeBetween(name: string, value: number, least: number, most: number): Refusal | null {
  if (Number.isInteger(value) && value >= least && value <= most) return null;
  return (
    finite(name, value) ??
    refuse(`${name} must be a whole number from ${figure(least)} to ${figure(most)}; got ${figure(value)}`)
  );
}
