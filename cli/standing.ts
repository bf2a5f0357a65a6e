import { readFile } from 'node:fs/promises';
import { isDeepStrictEqual } from 'node:util';
import { readJob } from '../src/workbook/jobBlock';
import type { Job } from '../src/job/fields';
import { ok, refuse, type Result } from '../src/result';
import type { Table } from '../src/schedule/opening';
import type { Standards } from '../src/standards';
import { readBook, type ReadBook } from '../src/workbook/readBook';
import { readStandards } from '../src/workbook/readStandards';
import { keptFrom, type Before } from '../src/workbook/refill';
import type { Book, BookSheet, Cell } from '../src/workbook/sheet';
import { reason } from './files';

/** A takeoff that stands where a workbook is to be written. */
export interface Standing {
  readonly before: Before;
  /** The shop's settings and the job as they stand in it. */
  readonly standards: Standards;
  readonly job: Job;
  /** The small texts kept with it. */
  readonly settings: Book['settings'];
  /** Its sheets that a filling doesn't write. */
  readonly others: readonly string[];
}

/** Sheets that every filling writes anew. */
const FILLED = ['Takeoff', 'Stock', 'Setups', 'Schedule', 'Standards', 'Working'];

const IN_THE_WAY = 'name another file with --out, or add --replace to write over it';

/** The takeoff in the file that `--out` names; null where no file is, or an empty one. Refused: a file that is no takeoff of ours. */
export async function readStanding(path: string): Promise<Result<Standing | null>> {
  const bytes = await readFile(path).catch((error: NodeJS.ErrnoException) => error);
  if (bytes instanceof Error) {
    return bytes.code === 'ENOENT'
      ? ok(null)
      : refuse(`"${path}" can't be read before it is written: ${reason(bytes)}.`);
  }
  if (bytes.length === 0) return ok(null);
  const book = readBook(bytes);
  if (!book.ok) return refuse(`"${path}" is there and can't be read (${book.message}): ${IN_THE_WAY}.`);
  const standardsSheet = book.value.sheets.find(({ name }) => name === 'Standards');
  const before = beforeIn(book.value);
  if (!book.value.ours || !before || !standardsSheet)
    return refuse(`"${path}" is there and holds no takeoff that can be filled again: ${IN_THE_WAY}.`);
  const table = tableOf(standardsSheet, valueIn);
  const standards = readStandards(table);
  if (!standards.ok) return refuse(`"${path}" can't be filled again. ${standards.message}`);
  const job = readJob(table);
  if (!job.ok) return refuse(`"${path}" can't be filled again. ${job.message}`);
  const others = book.value.sheets.map(({ name }) => name).filter((name) => !FILLED.includes(name));
  return ok({ before, standards: standards.value, job: job.value, settings: book.value.settings, others });
}

/** A takeoff workbook's sheets as filling again needs them; null: it has no Takeoff. */
export function beforeIn({ sheets }: ReadBook): Before | null {
  const sheet = (name: string) => sheets.find((each) => each.name === name);
  const [takeoff, schedule, stock] = [sheet('Takeoff'), sheet('Schedule'), sheet('Stock')];
  if (takeoff === undefined) return null;
  return {
    values: tableOf(takeoff, valueIn),
    formulas: tableOf(takeoff, (cell) => (cell.formula === undefined ? valueIn(cell) : `=${cell.formula}`)),
    schedule: schedule ? tableOf(schedule, valueIn) : null,
    stock: stock ? tableOf(stock, valueIn) : null,
  };
}

type Value = string | number | boolean | null;

const valueIn = ({ value }: Cell): Value => (value === '' ? null : value);

function tableOf({ name, rows }: BookSheet, of: (cell: Cell) => Value): Table {
  return { name, firstRow: 1, rows: [...rows].map((row) => row.map((cell) => (cell ? of(cell) : null))) };
}

/** Why a takeoff can't be filled again in its file: sheets that only a spreadsheet program can keep beside it. Null: it can. */
export function unfitToFillAgain(path: string, { others }: Standing, written: readonly string[]): string | null {
  const kept = others.filter((name) => !written.includes(name));
  return kept.length === 0
    ? null
    : `"${path}" also holds ${kept.join(', ')}, which would be lost: fill it again in the pane, ${IN_THE_WAY}.`;
}

/**
 * Why another workbook can't be written over this takeoff: it was changed by hand. Null: it was not, and a run like the one before
 * loses nothing.
 */
function changedByHand(path: string, standing: Standing, standards: Standards): string | null {
  const { edits, extras, typedOver, ownColumns } = keptFrom(standing.before, standing.standards.unit);
  const mine = ['Check', 'Proposal', 'Revision'];
  const changed = [
    ...edits.map(({ mark, no }) => (mark === '' ? `opening ${no}` : mark)),
    ...extras.map(({ mark, kind }) => `${mark} ${kind}s`),
    ...typedOver.map(({ mark, heading }) => `${mark} ${heading}`),
    ...ownColumns.map(({ heading }) => `the column ${heading}`),
    ...standing.others.filter((name) => !mine.includes(name)).map((name) => `the sheet ${name}`),
    ...(isDeepStrictEqual(standing.standards, standards) ? [] : ['the Standards sheet']),
  ];
  if (changed.length === 0) return null;
  const first = changed.slice(0, 3).join(', ');
  const more = changed.length > 3 ? ` and ${changed.length - 3} more` : '';
  return `"${path}" is a takeoff with changes that would be lost (${first}${more}): ${IN_THE_WAY}.`;
}

/** The same for the file that a command with sheets of another kind is to write; null too where no takeoff of ours stands there. */
export async function lostByHand(out: string | undefined, standards: Standards): Promise<string | null> {
  if (out === undefined) return null;
  const standing = await readStanding(out);
  return standing.ok && standing.value ? changedByHand(out, standing.value, standards) : null;
}
