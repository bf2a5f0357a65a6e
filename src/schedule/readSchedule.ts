import { ok, refuse, type Result } from '../result';
import type { Standards } from '../standards';
import { BodyReader } from './body';
import { isRowEmpty } from './cell';
import { quote } from './figure';
import { findLayout, layoutFromChoices, type Choices, type Layout } from './layout';
import type { Opening, Schedule, Table } from './opening';
import { readRow } from './readRow';
import { settle } from './settle';
import { readTableNotes } from './tableNotes';

/**
 * A builder's schedule from a table: finds the headings, sorts the rows, reads every opening. Each row of the table is
 * either an opening or in `passedOver` with the reason; `choices` says what a column (from 0) means where the heading
 * does not. Refused only where no headings can be found and no choices are given. Lengths come out in `standards.unit`.
 */
export function readSchedule(table: Table, standards: Standards, choices: Choices = {}): Result<Schedule> {
  const rows = table.rows;
  const chosen = Object.keys(choices).length > 0;
  const found = findLayout(rows, 0, choices);
  if (found === null && !chosen) return refuse(noHeadings(table));
  const layout = found ?? layoutFromChoices(rows, choices);
  const notes = readTableNotes(rows, layout.headingRows[0] ?? 0, standards.unit);
  const settled = (one: Layout) => settle(one, rows, { notes, choices, unit: standards.unit });
  const first = settled(layout);
  const reader = new BodyReader(table, choices, first, settled);
  reader.readAll(layout.headingRows.length > 0);
  return ok({
    name: table.name,
    headings: first.columns.map(({ heading }) => heading),
    meaning: first.columns.map(({ key }) => key),
    headingRow: layout.headingRows.length === 0 ? null : table.firstRow + (layout.headingRows.at(-1) ?? 0),
    remarks: [...(table.remarks ?? []), ...notes.remarks],
    openings: withRepeatedMarks(reader.raw.map((raw) => readRow(raw, standards))),
    passedOver: reader.passedOver,
  });
}

/** Marks name openings: the second and later rows with the same mark say so. */
function withRepeatedMarks(openings: readonly Opening[]): readonly Opening[] {
  const firstRow = new Map<string, number>();
  return openings.map((opening) => {
    const mark = opening.mark.toLowerCase().replace(/\s+/g, ' ');
    if (mark === '') return opening;
    const before = firstRow.get(mark);
    if (before === undefined) {
      firstRow.set(mark, opening.row);
      return opening;
    }
    const message = `The mark ${quote(opening.mark)} already stands in row ${before}; please say whether both rows are wanted.`;
    return { ...opening, problems: [...opening.problems, { row: opening.row, field: 'mark', message }] };
  });
}

function noHeadings(table: Table): string {
  if (table.rows.every(isRowEmpty)) return `${quote(table.name)} is empty.`;
  return (
    `No headings were found in ${quote(table.name)}: a schedule needs one row that names its columns, ` +
    'among them the width, the size or the radius of the openings.'
  );
}
