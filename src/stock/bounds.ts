import type { Cutting } from './cutting';
import type { Effort } from './effort';
import type { Proof } from './proof';
import { boundOf } from './proved';

/**
 * Quick lower bounds for one kind of board, each given as worths that prove it. A dual feasible function f makes the worths:
 * whatever fits the room is worth at most f's capacity. Sources: Martello and Toth 1990 (L2), Fekete and Schepers 2001,
 * Carlier, Clautiaux and Moukrim 2007.
 */
export function quickProof(cutting: Cutting, effort: Effort): Proof {
  const { sizes, boards } = cutting;
  const plain: Proof = { worths: sizes, most: boards.map((board) => board.room) };
  if (boards.length > 1) return plain;
  const room = boards[0]!.room;
  let best = plain;
  let bound = boundOf(plain, cutting);
  const consider = (worth: (size: number) => number, most: number) => {
    const proof = { worths: sizes.map(worth), most: [most] };
    effort.spend(A_SIZE * sizes.length);
    const reached = boundOf(proof, cutting);
    if (reached > bound) [best, bound] = [proof, reached];
  };
  const thresholds = [...new Set(sizes.map((size) => Math.min(size, room - size + 1)))].filter(
    (t) => t >= 1 && 2 * t <= room,
  );
  for (const threshold of thresholds.slice(0, MOST_THRESHOLDS)) {
    consider((size) => (size > room - threshold ? room : size >= threshold ? size : 0), room);
    const whole = Math.floor(room / threshold);
    consider((size) => {
      if (2 * size > room) return 2 * (whole - Math.floor((room - size) / threshold));
      return 2 * size === room ? whole : 2 * Math.floor(size / threshold);
    }, 2 * whole);
  }
  for (let k = 1; k <= 20; k++) {
    consider(
      (size) => (((k + 1) * size) % room === 0 ? k * size : Math.floor(((k + 1) * size) / room) * room),
      k * room,
    );
  }
  return best;
}

/** Work of weighing one size. */
const A_SIZE = 50;
/** Beyond so many the bounds cost more than they bring; generating patterns takes over. */
const MOST_THRESHOLDS = 200;
