import { PHRASE_GAP } from './lines';
import { turnedBox, type Box } from './marks';
import type { PageText } from './pageText';
import { phrasesOf, wordLines, wordsOf, type Phrase } from './words';

/** A text that stands at a quarter turn to the table: where it lies, seen as the table stands. */
export interface TurnedText {
  readonly phrase: Phrase;
  readonly box: Box;
  /** Quarter turns between the two, so that texts turned alike are read together. */
  readonly turn: number;
}

/** What a page says in the other directions, seen from the one of `turn`. */
export function turnedTexts(text: (turn: number) => PageText, turn: number): TurnedText[] {
  return [1, 2, 3].flatMap((quarters) => {
    const { letters, page } = text((turn + quarters) % 4);
    // A rule that such a text crosses, as one too long for its cell does, parts none of its words.
    return wordLines(wordsOf(letters, [])).flatMap((line) =>
      phrasesOf(line, PHRASE_GAP, () => false).map((phrase): TurnedText => {
        const { left, right, y, size } = phrase;
        const box = { left, right, top: y - 0.75 * size, bottom: y + 0.2 * size };
        return { phrase, box: turnedBox(page, (4 - quarters) % 4, box), turn: quarters };
      }),
    );
  });
}

export function middleOf({ left, right, top, bottom }: Box): { readonly x: number; readonly y: number } {
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
}

/** Those whose middle lies in a box, as text. */
export function turnedWithin(texts: readonly TurnedText[], { left, right, top, bottom }: Box): string[] {
  return texts.flatMap(({ phrase, box }) => {
    const { x, y } = middleOf(box);
    return x > left && x < right && y > top && y < bottom ? [phrase.text] : [];
  });
}
