import { addUp } from '../rounding';
import { listed } from '../schedule/figure';
import { addLabor, LABOR, moneyForKind, type LaborKind } from '../takeoff/labor';
import type { Takeoff } from '../takeoff/takeoff';

/** Work that the first version didn't count. */
const NEW_WORK: readonly LaborKind[] = ['planing', 'trimming', 'endCuts', 'packing', 'fitting'];

/**
 * What the prices of a takeoff of the first version, by the openings' numbers, have become, and why: two sentences; none where
 * all are as they were. An opening that is no longer in the list has no price to compare.
 */
export function pricesSinceFirst(before: ReadonlyMap<number, number>, { openings, standards }: Takeoff): string[] {
  const pairs = openings.flatMap(({ no, cost }) => {
    const was = before.get(no);
    return was === undefined ? [] : [{ was, now: cost?.price ?? null }];
  });
  const differ = pairs.filter(({ was, now }) => now !== was);
  if (differ.length === 0) return [];
  const lost = pairs.filter(({ now }) => now === null).length;
  const [from, to] = [addUp(pairs.map(({ was }) => was)), addUp(pairs.map(({ now }) => now ?? 0))];
  const without = lost === 0 ? '' : `, ${lost} of them without any`;
  const minutes = addLabor(openings.flatMap(({ cost }) => (cost ? [cost.minutes] : [])));
  const work = NEW_WORK.flatMap((kind) => {
    const dollars = moneyForKind(kind, minutes[kind], standards);
    return dollars > 0 ? [`${LABOR[kind].toLowerCase()} (${money(dollars)})`] : [];
  });
  const uncounted = work.length === 0 ? '' : `${listed(work)}, which the first version did not count, `;
  return [
    `${differ.length} of ${pairs.length} prices of the first version are others now${without}: ${money(from)} together then, ${money(to)} now.`,
    `They pay for ${uncounted}for the boards that are bought instead of an allowance for waste, for machine and bench at rates of their own, and for changing knives and guides apart.`,
  ];
}

function money(dollars: number): string {
  return `$${dollars.toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;
}
