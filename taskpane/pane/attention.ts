import type { Opening, OpeningField } from '../../src/schedule/opening';

/** An opening and its place in the list. */
export interface Placed {
  readonly at: number;
  readonly opening: Opening;
}

/** Openings with what needs attention first; within each part in the order of the schedule. */
export function attentionFirst(openings: readonly Opening[]): {
  readonly attention: readonly Placed[];
  readonly ready: readonly Placed[];
} {
  const attention: Placed[] = [];
  const ready: Placed[] = [];
  for (const [at, opening] of openings.entries())
    (opening.problems.length > 0 ? attention : ready).push({ at, opening });
  return { attention, ready };
}

/** The fields in trouble, each once. */
export function troubledFields(opening: Pick<Opening, 'problems'>): readonly OpeningField[] {
  return [...new Set(opening.problems.map((problem) => problem.field))];
}
