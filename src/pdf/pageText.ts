import { withFractions } from './fractions';
import { upright, type Letter, type PageMarks, type Rule } from './marks';
import { merged } from './rules';
import { once, wordsOf, type Word } from './words';

/** A page turned so that text of one direction stands upright: its letters and words, and the rules between them. */
export interface PageText {
  readonly page: PageMarks;
  readonly rules: readonly Rule[];
  /** Each once, fractions as one letter. */
  readonly letters: readonly Letter[];
  readonly words: readonly Word[];
}

/** What the page says in each direction, worked out once. */
export function pageText(marks: PageMarks): (turn: number) => PageText {
  const known = new Map<number, PageText>();
  return (turn) => {
    const before = known.get(turn);
    if (before) return before;
    const page = upright(marks, turn);
    const rules = merged(page.rules);
    const letters = withFractions(once(page.letters), rules);
    known.set(turn, { page, rules, letters, words: wordsOf(letters, rules) });
    return known.get(turn)!;
  };
}
