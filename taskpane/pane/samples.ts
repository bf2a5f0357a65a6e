import type { Schedule, Table } from '../../src/schedule/opening';

/** The first different cells of a column below the headings, as the user sees them: what it was understood by. */
export function samplesOf(table: Table, schedule: Schedule, column: number, most = 3): readonly string[] {
  const first = schedule.headingRow === null ? 0 : schedule.headingRow - table.firstRow + 1;
  const found: string[] = [];
  for (const row of table.rows.slice(first)) {
    const cell = row[column] ?? null;
    const text = (cell instanceof Date ? cell.toLocaleDateString() : String(cell ?? '')).trim().slice(0, 40);
    if (text !== '' && !found.includes(text)) found.push(text);
    if (found.length === most) break;
  }
  return found;
}
