import { median } from '../median';
import { phrasesOf, type Phrase, type Word } from './words';

/** What parts the texts of two columns, in ems. */
export const PHRASE_GAP = 0.42;

/** One line of an open table. */
export interface Line {
  readonly y: number;
  readonly size: number;
  readonly phrases: readonly Phrase[];
}

export function lineOf(words: readonly Word[]): Line {
  return {
    y: median(words.map(({ y }) => y)),
    size: median(words.map(({ size }) => size)),
    phrases: phrasesOf(words, PHRASE_GAP, () => false),
  };
}
