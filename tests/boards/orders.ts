import type { BoardOnSale, Part, WoodOrder } from '../../src/boards/order';
import type { Random } from '../random';

/** Boards in three widths and two lengths, at an invented price for the board foot of 4/4. */
export function boards(price = 3.9, limit: number | null = null): BoardOnSale[] {
  return [5.5, 7.25, 9.25].flatMap((width) =>
    [96, 144].map((length) => ({
      width,
      length,
      price: Math.round(((price * width * length) / 144) * 100) / 100,
      limit,
    })),
  );
}

/** A segment as a blank has it: an arc of so many degrees in equal segments, a quarter inch of margin on each edge. */
export function segment(radius: number, face: number, degrees: number, segments: number, count: number): Part {
  const half = (degrees / segments / 2) * (Math.PI / 180);
  return { kind: 'segment', inside: radius - 0.25, outside: radius + face + 0.25, half, count };
}

export function straight(length: number, width: number, count: number): Part {
  return { kind: 'straight', length, width, count };
}

/** Parts of several openings, segments and legs. */
export function randomOrder(random: Random, kinds: number, most: number, given: Partial<WoodOrder> = {}): WoodOrder {
  const parts = Array.from({ length: kinds }, (): Part => {
    const face = random.pick([2.25, 3.5, 3.5, 4.25]);
    const count = random.whole(1, most);
    if (random.between(0, 1) < 0.3) return straight(random.whole(160, 720) / 8, face + 0.5, count);
    const segments = random.whole(2, 5);
    return segment(random.whole(24, 160) / 2, face, random.whole(12, 30) * segments, segments, count);
  });
  return { parts, boards: boards(), kerf: 0.125, trim: 0.5, ...given };
}
