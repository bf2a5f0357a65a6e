import type { Board, Cutting } from './cutting';
import type { Effort } from './effort';
import { greatestCommonDivisor } from './grid';
import type { Proof } from './proof';
import { priceUnit, steppedBoundOf } from './proved';

/** Up to so many cells a table of all costs is made. */
const SMALL_TABLE = 300_000;
/** More work than this takes too long beside the rest. */
const MOST_CELLS = 4_000_000;
/** Work on one cell. */
const A_CELL = 4;

/** What one kind of board holds, and its price in the unit of all prices. `lots`: see `lotsOf`. */
interface Kind {
  readonly price: number;
  readonly most: number;
  readonly lots: readonly number[] | null;
}

/** Whole costs looked at: from `low`, which the proof leaves possible, to `top`, which holds the worth of all pieces in any case. */
interface Range {
  readonly low: number;
  readonly top: number;
  /** Worth of all pieces. */
  readonly total: number;
}

/**
 * `boundOf` lets boards be bought in fractions; this is the least cost of whole boards, no more of a kind than can be had, that hold
 * the worth of all pieces. In dear plans it may come out lower, never below `steppedBoundOf`: see `byRemainders`.
 */
export function wholeBoundOf(proof: Proof, cutting: Cutting, effort: Effort): number {
  const { boards, demand } = cutting;
  const unit = priceUnit(boards);
  const low = steppedBoundOf(proof, cutting) / unit;
  // Of the fractional boards one kind alone needs rounding up.
  const top = low + Math.max(...boards.map((board) => board.price)) / unit;
  const total = proof.worths.reduce((sum, worth, at) => sum + worth * demand[at]!, 0);
  if (boards.length === 1 || !Number.isSafeInteger(total)) return low * unit;
  const kinds = boards.map(({ price, limit }: Board, at): Kind => {
    const enough = Math.floor((top * unit) / price);
    return {
      price: price / unit,
      most: proof.most[at]!,
      lots: limit === Infinity ? null : lotsOf(Math.min(limit, enough)),
    };
  });
  const passes = kinds.reduce((sum, { lots }) => sum + (lots?.length ?? 2), 0);
  const range = { low, top, total };
  if (passes * top <= SMALL_TABLE) {
    effort.spend(A_CELL * passes * top);
    return byTable(kinds, range) * unit;
  }
  const best = bestForItsPrice(kinds);
  if (best === null || passes * best.price > MOST_CELLS) return low * unit;
  effort.spend(A_CELL * passes * best.price);
  return byRemainders(kinds, best, range) * unit;
}

/** The most worth that each cost can buy (knapsack over the cost). */
function byTable(kinds: readonly Kind[], { low, top, total }: Range): number {
  const worthFor = new Float64Array(top + 1);
  for (const { price, most, lots } of kinds) {
    for (let cost = price; lots === null && cost <= top; cost++) {
      worthFor[cost] = Math.max(worthFor[cost]!, worthFor[cost - price]! + most);
    }
    for (const count of lots ?? []) {
      for (let cost = top; cost >= count * price; cost--) {
        worthFor[cost] = Math.max(worthFor[cost]!, worthFor[cost - count * price]! + count * most);
      }
    }
  }
  let cost = low;
  while (cost < top && worthFor[cost]! < total) cost++;
  return worthFor[cost]! < total ? low : cost;
}

/**
 * In a dear plan nearly all boards are of the kind that holds most for its price, and the others only make up the cost. What
 * they hold less than that kind would for the same money is worked out for each remainder of the cost by its price (Gilmore and
 * Gomory 1966), which takes a table of one price, not of all costs. That the others may come to more than the cost is let
 * pass, so the bound is no higher than by the table. Worths are counted in `best.price`ths.
 */
function byRemainders(kinds: readonly Kind[], best: Kind, { low, top, total }: Range): number {
  const step = best.price;
  // What a cost of `low` would hold of the best kind alone over what is wanted; each unit more of cost adds best.most.
  const over = Number(BigInt(low) * BigInt(best.most) - BigInt(total) * BigInt(step));
  if (!Number.isSafeInteger(2 * over)) return low;
  const lost = new Float64Array(step).fill(Infinity);
  lost[0] = 0;
  for (const kind of kinds) {
    if (kind === best) continue;
    const { price, most, lots } = kind;
    const loss = price * best.most - most * step;
    if (lots === null) {
      // Twice round each cycle of remainders, since the least of it may stand anywhere.
      const cycles = greatestCommonDivisor(price, step);
      for (let first = 0; first < cycles; first++) {
        let at = first;
        for (let turn = 0; turn < (2 * step) / cycles; turn++) {
          const next = (at + price) % step;
          lost[next] = Math.min(lost[next]!, lost[at]! + loss);
          at = next;
        }
      }
    }
    for (const count of lots ?? []) {
      const before = lost.slice();
      for (let at = 0; at < step; at++) {
        const next = (at + count * price) % step;
        lost[next] = Math.min(lost[next]!, before[at]! + count * loss);
      }
    }
  }
  for (let cost = low; cost <= top; cost++) if (lost[cost % step]! <= over + (cost - low) * best.most) return cost;
  return low;
}

/** Of the kinds without limit; null where there is none, or sums would not be exact. */
function bestForItsPrice(kinds: readonly Kind[]): Kind | null {
  let best: Kind | null = null;
  for (const kind of kinds) {
    if (kind.lots !== null) continue;
    if (best === null || kind.most * best.price > best.most * kind.price) best = kind;
  }
  const dearest = Math.max(...kinds.map(({ price }) => price));
  const held = Math.max(...kinds.map(({ most }) => most));
  return Number.isSafeInteger(2 * dearest * held) ? best : null;
}

/** Lots of 1, 2, 4, … and a rest: any number up to the limit is a sum of some. */
function lotsOf(limit: number): number[] {
  const lots: number[] = [];
  for (let left = limit, lot = 1; left > 0; left -= lot, lot = Math.min(2 * lot, left)) lots.push(lot);
  return lots;
}
