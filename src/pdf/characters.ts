/** A letter whose font doesn't say which character it is. */
export const UNKNOWN = '\uFFFD';

/** Characters that stand for several letters, or for the same letter in another form. Fraction characters stay as they are. */
const SAME_AS: Readonly<Record<string, string>> = {
  '\uFB00': 'ff',
  '\uFB01': 'fi',
  '\uFB02': 'fl',
  '\uFB03': 'ffi',
  '\uFB04': 'ffl',
  '\uFB05': 'st',
  '\uFB06': 'st',
  '\u00AD': '-',
  '\u2010': '-',
  '\u2011': '-',
  '\u2044': '/',
  '\u2215': '/',
  '\u2212': '-',
};

/** What a letter says: nothing for blanks, a character to be asked about where its font keeps it secret. */
export function readable(unicode: string): string {
  let text = '';
  for (const character of unicode) {
    const code = character.codePointAt(0)!;
    if (/\s/.test(character) || code === 0x200b || code === 0xfeff) continue;
    if (code < 0x20 || (code >= 0x7f && code < 0xa0) || (code >= 0xe000 && code <= 0xf8ff) || code >= 0xf0000)
      text += UNKNOWN;
    else text += SAME_AS[character] ?? character;
  }
  return text;
}

const RAISED: Readonly<Record<string, string>> = {
  '0': '⁰', '1': '¹', '2': '²', '3': '³', '4': '⁴', '5': '⁵', '6': '⁶', '7': '⁷', '8': '⁸', '9': '⁹',
}; // prettier-ignore

/** A small raised figure, so that it is never taken for a figure of the number before it. */
export function raised(text: string): string {
  return [...text].map((character) => RAISED[character] ?? character).join('');
}
