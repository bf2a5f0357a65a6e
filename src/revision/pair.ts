import { COMPARED, figuresKey, markKey, type FigureKey, type Figures } from './figures';

/** An opening as a revision compares it. */
export interface Listed {
  /** Its permanent number in our workbook; null: the list is not ours. */
  readonly no: number | null;
  readonly mark: string;
  readonly figures: Figures;
}

/** Places in the two lists that hold the same opening. */
export interface Pair {
  readonly old: number;
  readonly new: number;
  /** By what they are known to be the same: the number, the mark, or only that all figures agree, which is to be asked. */
  readonly by: 'number' | 'mark' | 'figures';
}

const TOLD_APART: readonly FigureKey[] = COMPARED.flatMap(({ key, kind }) => (kind === 'aside' ? [] : [key]));
/** Within one mark: openings that agree in more are paired first. The last ends all doubt by the order of figures. */
const WITHIN_MARK: readonly (readonly FigureKey[])[] = [
  [...TOLD_APART, 'place', 'remarks'],
  TOLD_APART,
  TOLD_APART.filter((key) => key !== 'quantity'),
  ['head', 'span', 'rise', 'place'],
  ['head', 'span', 'rise'],
  ['head', 'span'],
  ['span'],
  ['place'],
];
/** Openings without a mark are the same only if this much agrees. */
const WITHOUT_MARK = WITHIN_MARK.slice(0, 6);

/**
 * Which openings of two lists are the same: by number where both have one; by mark, and where several share a mark by their
 * figures; what is left over by equal figures under another mark. Rows' places say nothing: shuffled lists pair alike.
 */
export function pairUp(
  old: readonly Listed[],
  now: readonly Listed[],
  isRefused: (old: Listed, now: Listed) => boolean = () => false,
): Pair[] {
  const pairs: Pair[] = [];
  const free = { old: new Set(old.keys()), new: new Set(now.keys()) };
  const take = (one: number, other: number, by: Pair['by']) => {
    free.old.delete(one);
    free.new.delete(other);
    pairs.push({ old: one, new: other, by });
  };
  matchEqual(
    old,
    now,
    free,
    ({ no }) => (no === null ? null : String(no)),
    (one, other) => take(one, other, 'number'),
  );

  const byMark = groupsOf(old, now, free, ({ mark }) => markKey(mark));
  for (const [mark, group] of byMark) {
    if (mark !== '' && group.old.length === 1 && group.new.length === 1) {
      take(group.old[0]!, group.new[0]!, 'mark');
      continue;
    }
    const inGroup = { old: new Set(group.old), new: new Set(group.new) };
    const paired = (one: number, other: number) => {
      inGroup.old.delete(one);
      inGroup.new.delete(other);
      take(one, other, 'mark');
    };
    for (const keys of mark === '' ? WITHOUT_MARK : WITHIN_MARK) {
      if (inGroup.old.size === 0 || inGroup.new.size === 0) break;
      matchEqual(old, now, inGroup, ({ figures }) => figuresKey(figures, keys), paired);
    }
    if (mark === '') continue;
    const before = inOrder(old, inGroup.old);
    const after = inOrder(now, inGroup.new);
    for (let at = 0; at < Math.min(before.length, after.length); at++) paired(before[at]!, after[at]!);
  }

  const left = groupsOf(old, now, free, ({ figures }) => figuresKey(figures, TOLD_APART));
  for (const group of left.values()) {
    const before = byMarkOrder(old, group.old);
    const after = byMarkOrder(now, group.new);
    for (const one of before) {
      const at = after.findIndex((other) => !isRefused(old[one]!, now[other]!));
      if (at >= 0) take(one, after.splice(at, 1)[0]!, 'figures');
    }
  }
  return pairs;
}

interface Free {
  readonly old: ReadonlySet<number>;
  readonly new: ReadonlySet<number>;
}

/** A2 before A10. */
const ORDER = new Intl.Collator('en', { numeric: true });

/** Pairs places whose openings have the same key, each once. */
function matchEqual(
  old: readonly Listed[],
  now: readonly Listed[],
  free: Free,
  key: (opening: Listed) => string | null,
  take: (old: number, now: number) => void,
): void {
  for (const group of groupsOf(old, now, free, key).values()) {
    const before = byMarkOrder(old, group.old);
    const after = byMarkOrder(now, group.new);
    for (let at = 0; at < Math.min(before.length, after.length); at++) take(before[at]!, after[at]!);
  }
}

interface Group {
  readonly old: number[];
  readonly new: number[];
}

function groupsOf(
  old: readonly Listed[],
  now: readonly Listed[],
  free: Free,
  key: (opening: Listed) => string | null,
): Map<string, Group> {
  const groups = new Map<string, Group>();
  const add = (list: readonly Listed[], side: 'old' | 'new') => {
    for (const at of free[side]) {
      const own = key(list[at]!);
      if (own === null) continue;
      const group = groups.get(own) ?? { old: [], new: [] };
      group[side].push(at);
      groups.set(own, group);
    }
  };
  add(old, 'old');
  add(now, 'new');
  return groups;
}

function byMarkOrder(list: readonly Listed[], places: readonly number[]): number[] {
  if (places.length < 2) return [...places];
  return [...places].sort((one, other) => ORDER.compare(list[one]!.mark, list[other]!.mark));
}

/** By figures, so that the order of rows has no say. */
function inOrder(list: readonly Listed[], places: ReadonlySet<number>): number[] {
  const text = (at: number) => figuresKey(list[at]!.figures, ['head', 'span', 'rise', 'quantity', ...TOLD_APART]);
  return [...places]
    .map((at) => ({ at, text: text(at) }))
    .sort((one, other) => ORDER.compare(one.text, other.text))
    .map(({ at }) => at);
}
