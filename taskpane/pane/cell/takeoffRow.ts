import { readEnds, readHead } from '../../../src/head/words';
import { NOT_GIVEN, type CellValue, type Opening, type Table } from '../../../src/schedule/opening';
import type { Unit } from '../../../src/unit';
import { TAKEOFF_COLUMNS } from '../../../src/workbook/takeoffColumns';
import { lengthsIn } from '../../../src/workbook/takeoffLengths';

/**
 * The opening in a row (from 1) of the Takeoff sheet as it stands there now, edits included, its lengths in `unit`; null
 * where there is none.
 */
export function openingInRow(table: Table, row: number, unit: Unit): Opening | null {
  const headings = TAKEOFF_COLUMNS.map((column) => column.heading);
  const at = table.rows.findIndex((cells) => headings.slice(0, 4).every((heading) => cells.includes(heading)));
  const cells = table.rows[row - table.firstRow];
  // The row of units stands below the headings.
  if (at < 0 || !cells || row - table.firstRow <= at + 1) return null;
  const head = table.rows[at] ?? [];
  const cell = (key: string): CellValue => {
    const heading = TAKEOFF_COLUMNS.find((column) => column.key === key)?.heading ?? key;
    const column = head.indexOf(heading);
    return column < 0 ? null : (cells[column] ?? null);
  };
  const text = (key: string) => {
    const value = cell(key);
    return value === null || value === '' ? null : String(value);
  };
  const inUnit = lengthsIn(unit, table, at);
  const figure = (key: string) => {
    const value = inUnit(key, cell(key));
    return typeof value === 'number' && Number.isFinite(value) ? value : null;
  };
  const source = figure('row');
  if (source === null) return null;
  const shape = readHead(text('head') ?? '');
  const ends = readEnds(text('ends') ?? '');
  return {
    row: source,
    source: [],
    notes: [],
    problems: [],
    mark: text('mark') ?? '',
    quantity: figure('quantity'),
    head: shape.ok ? shape.value : null,
    span: figure('span'),
    rise: figure('rise'),
    reveal: figure('reveal'),
    face: figure('face'),
    thickness: figure('thickness'),
    species: text('species'),
    ends: ends.ok ? ends.value : null,
    leg: figure('leg'),
    profile: text('profile'),
    ...NOT_GIVEN,
  };
}
