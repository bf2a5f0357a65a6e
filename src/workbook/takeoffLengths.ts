import type { Table } from '../schedule/opening';
import { perInch, UNITS, type Unit } from '../unit';
import { TAKEOFF_COLUMNS } from './takeoffColumns';

const LENGTHS: ReadonlySet<string> = new Set(
  TAKEOFF_COLUMNS.filter(({ measure }) => measure === 'input length').map(({ key }) => key),
);

/**
 * How the inputs of a Takeoff sheet read in `unit`, whichever unit it was filled in: its row of units says so, below the
 * headings in `rows[headingRow]` (from 0). A figure of an input that is no length stays as it is.
 */
export function lengthsIn(unit: Unit, { rows }: Table, headingRow: number): <T>(key: string, value: T) => T | number {
  const span = rows[headingRow]?.indexOf(TAKEOFF_COLUMNS.find(({ key }) => key === 'span')!.heading) ?? -1;
  const kept = UNITS.find((each) => rows[headingRow + 1]?.[span] === each) ?? unit;
  return (key, value) =>
    kept !== unit && typeof value === 'number' && LENGTHS.has(key) ? (value / perInch(kept)) * perInch(unit) : value;
}
