import type { Opening, OpeningInputs, Problem, Schedule } from '../../src/schedule/opening';

/** A complete segmental opening, 36 wide and 6 high, with changes. */
export function opening(changes: Partial<OpeningInputs & { row: number; problems: readonly Problem[] }> = {}): Opening {
  return {
    row: 2,
    source: [],
    notes: [],
    problems: [],
    mark: 'W1',
    quantity: 1,
    head: 'segmental',
    span: 36,
    rise: 6,
    reveal: null,
    face: null,
    thickness: null,
    species: null,
    ends: null,
    leg: null,
    profile: null,
    ...changes,
  };
}

export function scheduleOf(openings: readonly Opening[]): Schedule {
  return { name: 'List', headings: ['Mark'], meaning: ['mark'], headingRow: 1, remarks: [], openings, passedOver: [] };
}
