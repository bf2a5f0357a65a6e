/** A builder's list with the usual shapes of head and one opening in fifty that needs something; headings in the first row. */
export function buildersList(openings: number): (string | number | null)[][] {
  const heads = ['segmental', 'half round', 'elliptical', 'pointed', 'segmental'];
  const rows = Array.from({ length: openings }, (_, at) => {
    const head = heads[at % heads.length]!;
    const width = 24 + ((at * 7) % 60);
    const rise = { segmental: width / 6, elliptical: width / 3, pointed: width * 0.9 }[head] ?? null;
    return [`M${at + 1}`, 1 + (at % 4), head, width, at % 50 === 49 ? null : rise];
  });
  return [['Mark', 'Qty', 'Head', 'Width', 'Rise'], ...rows];
}
