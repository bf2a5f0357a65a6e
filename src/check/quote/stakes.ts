import { amountOf } from '../../quote/quote';
import type { LineCheck } from './checkLine';
import type { NotQuoted } from './notQuoted';

/** The money of what was found: what is off for certain apart from what only hangs on a line. Dollars. */
export interface Stakes {
  /** Quoted less what the quote comes to at its own prices, once counts and sums are right; null where that can't be told. */
  readonly off: number | null;
  /** Lines above or below our own price by more than the band, what they are more or less by, added up. */
  readonly prices: number;
  /** Our price for the openings, and what goes with them, that aren't quoted. */
  readonly omitted: number;
  /** Lines whose price may change with a wrong size, wood or shape, or that can't be told: how many, and what they come to. */
  readonly hanging: { readonly lines: number; readonly amount: number };
}

export function stakesOf(
  lines: readonly LineCheck[],
  notQuoted: readonly NotQuoted[],
  quoted: number,
  corrected: number | null,
): Stakes {
  const open = lines.filter(hangs);
  return {
    off: corrected === null ? null : quoted - corrected,
    prices: lines.reduce((sum, check) => sum + priceOff(check), 0),
    omitted: notQuoted.reduce((sum, { finding, price }) => sum + (finding.verdict === 'differs' ? (price ?? 0) : 0), 0),
    hanging: { lines: open.length, amount: open.reduce((sum, { line }) => sum + Math.abs(amountOf(line) ?? 0), 0) },
  };
}

/** By how much a line's price is off our own, where that is more than the band. */
export function priceOff({ findings }: LineCheck): number {
  return findings.reduce((sum, { about, dollars }) => sum + (about === 'unit price' ? (dollars ?? 0) : 0), 0);
}

/** True where the line's money may change with something whose money no figure tells. */
export function hangs({ part, corrected, findings, line, verdict }: LineCheck): boolean {
  if (part === 'alternate' || corrected === 0) return false;
  const open = findings.some(
    ({ verdict: is, dollars, about }) => is === 'differs' && dollars === null && about !== 'quantity',
  );
  return (open || verdict === "can't tell") && corrected === amountOf(line);
}

/** Most money at stake first. */
export function byStake(lines: readonly LineCheck[]): LineCheck[] {
  return [...lines].sort((one, other) => other.stake - one.stake || one.line.row - other.line.row);
}
