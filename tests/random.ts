/** Reproducible random figures for tests that need more of them than a property test shrinks. */
export interface Random {
  /** Evenly from `least` to `most`. */
  between(least: number, most: number): number;
  /** Whole, from `least` to `most`. */
  whole(least: number, most: number): number;
  /** Spread evenly over the powers of ten between `least` and `most`. */
  size(least: number, most: number): number;
  pick<T>(from: readonly T[]): T;
}

/** The 32-bit mixing generator known as mulberry32. */
export function random(seed: number): Random {
  let state = seed;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const between = (least: number, most: number) => least + (most - least) * next();
  const whole = (least: number, most: number) => Math.floor(between(least, most + 1));
  return {
    between,
    whole,
    size: (least, most) => Math.exp(between(Math.log(least), Math.log(most))),
    pick: (from) => from[whole(0, from.length - 1)]!,
  };
}
