import { textWidth } from './dimension';

/** The first few of a list, and how many more there are. */
export function shortList(items: readonly string[], most: number): string {
  if (items.length <= most) return items.join(', ');
  return `${items.slice(0, most).join(', ')} and ${items.length - most} more`;
}

/** Breaks lines between words to fit a width; a word too long for it stays whole. */
export function wrap(lines: readonly string[], width: number, height: number): string[] {
  return lines.flatMap((whole) => {
    const done: string[] = [];
    let current = '';
    for (const word of whole.split(/\s+/)) {
      const longer = current === '' ? word : `${current} ${word}`;
      if (current !== '' && textWidth(longer, height) > width) {
        done.push(current);
        current = word;
      } else current = longer;
    }
    return [...done, current];
  });
}
