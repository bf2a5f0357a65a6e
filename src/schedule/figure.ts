import { shopInches } from '../feetInches';

/** A length for a sentence: as on a tape where it is exact in 1/64 (`36 1/2`), else to four decimals. */
export function figure(value: number): string {
  const onTape =
    Number.isFinite(value) && Math.abs(value * 64 - Math.round(value * 64)) < 1e-4 ? shopInches(value, 64) : null;
  return onTape?.ok ? onTape.value : String(Number(value.toFixed(4)));
}

/** Text quoted back, cut where it would not fit a sentence. */
export function quote(text: string): string {
  const plain = text.replace(/\s+/g, ' ').trim();
  return `"${plain.length > 80 ? `${plain.slice(0, 79)}…` : plain}"`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(parts: readonly string[], word = 'and'): string {
  return parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} ${word} ${parts.at(-1)}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `3, 5-7, 12` */
export function rowRanges(rows: readonly number[]): string {
  const parts: string[] = [];
  for (let index = 0; index < rows.length; index += 1) {
    const from = rows[index]!;
    while (rows[index + 1] === rows[index]! + 1) index += 1;
    parts.push(rows[index] === from ? String(from) : `${from}-${rows[index]!}`);
  }
  return parts.join(', ');
}
