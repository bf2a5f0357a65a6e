/** The cuts of one board in words: `3 × 24 1/2, 1 × 17`, each length as `lengthText` writes it. */
export function cutText(
  cuts: readonly (readonly [length: number, count: number])[],
  lengthText: (length: number) => string = plainLength,
): string {
  return cuts.map(([length, count]) => `${count} × ${lengthText(length)}`).join(', ');
}

/** A length that is whole in 64ths as a reduced mixed fraction, any other as a decimal: 24 1/2, 24.3. */
export function plainLength(length: number): string {
  const parts = length * 64;
  if (Math.abs(parts - Math.round(parts)) > 1e-9 * Math.max(1, parts)) return String(Number(length.toFixed(4)));
  let top = Math.round(parts) % 64;
  let bottom = 64;
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const whole = Math.floor(Math.round(parts) / 64);
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}
