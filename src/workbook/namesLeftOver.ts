import type { Sheet } from './sheet';

/** Names as only sheets of ours define them. */
const OURS = /^(?:Shop|Stock|OnHand|Plan)_/;

/**
 * Of the names in a workbook those that an earlier filling, or the first version, gave to cells of sheets that are written anew,
 * and that now stand for other cells than they say. A name of the user's own stays.
 */
export function namesLeftOver<N extends { readonly name: string; readonly ref: string }>(
  present: readonly N[],
  sheets: readonly Pick<Sheet, 'name' | 'names'>[],
): N[] {
  const kept = new Set(sheets.flatMap(({ names = [] }) => names).map(({ name }) => name));
  const isOn = (ref: string, sheet: string) => ref.replace(/^=/, '').replaceAll("'", '').startsWith(`${sheet}!`);
  return present.filter(
    ({ name, ref }) => OURS.test(name) && !kept.has(name) && sheets.some((sheet) => isOn(ref, sheet.name)),
  );
}
