import { addUp } from '../rounding';
import { figureChanges, markKey, type FigureChange } from './figures';
import { pairUp, type Listed, type Pair } from './pair';

/** An opening with what it is sold for. */
export interface ListedPrice extends Listed {
  /** The whole quantity with its extras, in whole cents; null: not priced. */
  readonly price: number | null;
  /** The opening itself is not priced: the price is that of its extras. */
  readonly isOfExtras?: boolean;
}

/** One opening in both lists. */
export interface Both {
  readonly old: ListedPrice;
  readonly new: ListedPrice;
}

export interface Changed extends Both {
  readonly figures: readonly FigureChange[];
  /** New less old; an opening that isn't priced counts as 0. */
  readonly money: number;
}

export interface Renamed extends Both {
  /** Only the figures say that the two are one: a person is asked. Otherwise the number says so. */
  readonly asked: boolean;
}

/** A revised list against the list before. */
export interface Revision {
  readonly added: readonly ListedPrice[];
  readonly dropped: readonly ListedPrice[];
  readonly renamed: readonly Renamed[];
  readonly changed: readonly Changed[];
  readonly unchanged: readonly Both[];
  /** How much more the openings that did not change cost now, renamed ones among them: knives, guides, set-ups and boards are shared. */
  readonly shared: number;
  readonly total: { readonly old: number; readonly new: number };
  /** For each place of the new list the place in the old; null: it is new. */
  readonly matches: readonly (number | null)[];
}

/** Two openings that a person said are not the same, by their marks. */
export type Refused = readonly (readonly [old: string, now: string])[];

/**
 * What a revised list changes: openings added, dropped, renamed and changed, each with its money, and the money that moved
 * between openings that are as they were. Old total + added − dropped + changes + shared = new total, to the cent.
 */
export function compare(old: readonly ListedPrice[], now: readonly ListedPrice[], refused: Refused = []): Revision {
  const no = new Set(refused.map((pair) => pair.map(markKey).join('\u0000')));
  const pairs = pairUp(old, now, (one, other) => no.has([one.mark, other.mark].map(markKey).join('\u0000')));
  const isOld = new Set(pairs.map((pair) => pair.old));
  const isNew = new Set(pairs.map((pair) => pair.new));
  const renamed: Renamed[] = [];
  const changed: Changed[] = [];
  const unchanged: Both[] = [];
  const shared: number[] = [];
  // In the order of the new list.
  for (const pair of [...pairs].sort((one, other) => one.new - other.new)) {
    const both = { old: old[pair.old]!, new: now[pair.new]! };
    const moved = addUp([both.new.price ?? 0, -(both.old.price ?? 0)]);
    const figures = changesOf(both, pair);
    const isRenamed = markKey(both.old.mark) !== markKey(both.new.mark);
    if (figures.length > 0) changed.push({ ...both, figures, money: moved });
    else {
      shared.push(moved);
      if (isRenamed) renamed.push({ ...both, asked: pair.by === 'figures' });
      else unchanged.push(both);
    }
  }
  const matches = now.map((): number | null => null);
  for (const pair of pairs) matches[pair.new] = pair.old;
  return {
    added: now.filter((_opening, at) => !isNew.has(at)),
    dropped: old.filter((_opening, at) => !isOld.has(at)),
    ...{ renamed, changed, unchanged, matches },
    shared: addUp(shared),
    total: { old: totalOf(old), new: totalOf(now) },
  };
}

/** Figures that changed; the mark counts among them where others changed as well. */
function changesOf({ old, new: now }: Both, { by }: Pair): FigureChange[] {
  const figures = figureChanges(old.figures, now.figures);
  const isRenamed = by === 'number' && markKey(old.mark) !== markKey(now.mark);
  return isRenamed && figures.length > 0 ? [{ figure: 'mark', from: old.mark, to: now.mark }, ...figures] : figures;
}

function totalOf(openings: readonly ListedPrice[]): number {
  return addUp(openings.map(({ price }) => price ?? 0));
}
