import type { Extra } from '../../extras';
import { readEnds, readHead } from '../../head/words';
import { blankOpening, type Opening, type OpeningField, type Problem, type Table } from '../../schedule/opening';
import { doubtIn } from '../../takeoff/row';
import type { Unit } from '../../unit';
import { readExtras } from './extras';
import { readTakeoff } from './read';

const WORDS: ReadonlySet<OpeningField> = new Set(['mark', 'place', 'remarks', 'species', 'profile']);

/** The openings of a Takeoff sheet as they stand, under their numbers, lengths in `unit`; null where the sheet is none of ours. */
export function openingsOfTakeoff(table: Table, unit: Unit): Opening[] | null {
  const rows = readTakeoff(table, null, unit);
  if (rows === null) return null;
  const extras = new Map<number, Extra[]>();
  for (const { no, kind, each, listed } of readExtras(table)) {
    const changed = each === listed ? {} : { listed };
    extras.set(no, [...(extras.get(no) ?? []), { kind, each, ...changed }]);
  }
  return rows.map(({ no, sheetRow, inputs }) => {
    const problems: Problem[] = [];
    const read = Object.entries(inputs).map(([name, cell]) => {
      const field = name as OpeningField;
      const doubt = doubtIn(cell);
      const value = doubt === null ? inputFrom(field, cell) : null;
      if (doubt !== null) problems.push({ row: sheetRow, field, message: doubt });
      else if (value === undefined) problems.push({ row: sheetRow, field, message: `"${cell}" is no ${field}.` });
      return [field, value ?? (field === 'mark' ? '' : null)] as const;
    });
    const own = extras.get(no);
    return {
      ...blankOpening(sheetRow),
      ...Object.fromEntries(read),
      ...{ no, problems },
      ...(own === undefined ? {} : { extras: own }),
    };
  });
}

/** A cell as the input holds it; undefined where it is none. */
function inputFrom(field: OpeningField, cell: string | number | null): string | number | null | undefined {
  if (cell === null) return null;
  if (WORDS.has(field)) return String(cell);
  if (field === 'head' || field === 'ends') {
    const read = field === 'head' ? readHead(String(cell)) : readEnds(String(cell));
    return read.ok ? read.value : undefined;
  }
  return typeof cell === 'number' ? cell : undefined;
}
