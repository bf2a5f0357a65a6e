/** Integral of a smooth function by the trapezoids' successive halving (Romberg), good to about 13 digits. */
export function integrate(of: (x: number) => number, from: number, to: number): number {
  let row = [((to - from) * (of(from) + of(to))) / 2];
  for (let level = 1; level <= 20; level++) {
    const panels = 2 ** level;
    const step = (to - from) / panels;
    let between = 0;
    for (let panel = 1; panel < panels; panel += 2) between += of(from + panel * step);
    const next = [row[0]! / 2 + between * step];
    for (let order = 1; order <= level; order++) {
      next.push(next[order - 1]! + (next[order - 1]! - row[order - 1]!) / (4 ** order - 1));
    }
    const settled = Math.abs(next[level]! - row[level - 1]!) <= 1e-14 * Math.abs(next[level]!);
    row = next;
    if (settled && level > 4) break;
  }
  return row[row.length - 1]!;
}
