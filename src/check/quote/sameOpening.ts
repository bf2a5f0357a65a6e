import type { LineMatch } from './match';
import type { QuoteLine } from '../../quote/quote';

/** The lines that are for one single opening, in the order of the quote. */
export interface SameOpening {
  readonly heads: readonly LineMatch[];
  readonly others: readonly LineMatch[];
  /** Pieces of all heads; null where a line doesn't count pieces. */
  readonly total: number | null;
  /**
   * How the heads stand to each other: they divide the opening's pieces between them ("one left, one right"), or the first
   * has them all and the others come on top.
   */
  readonly sharing: 'alone' | 'together' | 'surplus';
}

export function sameOpening(
  heads: readonly LineMatch[],
  others: readonly LineMatch[],
  wanted: number | null,
): SameOpening {
  const total = together(heads);
  return { heads, others, total, sharing: sharingOf(heads, total, wanted) };
}

function sharingOf(heads: readonly LineMatch[], total: number | null, wanted: number | null): SameOpening['sharing'] {
  const [first, ...more] = heads;
  if (first === undefined || more.length === 0 || wanted === null) return 'alone';
  if (total === null) return 'surplus';
  if (total === wanted) return 'together';
  return first.line.quantity! < wanted && !more.some(({ line }) => alike(line, first.line)) ? 'together' : 'surplus';
}

function alike(one: QuoteLine, other: QuoteLine): boolean {
  return (['quantity', 'length', 'radius', 'unitPrice', 'extension'] as const).every((key) => one[key] === other[key]);
}

function together(heads: readonly LineMatch[]): number | null {
  let total = 0;
  for (const { line } of heads) {
    if (line.quantity === null || line.by !== 'piece') return null;
    total += line.quantity;
  }
  return total;
}
