import type { Problem } from './problem';

/** Lanes side by side on a board of one width: the class each may be as wide as, widest first. */
export type Lanes = readonly number[];

/** More sets of lanes than this, or more steps to find them, and lanes are told apart more coarsely. */
const MOST_SETS = 2_000;
const MOST_STEPS = 100_000;

/** The sets of lanes for the boards of one width. */
export interface LaneSets {
  readonly width: number;
  readonly sets: readonly Lanes[];
}

/**
 * All sets of two or more lanes that a board of each width can be ripped into, leaving out those that another set has a place
 * for: no lane could be wider, none could be added.
 *
 * Where there are too many, neighboring widths are counted as one: for a plan as the wider, so that each set fits; for a bound
 * as the narrower to fit and the wider to hold, so that nothing that fits is lost.
 */
export function laneSets(problem: Problem, purpose: 'plan' | 'bound'): LaneSets[] {
  const { classes, boards, hair } = problem;
  const widths = [...new Set(boards.map(({ width }) => width))];
  return widths.map((width) => {
    const fitting = classes.filter((each) => each.width <= width + hair);
    for (let together = 1; ; together *= 2) {
      const lanes: { fits: number; holds: number }[] = [];
      fitting.forEach((each, at) => {
        const next = fitting[at + 1];
        // Classes of one width are one lane width.
        if (next !== undefined && next.width - each.width <= hair / 10) return;
        lanes.push({ fits: each.width, holds: at });
      });
      const grouped = lanes.flatMap((lane, at) => {
        if (at % together < together - 1 && at < lanes.length - 1) return [];
        const narrowest = lanes[at - (at % together)]!;
        return [{ holds: lane.holds, fits: purpose === 'plan' ? lane.fits : narrowest.fits }];
      });
      const sets = fillAcross(grouped, width, problem);
      if (sets !== null) return { width, sets };
    }
  });
}

/** Null where there are too many. */
function fillAcross(
  lanes: readonly { fits: number; holds: number }[],
  width: number,
  { kerf, hair }: Problem,
): Lanes[] | null {
  const sets: Lanes[] = [];
  const chosen: number[] = [];
  let steps = 0;
  /** Lanes no wider than `widest`, in what is left of the width, a saw cut more counted to the board. */
  const choose = (widest: number, left: number): boolean => {
    let some = false;
    if (++steps > MOST_STEPS) return false;
    for (let at = widest; at >= 0; at--) {
      if (lanes[at]!.fits + kerf > left + hair) continue;
      some = true;
      chosen.push(at);
      const goOn = choose(at, left - lanes[at]!.fits - kerf);
      chosen.pop();
      if (!goOn) return false;
    }
    // The narrowest lane has no place any more.
    if (some || chosen.length < 2 || lanes[0]!.fits + kerf <= left + hair) return true;
    const couldBeWider = chosen.some(
      (at) => at + 1 < lanes.length && lanes[at + 1]!.fits - lanes[at]!.fits <= left + hair,
    );
    if (!couldBeWider) sets.push(chosen.map((at) => lanes[at]!.holds));
    return sets.length <= MOST_SETS;
  };
  if (lanes.length > 0 && !choose(lanes.length - 1, width + kerf)) return null;
  return sets;
}
