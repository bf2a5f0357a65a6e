/**
 * A text in lines of at most `width` characters, broken between words; longer words are cut. Lines after the first begin with
 * `indent`. Cells that run over their neighbors are not wrapped by a spreadsheet.
 */
export function wrapped(text: string, width: number, indent: string): string[] {
  const lines: string[] = [];
  let line = '';
  const room = width - indent.length;
  const words = text
    .split(' ')
    .flatMap((word) => (word.length <= room ? [word] : (word.match(new RegExp(`.{1,${room}}`, 'gu')) ?? [])));
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length <= (lines.length === 0 ? width : room)) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  if (line !== '') lines.push(line);
  return lines.map((each, at) => (at === 0 ? each : indent + each));
}
