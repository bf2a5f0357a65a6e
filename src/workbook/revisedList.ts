import { refuse, ok, type Result } from '../result';
import { readSchedule } from '../schedule/readSchedule';
import { chooseTable } from '../schedule/readTables';
import type { Opening, Schedule, Table } from '../schedule/opening';
import type { Standards } from '../standards';
import type { Unit } from '../unit';
import { TAKEOFF_COLUMNS } from './takeoff/columns';
import { openingsOfTakeoff } from './takeoff/openings';

/** A list to be compared, and the table it was read from. */
export interface RevisedList {
  readonly table: Table;
  readonly schedule: Schedule;
  /** It is a Takeoff of ours, its openings under their numbers. */
  readonly ours: boolean;
}

/** The openings of a file or a range: of a Takeoff of ours as it stands, changes by hand included, where there is one, else of its schedule. */
export function revisedList(tables: readonly Table[], name: string, standards: Standards): Result<RevisedList> {
  const ours = takeoffIn(tables, name, standards.unit);
  if (ours !== null) return ok({ ...ours, ours: true });
  const table = chooseTable(tables);
  if (table === null) return refuse(`"${name}" holds no table.`);
  const schedule = readSchedule(table, standards);
  return schedule.ok ? ok({ table, schedule: schedule.value, ours: false }) : schedule;
}

/** The Takeoff of ours among tables, as it stands; null where there is none. */
export function takeoffIn(tables: readonly Table[], name: string, unit: Unit): Omit<RevisedList, 'ours'> | null {
  for (const table of tables.filter(isTakeoff)) {
    const openings = openingsOfTakeoff(table, unit);
    if (openings === null) continue;
    const nothing = { headings: [], meaning: [], headingRow: null, remarks: [], passedOver: [] };
    return { table, schedule: { name, ...nothing, openings } };
  }
  return null;
}

const HEADINGS = TAKEOFF_COLUMNS.map(({ heading }) => heading);

/** A builder's schedule may begin with "No." and "Mark", too; it has not every other column of a Takeoff. */
export function isTakeoff({ rows }: Table): boolean {
  return rows.some((row) => row[0] === HEADINGS[0] && HEADINGS.every((heading) => row.includes(heading)));
}

/**
 * Whether the numbers of two Takeoffs name the same openings: the one is a later state of the other, not a workbook of its own
 * that counts from 1 as well. Then most openings of equal number have equal marks.
 */
export function numberedAlike(old: readonly Opening[], now: readonly Opening[]): boolean {
  const marks = new Map(old.flatMap(({ no, mark }) => (no === undefined ? [] : [[no, mark.trim().toLowerCase()]])));
  const both = now.filter(({ no }) => no !== undefined && marks.has(no));
  const alike = both.filter(({ no, mark }) => marks.get(no!) === mark.trim().toLowerCase());
  return 2 * alike.length > both.length;
}
