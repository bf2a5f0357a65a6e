import type { Letter } from './marks';

/** Fewer different letters say nothing about a font: digits are all as wide in most. */
const FEWEST_LETTERS = 5;
/** Letters as wide as one another differ by no more than this part. */
const SAME_WIDTH = 0.02;

interface FontWidths {
  least: number;
  most: number;
  readonly letters: Set<string>;
}

/** How wide a blank is in fonts whose letters are all as wide, as of a typewriter. Other fonts' blanks are narrow. */
export class BlankWidths {
  private readonly fonts = new Map<unknown, FontWidths>();
  private readonly fontOf = new Map<Letter, FontWidths>();

  note(letter: Letter, font: unknown): void {
    let widths = this.fonts.get(font);
    if (widths === undefined) this.fonts.set(font, (widths = { least: Infinity, most: 0, letters: new Set() }));
    this.fontOf.set(letter, widths);
    if (!/^[A-Za-z]$/.test(letter.text)) return;
    widths.letters.add(letter.text);
    widths.least = Math.min(widths.least, letter.width / letter.size);
    widths.most = Math.max(widths.most, letter.width / letter.size);
  }

  /** The letters with their `blank`. */
  applied(letters: readonly Letter[]): Letter[] {
    return letters.map((letter) => {
      const widths = this.fontOf.get(letter);
      const isEven =
        widths && widths.letters.size >= FEWEST_LETTERS && widths.most - widths.least <= SAME_WIDTH * widths.most;
      return isEven ? { ...letter, blank: widths.most } : letter;
    });
  }
}
