import { markOrRow } from '../schedule/opening';
import { planBoards, workFor, type BoardControl } from './boards';
import { partsOf } from './parts';
import { listedCells } from './row';
import { wantedBy, type SegmentSaving, type SegmentSavings, type Wanted } from './segmentChange';
import { takeoff, type OpeningTakeoff, type Takeoff } from './takeoff';
import type { WoodPart } from './woodParts';

const NONE: SegmentSavings = { changes: [], saved: 0 };

/** Told before each plan: how many are done, and how many there are at most. */
export type OnStep = (done: number, of: number) => void;

/** Changes looked at, those with most wood first, and work for a plan while they are. */
const MOST_CHANGES = 40;
const WORK = 2e7;
/** Less money than this is no reason to glue up otherwise. */
const LEAST = 0.5;

/**
 * Numbers of segments that come cheaper than those chosen, which were chosen for each ring by itself: fewer or more of them
 * may fit the boards that are bought in any case. Openings alike change together; a number that somebody wants stays. Each change
 * is planned by itself, then the best are made one after another as long as each still saves something.
 */
export function segmentSavings(taken: Takeoff, control: BoardControl = {}, onStep?: OnStep): SegmentSavings {
  const known = new Map<string, number>();
  const possible = changesOf(taken);
  let done = 0;
  // Each change is planned by itself and once more with those made; before and after them, the job as it is and as it will be.
  let most = 2 * possible.length + 3;
  const cost = (wanted: Wanted, plans: Map<string, number>, by: BoardControl) => {
    onStep?.(done++, most);
    return costWith(withSegments(taken, wanted), plans, by);
  };
  const quick = (wanted: Wanted) => cost(wanted, known, { ...control, work: WORK });
  const now = quick(new Map());
  const alone = possible
    .map((change) => ({ change, saved: now - quick(wantedBy([change])) }))
    .filter(({ saved }) => saved >= LEAST)
    .sort((one, other) => other.saved - one.saved);
  most = done + alone.length + 2;
  const made: SegmentSaving[] = [];
  let least = now;
  for (const { change } of alone) {
    if (control.stop?.() === true) return NONE;
    if (made.some(({ nos }) => nos.includes(change.nos[0]!))) continue;
    const next = quick(wantedBy([...made, change]));
    if (least - next < LEAST) continue;
    made.push({ ...change, saved: least - next });
    least = next;
  }
  if (made.length === 0) return NONE;
  const full = (wanted: Wanted) => cost(wanted, new Map(), control);
  const saved = full(new Map()) - full(wantedBy(made));
  return saved < LEAST ? NONE : { changes: made, saved };
}

/** The same openings with these segments wanted, as if somebody had typed them; no wood is planned. */
export function withSegments(taken: Takeoff, wanted: Wanted): Takeoff {
  const openings = taken.openings.map(({ no, opening, cells }) => {
    const segmentsWanted = wanted.get(no);
    if (segmentsWanted === undefined) return { ...opening, no };
    return { ...opening, no, segmentsWanted, listed: listedCells(opening, cells) };
  });
  const cells = taken.openings.map((row) => ({
    ...row.cells,
    ...(wanted.has(row.no) ? { segmentsWanted: wanted.get(row.no)! } : {}),
  }));
  return takeoff(openings, taken.standards, { cells, numbersGiven: taken.numbersGiven });
}

/** What boards and all work cost. A wood that was planned before with the same pieces is looked up. */
function costWith(taken: Takeoff, known: Map<string, number>, control: BoardControl): number {
  const woods = new Map<string, WoodPart[]>();
  for (const part of partsOf(taken)) {
    const key = `${part.species.toLowerCase()}|${part.thickness}`;
    woods.set(key, [...(woods.get(key) ?? []), part]);
  }
  const work = taken.openings.reduce((sum, { cost, share }) => sum + (cost?.labor ?? 0) + (share?.money ?? 0), 0);
  return [...woods.values()].reduce((sum, parts) => {
    const key = JSON.stringify(parts.map((part) => ({ ...part, for: '' })));
    let cost = known.get(key);
    if (cost === undefined) {
      const { plans, problems } = planBoards(parts, taken.standards, {
        ...control,
        work: control.work ?? workFor(parts.length),
      });
      // A piece that no board holds is no way to save.
      cost = plans.reduce((total, plan) => total + plan.cost, 0) + PROBLEM * problems.length;
      known.set(key, cost);
    }
    return sum + cost;
  }, work);
}

/** More than any job costs. */
const PROBLEM = 1e9;

/** The other numbers that were weighed for rings alike, most wood first. */
function changesOf({ openings }: Takeoff): Omit<SegmentSaving, 'saved'>[] {
  const alike = new Map<string, { rows: OpeningTakeoff[]; feet: number }>();
  for (const row of openings) {
    const { own, inputs, ownCost } = row;
    const [plan, second] = own?.rings ?? [];
    if (!own || !inputs || !ownCost || plan === undefined || second !== undefined) continue;
    if (inputs.segmentsWanted !== null) continue;
    const { ring, blank } = plan;
    const key = JSON.stringify([own.stock, ring.inside, inputs.face, ring.blankAngle, blank.chosen.segments]);
    const group = alike.get(key) ?? { rows: [], feet: 0 };
    group.rows.push(row);
    group.feet += ownCost.boardFeet;
    alike.set(key, group);
  }
  return [...alike.values()]
    .sort((one, other) => other.feet - one.feet)
    .flatMap(({ rows }) => {
      const { chosen, weighed } = rows[0]!.own!.crown!.blank;
      const of = { nos: rows.map(({ no }) => no), marks: rows.map(({ opening }) => markOrRow(opening)) };
      return weighed
        .filter(({ segments }) => segments !== chosen.segments)
        .map(({ segments }) => ({ ...of, from: chosen.segments, to: segments }));
    })
    .slice(0, MOST_CHANGES);
}
