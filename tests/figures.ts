const FIGURE = /-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/gi;

/**
 * Whether two cells show one value: numbers within `within`, absolute below 1 and relative above; texts alike but for such
 * a difference in the figures that stand in them, since one program joins 15 digits and another 17.
 */
export function sameValue(a: unknown, b: unknown, within: number): boolean {
  if (typeof a === 'number' && typeof b === 'number') return near(a, b, within);
  if (typeof a !== 'string' || typeof b !== 'string') return a === b;
  const [inA, inB] = [a.match(FIGURE) ?? [], b.match(FIGURE) ?? []];
  return (
    a.replace(FIGURE, '#') === b.replace(FIGURE, '#') &&
    inA.every((figure, at) => near(Number(figure), Number(inB[at]), within))
  );
}

function near(a: number, b: number, within: number): boolean {
  return Math.abs(a - b) <= within * Math.max(1, Math.abs(a));
}
