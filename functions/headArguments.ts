/* eslint-disable @typescript-eslint/no-explicit-any -- arguments arrive as they are */
import { ENDS, HEAD_SHAPES, type Ends, type Head, type HeadShape } from '../src/head/head';
import { makeHead } from '../src/head/makeHead';
import { readEnds, readHead, readHeadWords } from '../src/head/words';
import { length, oneOf, optionalLengthNotZero, optionalWord, word } from './arguments';
import { give } from './error';

/** The shape of a head by any of its names. */
export function headShape(name: string, given: any): HeadShape {
  return give(readHead(word(name, given, oneOf(HEAD_SHAPES))));
}

/** How the arc stops; radial where it is left out. */
export function arcEnds(name: string, given: any): Ends {
  return givenEnds(name, given) ?? 'radial';
}

function givenEnds(name: string, given: any): Ends | undefined {
  const text = optionalWord(name, given, oneOf(ENDS));
  return text === undefined ? undefined : give(readEnds(text));
}

/** A head from its arguments, and its ends where they are given: in their own argument, or in its name ("eyebrow on legs"). */
export function headOf(
  head: any,
  span: any,
  rise: any,
  ends?: any,
  haunch?: any,
): { readonly curve: Head; readonly ends: Ends | undefined } {
  const words = give(readHeadWords(word('head', head, oneOf(HEAD_SHAPES))));
  const given = length('span', span);
  const high = optionalLengthNotZero('rise', rise) ?? words.riseOf?.(given) ?? null;
  const wide = words.spanOf && high !== null ? give(words.spanOf(given, high)) : given;
  const curve = give(makeHead(words.shape, wide, high, optionalLengthNotZero('haunch', haunch) ?? null));
  return { curve, ends: givenEnds('ends', ends) ?? words.ends ?? undefined };
}
