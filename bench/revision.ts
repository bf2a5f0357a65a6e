/**
 * A revised list against the one before: `npm run bench -- revision [OPENINGS]`. Of a hundred openings two are dropped, two added,
 * five changed and one renamed, and the rows are shuffled; every planted change must be found and no other. The comparison itself
 * is timed apart from pricing the two lists.
 */
import { compareTakeoffs } from '../src/revision/listed';
import { blankOpening, type Opening } from '../src/schedule/opening';
import { defaultStandards } from '../src/standards';
import { takeoff } from '../src/takeoff/takeoff';

const HEADS = ['segmental', 'half round', 'elliptical'] as const;
const MOST_SECONDS = 2;

function openings(count: number): Opening[] {
  return Array.from({ length: count }, (_, at): Opening => {
    const head = HEADS[at % HEADS.length]!;
    // No two openings are alike, so that a renamed one is known by its figures.
    const span = 24 + at / 160;
    return {
      ...blankOpening(at + 2),
      mark: `W${at + 1}`,
      quantity: 1 + (at % 4),
      head,
      span,
      rise: head === 'half round' ? null : span / 4,
    };
  });
}

function revised(list: readonly Opening[]): Opening[] {
  const now = list.flatMap((opening, at): Opening[] => {
    const kind = at % 100;
    if (kind < 2) return [];
    if (kind < 7) return [{ ...opening, quantity: opening.quantity! + 1 }];
    if (kind === 7) return [{ ...opening, mark: `R${at}` }];
    if (kind < 10)
      return [opening, { ...opening, mark: `N${at}`, span: 200 + at / 160, head: 'half round', rise: null }];
    return [opening];
  });
  // A fixed shuffle: rows' places say nothing.
  return now
    .map((opening, at) => ({ opening, order: (at * 7919) % now.length }))
    .sort((a, b) => a.order - b.order)
    .map(({ opening }) => opening);
}

export function run(args: readonly string[]): void {
  const most = Number(args[0] ?? 10_000);
  if (!(most >= 400)) throw new Error(`the number of openings must be at least 400; got ${args[0]}`);
  const standards = defaultStandards();
  for (const count of [most / 4, most / 2, most].map((each) => Math.round(each / 100) * 100)) {
    const list = openings(count);
    const start = performance.now();
    const [before, now] = [takeoff(list, standards), takeoff(revised(list), standards)];
    const priced = performance.now();
    const { added, dropped, changed, renamed, unchanged } = compareTakeoffs(before, now);
    const seconds = (performance.now() - priced) / 1000;
    const found = [added, dropped, changed, renamed].map(({ length }) => length);
    const planted = [2, 2, 5, 1].map((each) => (each * count) / 100);
    console.log(
      `${count.toLocaleString().padStart(7)} openings: priced twice in ${((priced - start) / 1000).toFixed(2)} s, compared in ${seconds.toFixed(3)} s; ` +
        `added ${found[0]}, dropped ${found[1]}, changed ${found[2]}, renamed ${found[3]}, unchanged ${unchanged.length}`,
    );
    if (found.some((each, at) => each !== planted[at])) throw new Error(`planted were ${planted.join(', ')}`);
    if (seconds > MOST_SECONDS) throw new Error(`comparing took more than ${MOST_SECONDS} s`);
  }
}
