import { amountOf, type Quote, type QuoteSum } from '../../quote/quote';
import { toCents } from '../../rounding';
import { given } from '../rules/expression';
import { sumRule } from '../rules/moneyRules';
import type { Holds } from './charges';
import type { LineCheck } from './checkLine';
import type { Finding } from './finding';
import type { LineMatch } from './match';
import type { SumCheck } from './sums';

/** See `LineCheck.corrected`. */
export function correctedAmount({ line, part }: LineMatch, findings: readonly Finding[]): number | null {
  if (part === 'alternate') return null;
  const wrong = (about: Finding['about']) =>
    findings.find((one) => one.about === about && one.verdict === 'differs' && one.right !== null);
  if (findings.some(({ about, cause }) => about === 'opening' && cause === 'quoted twice')) return 0;
  const amount = amountOf(line);
  const [counted, extended] = [wrong('quantity'), wrong('extension')];
  const measured = line.byFoot && line.by === 'piece' ? wrong('length') : undefined;
  if (amount === null || (!counted && !extended && !measured)) return amount;
  const pieces = line.quantity ?? 1;
  // By the foot, or less a discount, one piece is its share of what all come to.
  const one = line.unitPrice ?? (extended?.right ?? amount) / pieces;
  const plain = line.reckoning === null ? one : line.reckoning.amount / pieces;
  const longer = measured ? measured.right! / measured.quoted! : 1;
  const right = counted ? pieces + counted.right! - counted.quoted! : pieces;
  // Of lines that are counted together another may have the pieces that are too many.
  return right < 0 ? null : toCents(plain * longer * right);
}

/** A quote's charges, sums and total as they follow from its corrected lines. Dollars. */
export interface Corrected {
  /** Of each charge and sum, by its row; a charge that is no share of anything, or of what can't be told, is as quoted. */
  readonly sums: ReadonlyMap<number, number | null>;
  /** What the total that the quote states comes to, or else its lines and charges; null where the amount of one of them isn't known. */
  readonly total: number | null;
}

/** `stated` is the quote's own total, where it states one. */
export function correctedSums(
  { items }: Quote,
  lines: readonly LineCheck[],
  sums: readonly SumCheck[],
  stated: QuoteSum | null,
): Corrected {
  const checks = new Map(lines.map((check) => [check.line.row, check]));
  const held = new Map(sums.map((sum) => [sum.item.row, sum]));
  // Of the first so many lines, and of each charge.
  const goods = [0];
  const charges: number[] = [];
  const found = new Map<number, number | null>();
  let known = true;
  let total = 0;
  for (const item of items) {
    if (item.kind === 'line') {
      const { part, corrected } = checks.get(item.row)!;
      if (part !== 'alternate' && corrected === null) known = false;
      goods.push(goods.at(-1)! + (corrected ?? 0));
      total += corrected ?? 0;
      continue;
    }
    const { holds } = held.get(item.row)!;
    const amount = holds === null ? item.amount : figured(item.amount, holds, goods, charges);
    found.set(item.row, amount);
    if (item.kind === 'sum') continue;
    if (item.amount === null) known = false;
    charges.push(amount ?? 0);
    if (item.charge !== 'deposit') total += amount ?? 0;
  }
  if (!known) return { sums: found, total: null };
  return { sums: found, total: stated === null ? toCents(total) : (found.get(stated.row) ?? null) };
}

/** A sum or a charge by what it holds; the quoted amount where that is right but for its rounding. */
function figured(quoted: number | null, holds: Holds, goods: readonly number[], charges: readonly number[]): number {
  const [from, before] = holds.lines;
  const taken = holds.charges.reduce((sum, place) => sum + charges[place]!, goods[before]! - goods[from]!);
  const right = holds.rate * (taken + holds.alternates);
  return sumRule(given(quoted), given(right), holds.within).of({})!;
}
