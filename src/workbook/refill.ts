import { ENDS, HEAD_SHAPES } from '../head/head';
import type { CellValue, Opening, OpeningField, OpeningInputs, Table } from '../schedule/opening';
import type { Unit } from '../unit';
import { INPUT_KEYS, isFilledIn } from './columns/opening';
import type { Cell } from './sheet';
import { TAKEOFF_COLUMNS } from './takeoffColumns';
import { lengthsIn } from './takeoffLengths';

/**
 * Filling a workbook again keeps what its user did to the takeoff: inputs changed by hand, and columns of their own. Rows
 * are matched by source row and the list's mark. Which inputs were changed is told from the column "As filled", where each
 * row keeps what the list gave.
 */

/** One input changed by hand in the workbook. */
export interface Edit {
  readonly row: number;
  readonly mark: string;
  readonly field: OpeningField;
  readonly value: string | number | null;
  readonly was: string | number | null;
}

/** A column of the user's own, by source row and mark. */
export interface OwnColumn {
  readonly heading: string;
  readonly cells: ReadonlyMap<string, OwnCell>;
}

interface OwnCell {
  readonly value: string | number;
  /** `=…`; good only while the row stands where it stood. */
  readonly formula: string | null;
  readonly sheetRow: number;
}

export interface Kept {
  readonly edits: readonly Edit[];
  readonly ownColumns: readonly OwnColumn[];
}

function keyOf(row: unknown, mark: unknown): string {
  return JSON.stringify([Number(row), String(mark ?? '')]);
}

/**
 * What the user did to a takeoff since it was filled. `values` and `formulas` are the sheet as it stands, the latter with
 * `=…` where a cell holds a formula. Lengths come in `unit`, whichever the sheet is kept in. A sheet without our headings
 * holds nothing to keep.
 */
export function keptFrom(values: Table, formulas: Table, unit: Unit): Kept {
  const at = values.rows.findIndex((row) => row[0] === TAKEOFF_COLUMNS[0]!.heading);
  const headings = (at < 0 ? [] : values.rows[at]!).map((cell) => String(cell ?? ''));
  const column = new Map(TAKEOFF_COLUMNS.map(({ key, heading }) => [key, headings.indexOf(heading)]));
  const filledAt = column.get('filled') ?? -1;
  const markAt = column.get('mark') ?? -1;
  if (filledAt < 0 || markAt < 0) return { edits: [], ownColumns: [] };

  const inUnit = lengthsIn(unit, values, at);
  const known = new Set(column.values());
  const own = headings.flatMap((heading, index) =>
    known.has(index) ? [] : [{ index, heading, cells: new Map<string, OwnCell>() }],
  );
  const edits: Edit[] = [];
  for (let index = at + 1; index < values.rows.length; index++) {
    const cells = values.rows[index]!;
    const [row] = cells;
    if (typeof row !== 'number') continue;
    const filled = readFilled(cells[filledAt]);
    if (filled === null) continue;
    const mark = String(filled[INPUT_KEYS.indexOf('mark')] ?? '');
    INPUT_KEYS.forEach((field, place) => {
      const cell = column.get(field)!;
      const formula = formulas.rows[index]?.[cell];
      if (typeof formula === 'string' && isFilledIn(field, formula)) return;
      const value = plain(cells[cell]);
      const was = filled[place] ?? null;
      if (same(field, value, was)) return;
      edits.push({ row, mark, field, value: inUnit(field, value), was: inUnit(field, was) });
    });
    for (const { index: place, cells: kept } of own) {
      const value = plain(cells[place]);
      const formula = formulas.rows[index]?.[place];
      const live = typeof formula === 'string' && formula.startsWith('=') ? formula : null;
      if (value !== null || live)
        kept.set(keyOf(row, mark), { value: value ?? '', formula: live, sheetRow: values.firstRow + index });
    }
  }
  return {
    edits,
    ownColumns: own.filter(({ cells }) => cells.size > 0).map(({ heading, cells }) => ({ heading, cells })),
  };
}

function readFilled(cell: CellValue | undefined): (string | number | null)[] | null {
  if (typeof cell !== 'string' || !cell.startsWith('[')) return null;
  try {
    const read: unknown = JSON.parse(cell);
    return Array.isArray(read) ? (read as (string | number | null)[]) : null;
  } catch {
    return null; // changed by hand: nothing can be told of this row
  }
}

function plain(cell: CellValue | undefined): string | number | null {
  if (cell === null || cell === undefined || cell === '') return null;
  return typeof cell === 'number' || typeof cell === 'string' ? cell : String(cell);
}

/** A blank leg is written as 0, and a grid may give a figure back with its last digit rounded. */
function same(field: OpeningField, value: string | number | null, was: string | number | null): boolean {
  if (value === was || (value === null && was === '')) return true;
  if (field === 'leg' && value === 0 && was === null) return true;
  return typeof value === 'number' && typeof was === 'number' && Math.abs(value - was) <= 1e-12 * Math.abs(was);
}

export interface Reapplied {
  readonly openings: readonly Opening[];
  /** Sentences: what was kept, and what could not be. */
  readonly said: readonly string[];
}

/** The openings with the edits put in again. An edit whose row is gone is said, not dropped in silence. */
export function reapply(openings: readonly Opening[], edits: readonly Edit[]): Reapplied {
  const said: string[] = [];
  const byRow = new Map<string, Edit[]>();
  for (const edit of edits) {
    const key = keyOf(edit.row, edit.mark);
    byRow.set(key, [...(byRow.get(key) ?? []), edit]);
  }
  const next = openings.map((opening): Opening => {
    const key = keyOf(opening.row, opening.mark);
    const own = byRow.get(key);
    byRow.delete(key);
    if (own === undefined) return opening;
    const taken = own.filter((edit) => {
      const fits = fitting(edit);
      const listed = opening[edit.field] ?? 'nothing';
      said.push(
        fits
          ? `${name(opening)}: kept ${edit.field} ${edit.value ?? 'blank'} from the workbook; the list says ${listed}.`
          : `${name(opening)}: the workbook's ${edit.field} "${edit.value}" can't be used; the list says ${listed}.`,
      );
      return fits;
    });
    if (taken.length === 0) return opening;
    const changes = Object.fromEntries(taken.map(({ field, value }) => [field, value]));
    const { rough, ...rest } = opening;
    const stillRough = Object.fromEntries(Object.entries(rough ?? {}).filter(([field]) => !(field in changes)));
    return {
      ...rest,
      ...changes,
      listed: inputsOf(opening),
      ...(Object.keys(stillRough).length > 0 ? { rough: stillRough } : {}),
      problems: opening.problems.filter(({ field }) => (changes[field] ?? null) === null),
    };
  });
  for (const own of byRow.values()) {
    for (const { row, mark, field, value } of own) {
      said.push(
        `Row ${row} ${mark}: ${field} ${value ?? 'blank'} was changed in the workbook, but the list has no such row now.`,
      );
    }
  }
  return { openings: next, said };
}

function inputsOf(opening: Opening): OpeningInputs {
  return Object.fromEntries(INPUT_KEYS.map((key) => [key, opening[key]])) as unknown as OpeningInputs;
}

const WORDS: Partial<Record<OpeningField, readonly string[]>> = { head: HEAD_SHAPES, ends: ENDS };
const TEXTS: ReadonlySet<OpeningField> = new Set(['mark', 'species', 'profile']);

/** Whether a cell's value is one the input can have at all; whether it makes sense is the takeoff's to say. */
function fitting({ field, value }: Edit): boolean {
  if (value === null) return field !== 'mark';
  const words = WORDS[field];
  if (words) return words.includes(String(value));
  return TEXTS.has(field) ? typeof value === 'string' : typeof value === 'number';
}

function name(opening: Opening): string {
  return opening.mark === '' ? `Row ${opening.row}` : opening.mark;
}

/** The user's own cells beside an opening that now stands in this row of the sheet. */
export function ownCells(columns: readonly OwnColumn[], opening: Opening, sheetRow: number): (Cell | null)[] {
  return columns.map(({ cells }) => {
    const cell = cells.get(keyOf(opening.row, (opening.listed ?? opening).mark));
    if (cell === undefined) return null;
    const { value, formula } = cell;
    const live = formula !== null && cell.sheetRow === sheetRow ? { formula: formula.slice(1) } : {};
    return { value, style: 'text', ...live };
  });
}
