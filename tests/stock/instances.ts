import type { Board, Cutting } from '../../src/stock/cutting';
import { randomNumbers } from '../../src/stock/random';
import type { StockOrder } from '../../src/stock/order';

/** Cutting problems made by published recipes, or by our own; the same number gives the same problem. */

/** Falkenauer 1996, uniform: whole sizes from 20 to 100, evenly, boards of 150. */
export function uniform(pieces: number, number: number): Cutting {
  const random = randomNumbers(1_000 * pieces + number);
  return cutting(
    Array.from({ length: pieces }, () => 20 + Math.floor(random() * 81)),
    150,
  );
}

/**
 * Falkenauer 1996, triplets: boards of 100.0 that three pieces fill exactly, one of 38.0 to 49.0, one of 25.0 to half of what is
 * left, and the rest. The least number of boards is a third of the pieces.
 */
export function triplets(pieces: number, number: number): Cutting {
  const random = randomNumbers(77_000 * pieces + number);
  const whole = (least: number, most: number) => least + Math.floor(random() * (most - least + 1));
  const sizes: number[] = [];
  for (let board = 0; board < pieces / 3; board++) {
    const first = whole(380, 490);
    const second = whole(250, Math.floor((1_000 - first) / 2));
    sizes.push(first, second, 1_000 - first - second);
  }
  return cutting(sizes, 1_000);
}

function cutting(sizes: readonly number[], room: number): Cutting {
  const counts = new Map<number, number>();
  for (const size of sizes) counts.set(size, (counts.get(size) ?? 0) + 1);
  const ordered = [...counts].sort((a, b) => b[0] - a[0]);
  const boards: Board[] = [{ room, price: 1, limit: Infinity }];
  return { sizes: ordered.map(([size]) => size), demand: ordered.map(([, count]) => count), boards };
}

/** Our own: 20 to 60 lengths of 8 to 96 in by sixteenths, 100 to 2,000 pieces, one stock length, a saw kerf. */
export function shopOrder(number: number, lengthCount?: number): StockOrder {
  const random = randomNumbers(31_337 + number);
  const pick = <T>(from: readonly T[]) => from[Math.floor(random() * from.length)]!;
  const count = lengthCount ?? 20 + Math.floor(random() * 41);
  const board = pick([96, 120, 144, 192]);
  const kerf = pick([0, 1 / 16, 3 / 32, 1 / 8]);
  const lengths = new Set<number>();
  while (lengths.size < count) lengths.add(Math.round((8 + random() * 88) * 16) / 16);
  const quantities = Array.from(lengths, () => 1);
  const pieces = Math.max(count, 100 + Math.floor(random() * 1_901));
  for (let piece = count; piece < pieces; piece++) quantities[Math.floor(random() * count)]!++;
  return { lengths: [...lengths], quantities, stock: [board], kerf };
}

/** Our own: 15 to 50 lengths by eighths, three to five stock lengths at odd-cent prices, `limited` by what is on hand. */
export function pricedOrder(number: number, limited: boolean): StockOrder {
  const random = randomNumbers(999 + number);
  const count = 15 + Math.floor(random() * 36);
  const lengths = new Set<number>();
  while (lengths.size < count) lengths.add(Math.round((8 + random() * 88) * 8) / 8);
  const quantities = Array.from(lengths, () => 1 + Math.floor(random() * 30));
  const stock = [96, 120, 144, 168, 192].slice(0, 3 + Math.floor(random() * 3));
  const prices = stock.map((length) => Math.round((length / 12) * (3.2 + random() * 0.6) * 100) / 100);
  const total = [...lengths].reduce((sum, length, at) => sum + length * quantities[at]!, 0);
  const limits = stock.map((length, at) =>
    at === stock.length - 1 ? null : Math.ceil((total / length) * (0.1 + 0.2 * random())),
  );
  return { lengths: [...lengths], quantities, stock, prices, limits: limited ? limits : undefined, kerf: 1 / 8 };
}
