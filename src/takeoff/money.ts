/**
 * Rounds to cents as a spreadsheet's ROUND does: an exact half goes away from zero, judged on 15 significant digits, so
 * that 1.005 (held as 1.00499999999999989) becomes 1.01.
 */
export function toCents(amount: number): number {
  const cents = Number((Math.abs(amount) * 100).toPrecision(15));
  return (Math.sign(amount) * Math.round(cents)) / 100;
}
