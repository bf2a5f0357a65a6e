import { countOf } from '../extras';
import { readEnds, readHead } from '../head/words';
import type { Opening, OpeningField, Table } from '../schedule/opening';
import { doubtIn, isSameCell, listedCells, rowOf, sharedMarks, type RowCell } from '../takeoff/row';
import type { Standards } from '../standards';
import type { Unit } from '../unit';
import { keptFromFirst } from './firstVersion';
import { extraEdits, nameOf, withExtras, type ExtraEdit } from './refillExtras';
import { readListed } from './scheduleSheet';
import type { Cell } from './sheet';
import { TAKEOFF_COLUMNS } from './takeoff/columns';
import { readExtras } from './takeoff/extras';
import { readTakeoff, scaleTo } from './takeoff/read';
import { isFilledIn } from './takeoff/sheet';

/**
 * Filling a workbook again keeps what its user did to the takeoff: inputs changed by hand, figures typed over, and columns of
 * their own. Openings are known by their number; what the list gave stands on the Schedule sheet under the same number.
 */

/** The two sheets as they stand in the workbook. */
export interface Before {
  /** The Takeoff's values, and the same with `=…` where a cell holds a formula. */
  readonly values: Table;
  readonly formulas: Table;
  /** The Schedule; null: it is gone, and nothing can be told of what the list gave. */
  readonly schedule: Table | null;
  /** The Stock sheet, for wood factors that are held. */
  readonly stock?: Table | null;
}

/** One input changed by hand in the workbook. */
export interface Edit {
  readonly no: number;
  readonly row: number;
  readonly mark: string;
  readonly field: OpeningField;
  readonly value: RowCell;
  readonly was: RowCell;
}

/** A figure that somebody typed over its formula. */
export interface TypedOver {
  readonly no: number;
  readonly mark: string;
  readonly heading: string;
}

/** A column of the user's own, by the openings' numbers. */
export interface OwnColumn {
  readonly heading: string;
  readonly cells: ReadonlyMap<number, OwnCell>;
}

export interface OwnCell {
  readonly value: string | number;
  /** `=…`; good only while the row stands where it stood. */
  readonly formula: string | null;
  readonly sheetRow: number;
}

/** Where an opening stood in the list that was filled. */
interface Known {
  readonly no: number;
  readonly row: number;
  readonly mark: string;
}

export interface Kept {
  readonly known: readonly Known[];
  readonly numbersGiven: number;
  readonly edits: readonly Edit[];
  readonly extras: readonly ExtraEdit[];
  readonly typedOver: readonly TypedOver[];
  readonly ownColumns: readonly OwnColumn[];
  /** Sentences on what can't be kept. */
  readonly said?: readonly string[];
  /** Of a takeoff of the first version: what each opening that was priced there sold for. */
  readonly firstPrices?: ReadonlyMap<number, number>;
}

export const NOTHING_KEPT: Kept = { known: [], numbersGiven: 0, edits: [], extras: [], typedOver: [], ownColumns: [] };

/** What the user did to a takeoff since it was filled, lengths in `unit`. Sheets that are none of ours hold nothing to keep. */
export function keptFrom({ values, formulas, schedule }: Before, unit: Unit): Kept {
  const rows = readTakeoff(values, formulas, unit);
  const read = schedule === null ? null : readListed(schedule);
  if (rows === null) return keptFromFirst(values, formulas, unit) ?? NOTHING_KEPT;
  if (read === null) return NOTHING_KEPT;
  const listed = new Map(read.listed.map((row) => [row.no, row]));
  const scale = scaleTo(unit, read.unit);
  const edits: Edit[] = [];
  const typedOver: TypedOver[] = [];
  const own = new Map<string, Map<number, OwnCell>>();
  for (const { no, sheetRow, inputs, formulas: live, own: cells } of rows) {
    const before = listed.get(no);
    if (before === undefined) continue;
    const mark = String(before.inputs.get('mark') ?? '');
    for (const { key, heading, role, measure } of TAKEOFF_COLUMNS) {
      if (role === 'figure' && !live.has(key)) typedOver.push({ no, mark: String(inputs.mark ?? ''), heading });
      if (role !== 'input') continue;
      const field = key as OpeningField;
      const formula = live.get(key);
      if (formula !== undefined && isFilledIn(formula)) continue;
      const was = before.inputs.get(field) ?? null;
      const listedValue = typeof was === 'number' && measure === 'input length' ? was * scale : was;
      if (isSameCell(inputs[field], listedValue)) continue;
      edits.push({ no, row: before.row, mark, field, value: inputs[field], was: listedValue });
    }
    for (const [heading, { value, formula }] of cells) {
      const column = own.get(heading) ?? new Map<number, OwnCell>();
      own.set(heading, column.set(no, { value: value ?? '', formula, sheetRow }));
    }
  }
  return {
    known: read.listed.map(({ no, row, inputs }) => ({ no, row, mark: String(inputs.get('mark') ?? '') })),
    numbersGiven: Math.max(read.numbersGiven, ...read.listed.map(({ no }) => no)),
    edits,
    extras: extraEdits(readExtras(values), rows, listed),
    typedOver,
    ownColumns: [...own].map(([heading, cells]) => ({ heading, cells })),
  };
}

export interface Reapplied {
  readonly openings: readonly Opening[];
  /** Sentences: what was kept, and what could not be. */
  readonly said: readonly string[];
}

/**
 * The list's openings under the numbers they had, with the edits put in again. Openings that have numbers keep them, as those of a
 * revised list that was compared have; else an opening is the one it was where row and
 * mark of the list are the same, else where its mark stands once in both; all others get new numbers. An edit whose opening is
 * gone is said, not dropped in silence.
 */
export function reapply(openings: readonly Opening[], kept: Kept, standards: Standards): Reapplied {
  const said: string[] = [...(kept.said ?? [])];
  const waiting = new Map(kept.extras.map((edit) => [`${edit.no} ${edit.kind}`, edit]));
  const numbers = numbersFor(openings, kept.known);
  const byNumber = new Map<number, Edit[]>();
  for (const edit of kept.edits) byNumber.set(edit.no, [...(byNumber.get(edit.no) ?? []), edit]);
  const isShared = sharedMarks(openings);
  const rowListed = (opening: Opening) => listedCells(opening, rowOf(opening, standards, isShared(opening.mark)));
  let next = openings.reduce((most, { no }) => Math.max(most, no ?? 0), kept.numbersGiven);
  const numbered = openings.map((listed, at): Opening => {
    const no = numbers[at] ?? ++next;
    const opening = withExtras(listed, no, waiting, said);
    const own = (byNumber.get(no) ?? []).filter((edit) => {
      if (opening.no === undefined) return true;
      // A revised list that says something else of this input now has the last word.
      const revised = rowListed(opening)[edit.field];
      if (isSameCell(revised, edit.was)) return true;
      if (!isSameCell(revised, edit.value))
        said.push(
          `${nameOf(opening)}: ${words(edit.field)} ${edit.value ?? 'blank'} from the workbook is not kept: the revised list changed it from ${edit.was ?? 'blank'} to ${revised ?? 'blank'}.`,
        );
      return false;
    });
    byNumber.delete(no);
    const taken = own.flatMap((edit) => {
      const value = fitting(edit);
      const listed = opening[edit.field] ?? 'nothing';
      said.push(
        value === undefined
          ? `${nameOf(opening)}: the workbook's ${words(edit.field)} "${edit.value}" can't be used; the list says ${listed}.`
          : `${nameOf(opening)}: kept ${words(edit.field)} ${edit.value ?? 'blank'} from the workbook; the list says ${listed}.`,
      );
      return value === undefined ? [] : [[edit.field, value] as const];
    });
    if (taken.length === 0) return { ...opening, no };
    const changes = Object.fromEntries(taken);
    const { rough, ...rest } = opening;
    const stillRough = Object.fromEntries(Object.entries(rough ?? {}).filter(([field]) => !(field in changes)));
    return {
      ...rest,
      ...changes,
      no,
      listed: rowListed(opening),
      ...(Object.keys(stillRough).length > 0 ? { rough: stillRough } : {}),
      problems: opening.problems.filter(({ field }) => !(field in changes)),
    };
  });
  for (const own of byNumber.values()) {
    for (const { row, mark, field, value } of own)
      said.push(
        `Row ${row} ${mark}: ${words(field)} ${value ?? 'blank'} was changed in the workbook, but the list has no such row now.`,
      );
  }
  for (const { mark, kind, each } of waiting.values())
    if (each !== 0)
      said.push(
        `${mark}: ${countOf(kind, each)} for each was typed in the workbook, but the list has no ${kind} there now.`,
      );
  for (const { mark, heading } of kept.typedOver)
    said.push(
      `${mark}: ${heading} had a figure typed over its formula, which is written again. Use Price agreed to set a price.`,
    );
  return { openings: numbered, said };
}

function numbersFor(openings: readonly Opening[], known: readonly Known[]): (number | undefined)[] {
  const key = (row: number, mark: string) => JSON.stringify([row, mark.toLowerCase()]);
  const byPlace = new Map(known.map(({ no, row, mark }) => [key(row, mark), no]));
  const free = new Map(known.map(({ no, mark }) => [no, mark.toLowerCase()]));
  // A revised list that was taken over says itself which openings were there.
  const said = openings.map(({ no }) => no);
  if (said.some((no) => no !== undefined)) return said;
  const found = openings.map(({ row, mark }) => {
    const no = byPlace.get(key(row, mark));
    if (no === undefined || !free.delete(no)) return undefined;
    return no;
  });
  const once = (marks: readonly string[]) => {
    const count = new Map<string, number>();
    for (const mark of marks) count.set(mark, (count.get(mark) ?? 0) + 1);
    return (mark: string) => mark !== '' && count.get(mark) === 1;
  };
  const isFree = once([...free.values()]);
  const waiting = openings.filter((_opening, at) => found[at] === undefined).map(({ mark }) => mark.toLowerCase());
  const isWaiting = once(waiting);
  const byMark = new Map([...free].map(([no, mark]) => [mark, no]));
  return openings.map(({ mark }, at) => {
    const wanted = mark.toLowerCase();
    return found[at] ?? (isFree(wanted) && isWaiting(wanted) ? byMark.get(wanted) : undefined);
  });
}

const TEXTS: ReadonlySet<OpeningField> = new Set(['mark', 'place', 'remarks', 'species', 'profile']);

/** An edit's value as the input has it; undefined where it is none that the input can have at all. */
function fitting({ field, value }: Edit): string | number | null | undefined {
  if (value === null) return field === 'mark' ? undefined : null;
  if (doubtIn(value) !== null) return undefined;
  if (field === 'head' || field === 'ends') {
    const read = field === 'head' ? readHead(String(value)) : readEnds(String(value));
    return read.ok ? read.value : undefined;
  }
  if (TEXTS.has(field)) return String(value);
  return typeof value === 'number' ? value : undefined;
}

/** An input as its column is headed, in a sentence. */
function words(field: OpeningField): string {
  return (TAKEOFF_COLUMNS.find(({ key }) => key === field)?.heading ?? field).toLowerCase();
}

/** The user's own cells beside an opening that now stands in this row of the sheet. */
export function ownCells(columns: readonly OwnColumn[], no: number, sheetRow: number): (Cell | null)[] {
  return columns.map(({ cells }) => {
    const cell = cells.get(no);
    if (cell === undefined) return null;
    const { value, formula } = cell;
    const live = formula !== null && cell.sheetRow === sheetRow ? { formula: formula.slice(1) } : {};
    return { value, style: 'text', ...live };
  });
}
