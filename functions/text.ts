/* eslint-disable @typescript-eslint/no-explicit-any -- a length is a number or text, and the metadata knows no unions */
import { feetInches } from '../src/feetInches';
import { length, optionalNumberNotZero } from './arguments';
import { give } from './error';

/**
 * Inches from dimension text.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.md#inches
 * @param text Such as 36 1/2, 36-1/2, 3'-6 1/2", 3ft 6in, 914 mm, 0.914 m; a number stands for itself.
 * @returns Inches.
 * @throws Whatever cannot be read without doubt; the text is quoted back.
 * @remarks 1 inch is 25.4 mm by definition. A hyphen joins: 80-1/2 is 80.5. A door call-out such as 3068 is not a length.
 * @example =ARCH.INCHES("3'-6 1/2""") → 42.5
 * @example =ARCH.INCHES("914,4 mm") → 36
 */
export function INCHES(text: any): number {
  return length('text', text);
}

/**
 * Inches as text in feet, inches and a fraction.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.md#feetinches
 * @param inches The length, inches; may be negative.
 * @param denominator Finest fraction of an inch, a whole number. Left out: 16.
 * @returns Text such as 3'-6 1/2".
 * @throws A denominator that isn't whole.
 * @remarks Rounded to the nearest 1/denominator, the fraction reduced; a full inch or foot is carried.
 * @example =ARCH.FEETINCHES(42.5) → "3'-6 1/2"""
 * @example =ARCH.FEETINCHES(35.99) → "3'-0"""
 */
export function FEETINCHES(inches: any, denominator?: any): string {
  return give(feetInches(length('inches', inches), optionalNumberNotZero('denominator', denominator)));
}
