/** Text in lines of at most `wide` characters, broken between words; a longer word stands by itself. */
export function inLines(text: string, wide: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= wide) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/**
 * After which rows of a sheet a new page begins, where each block of rows is to stay on one page: as many blocks as fit in
 * `high` rows share a page. `first` rows stand before the blocks; a block of more rows than a page holds takes its own.
 */
export function pageBreaksBetween(blocks: readonly number[], first: number, high: number): number[] {
  const breaks: number[] = [];
  let row = first;
  let used = high;
  for (const rows of blocks) {
    if (used + rows > high) {
      if (row > 0) breaks.push(row);
      used = 0;
    }
    row += rows;
    used += rows;
  }
  return breaks;
}
