/** Columns' characters that a letter page, landscape, takes at full size. */
const PAGE = 134;
/** Print is not made smaller than this: 11 points become 7. */
const SMALLEST = 0.65;

/**
 * How many pages a printed sheet is wide, so that it can still be read. `widths` are those of the columns that are not folded
 * away, in characters; the first `repeated` of them stand on every page. Example: 20 columns of 10 take 1 page, 24 take 2.
 */
export function pagesWide(widths: readonly number[], repeated: number): number {
  const sum = (columns: readonly number[]) => columns.reduce((total, width) => total + width, 0);
  const onEvery = sum(widths.slice(0, repeated));
  const room = Math.max(1, PAGE / SMALLEST - onEvery);
  return Math.max(1, Math.ceil((sum(widths) - onEvery) / room));
}
