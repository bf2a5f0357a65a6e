/**
 * Rounds as a spreadsheet's ROUND does: an exact half goes away from zero, judged on 15 significant digits, so that
 * 1.005 (held as 1.00499999999999989) becomes 1.01.
 */
export function roundTo(decimals: number, amount: number): number {
  const scale = 10 ** decimals;
  const scaled = Number((Math.abs(amount) * scale).toPrecision(15));
  return (Math.sign(amount) * Math.round(scaled)) / scale;
}

/** Money in whole cents, added up as whole cents: 0.1 and 0.2 are 0.3. */
export function addUp(amounts: readonly number[]): number {
  return amounts.reduce((sum, amount) => sum + Math.round(amount * 100), 0) / 100;
}

export function toCents(amount: number): number {
  return roundTo(2, amount);
}
