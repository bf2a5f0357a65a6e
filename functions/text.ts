/* eslint-disable @typescript-eslint/no-explicit-any -- a length is a number or text, and the metadata knows no unions */
import { checkLength } from '../src/check/length';
import { feetInches } from '../src/feetInches';
import { length, optionalLength, optionalLengthNotZero, optionalNumberNotZero } from './arguments';
import { give } from './error';
import { arcEnds, headShape } from './headArguments';

/**
 * Inches from dimension text.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#inches
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
 * @helpurl https://archwright.example/docs/functions.html#feetinches
 * @param inches The length, inches; may be negative.
 * @param denominator Finest fraction of an inch, a whole number from 1 to 128. Left out: 16.
 * @returns Text such as 3'-6 1/2".
 * @throws A denominator that isn't whole.
 * @remarks Rounded to the nearest 1/denominator, the fraction reduced; a full inch or foot is carried.
 * @example =ARCH.FEETINCHES(42.5) → "3'-6 1/2"""
 * @example =ARCH.FEETINCHES(35.99) → "3'-0"""
 */
export function FEETINCHES(inches: any, denominator?: any): string {
  return give(feetInches(length('inches', inches), optionalNumberNotZero('denominator', denominator)));
}

/**
 * Checks a quoted length of curved casing, and names the mistake where it matches one.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#lengthcheck
 * @param quoted The length quoted for one head, inches, more than 0.
 * @param head "segmental", "half round", "quarter round", "round", "elliptical", "three-centered", "pointed" or "straight"; usual abbreviations are understood.
 * @param span Distance between the opening's spring points, inches, more than 0.
 * @param rise Height of the opening's crown above the spring line, inches. May be blank for half round, quarter round, round and straight heads.
 * @param face Width of the casing, inches, more than 0.
 * @param reveal From the opening's edge to the casing's inside edge, inches. Left out: 0.
 * @param ends How the arc stops: "radial", "level" or "legs"; see HEADLENGTH. Left out: "radial".
 * @param tolerance How far the quote may be off and still agree, inches, 0 or more. Left out: 1/8.
 * @returns "agrees", the mistake whose figure the quote matches (several, with "or", where they can't be told apart), or "unexplained" with how much it is short or long.
 * @throws Sizes that make no head; a negative tolerance.
 * @remarks The right figure is the outside (long-point) length, HEADLENGTH at reveal + face. Known mistakes are among others: measured along the inside edge; chord, not arc; reveal left out; half circle of this span; feet read as inches.
 * @example =ARCH.LENGTHCHECK(43.36, "segmental", 36, 6, 3.5, 0.1875) → "agrees"
 * @example =ARCH.LENGTHCHECK(38.85, "segmental", 36, 6, 3.5, 0.1875) → "measured along the inside edge"
 */
export function LENGTHCHECK(
  quoted: any,
  head: any,
  span: any,
  rise: any,
  face: any,
  reveal?: any,
  ends?: any,
  tolerance?: any,
): string {
  return give(
    checkLength({
      quoted: length('quoted', quoted),
      head: headShape('head', head),
      span: length('span', span),
      rise: optionalLengthNotZero('rise', rise) ?? null,
      face: length('face', face),
      reveal: optionalLength('reveal', reveal),
      ends: arcEnds('ends', ends),
      tolerance: optionalLength('tolerance', tolerance),
    }),
  ).text;
}
