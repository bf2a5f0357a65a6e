import {
  blankOpening,
  type Opening,
  type OpeningInputs,
  type Problem,
  type Schedule,
} from '../../../src/schedule/opening';

/** A complete segmental opening, 36 wide and 6 high, with changes. */
export function opening(changes: Partial<OpeningInputs & { row: number; problems: readonly Problem[] }> = {}): Opening {
  return {
    ...blankOpening(2),
    mark: 'W1',
    head: 'segmental',
    span: 36,
    rise: 6,
    ...changes,
  };
}

export function scheduleOf(openings: readonly Opening[]): Schedule {
  return { name: 'List', headings: ['Mark'], meaning: ['mark'], headingRow: 1, remarks: [], openings, passedOver: [] };
}
