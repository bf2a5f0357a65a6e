/* eslint-disable @typescript-eslint/no-explicit-any -- arguments arrive as they are */
import { ENDS, HEAD_SHAPES, type Ends, type HeadShape } from '../src/head/head';
import { readEnds, readHead } from '../src/head/words';
import { oneOf, optionalWord, word } from './arguments';
import { give } from './error';

/** The shape of a head by any of its names. */
export function headShape(name: string, given: any): HeadShape {
  return give(readHead(word(name, given, oneOf(HEAD_SHAPES))));
}

/** How the arc stops; radial where it is left out. */
export function arcEnds(name: string, given: any): Ends {
  const text = optionalWord(name, given, oneOf(ENDS));
  return text === undefined ? 'radial' : give(readEnds(text));
}
