/** A cell's place, both from 0. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** `B12` or `$B$12` → its place; null for anything else. */
export function placeOf(address: string): Place | null {
  const match = /^\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/i.exec(address.trim());
  if (!match) return null;
  let column = 0;
  for (const letter of match[1]!.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return { row: Number(match[2]) - 1, column: column - 1 };
}

export function addressOf({ row, column }: Place): string {
  let letters = '';
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return `${letters}${row + 1}`;
}

/** Is the place within an A1 range such as `C4:D20`? */
export function isWithin(range: string, { row, column }: Place): boolean {
  const [first, last] = range.split(':');
  const from = placeOf(first ?? '');
  const to = placeOf(last ?? first ?? '');
  if (!from || !to) return false;
  return row >= from.row && row <= to.row && column >= from.column && column <= to.column;
}
