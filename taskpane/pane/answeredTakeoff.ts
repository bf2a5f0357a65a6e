import type { Result } from '../../src/result';
import { rowsNamed } from '../../src/schedule/asked';
import { FIELD_KINDS } from '../../src/schedule/fieldKinds';
import type { Answers, OpeningField, Table } from '../../src/schedule/opening';
import type { Standards } from '../../src/standards';
import { revisedList } from '../../src/workbook/revisedList';
import { fixOpening } from './fix';
import type { ListRead } from './state';

/** A Takeoff of ours as a list, with what was typed for the fields of its openings. */
export function answeredTakeoff(table: Table, standards: Standards, answers: Answers): Result<ListRead> {
  const list = revisedList([table], table.name, standards);
  if (!list.ok) return list;
  const openings = [...list.value.schedule.openings];
  for (const [key, text] of Object.entries(answers)) {
    const named = rowsNamed(key);
    if (named === null || !Object.hasOwn(FIELD_KINDS, named.of)) continue;
    openings.forEach((opening, at) => {
      if (!named.rows.includes(opening.at ?? String(opening.row))) return;
      const fixed = fixOpening(openings, at, named.of as OpeningField, text, standards);
      if (fixed.ok) openings[at] = fixed.value;
    });
  }
  return { ok: true, value: { ...list.value.schedule, openings } };
}
