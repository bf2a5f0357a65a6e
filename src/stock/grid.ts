/**
 * The whole-number grid a plan is made on. Every figure of the order (lengths, stock, kerf, trim, or the prices) is a common
 * fraction in practice: 24 1/2, 24.3, 8/3. The grid is the least common denominator of them all, so that nothing is rounded.
 */
export interface Grid {
  /** Grid steps to one unit of length (or of money). */
  readonly steps: number;
  /** False where a figure is no common fraction and is taken to the nearest step. */
  readonly exact: boolean;
}

/** Denominators looked for; 1/64 in, 0.1 mm and one cent are far below it. */
const LARGEST_DENOMINATOR = 20_000;
/** Figures worked out in a sheet (0.1 + 0.2) are off by some units in the last place. */
const ROUNDING = 2e-12;

/** The coarsest grid on which every value is whole; where there is none below `most` steps in all, the nearest fine one. */
export function gridFor(values: readonly number[], most: number): Grid {
  const largest = values.reduce((top, value) => Math.max(top, Math.abs(value)), 1);
  let steps = 1;
  for (const value of values) {
    const denominator = denominatorOf(value);
    if (denominator !== null) steps = leastCommonMultiple(steps, denominator);
    if (denominator === null || steps * largest > most)
      return { steps: nearestPowerOfTen(most / largest), exact: false };
  }
  return { steps, exact: true };
}

/** `value` in grid steps; exact on an exact grid. */
export function onGrid(value: number, grid: Grid): number {
  return Math.round(value * grid.steps);
}

/** Denominator of the simplest fraction that gives `value` but for rounding (continued fraction); null: none is simple enough. */
function denominatorOf(value: number): number | null {
  const tolerance = ROUNDING * Math.max(1, Math.abs(value));
  let rest = value;
  let [before, denominator] = [0, 1];
  for (;;) {
    if (Math.abs(Math.round(value * denominator) / denominator - value) <= tolerance) return denominator;
    const part = rest - Math.floor(rest);
    if (part === 0) return null;
    rest = 1 / part;
    [before, denominator] = [denominator, Math.floor(rest) * denominator + before];
    if (denominator > LARGEST_DENOMINATOR) return null;
  }
}

function nearestPowerOfTen(value: number): number {
  return 10 ** Math.floor(Math.log10(value));
}

export function greatestCommonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

function leastCommonMultiple(a: number, b: number): number {
  return (a / greatestCommonDivisor(a, b)) * b;
}
