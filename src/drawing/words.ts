import { textWidth } from './dimension';

/** The first few of a list, and how many more there are. */
export function shortList(items: readonly string[], most: number): string {
  if (items.length <= most) return items.join(', ');
  return `${items.slice(0, most).join(', ')} and ${items.length - most} more`;
}

/**
 * Words in lines no wider than `width`, broken between words, or within a word that is too long by itself. At most `most`
 * lines: what is left out shows as three dots.
 */
export function wrap(words: string, width: number, height: number, most: number): string[] {
  const letters = Math.max(4, Math.floor(width / textWidth('a', height)));
  const lines: string[] = [];
  let current = '';
  for (const word of words
    .trim()
    .split(/\s+/)
    .flatMap((long) => pieces(long, letters))) {
    const longer = current === '' ? word : `${current} ${word}`;
    if ([...longer].length <= letters) current = longer;
    else {
      lines.push(current);
      current = word;
    }
  }
  lines.push(current);
  if (lines.length <= most) return lines;
  const last = [...(lines[most - 1] ?? '')].slice(0, letters - 3).join('');
  return [...lines.slice(0, most - 1), `${last}...`];
}

function pieces(word: string, letters: number): string[] {
  const all = [...word];
  return Array.from({ length: Math.max(1, Math.ceil(all.length / letters)) }, (_, piece) =>
    all.slice(piece * letters, (piece + 1) * letters).join(''),
  );
}
