import { rowsNamed } from '../../../src/schedule/asked';
import { markOrRow, type Opening, type OpeningField } from '../../../src/schedule/opening';
import { fieldOf } from '../fields';
import { withPoint } from '../format';
import { answersOf, type Answered } from '../state';
import { fail, type Bench } from './bench';

/** By which the field of an opening is answered. */
export function answerKey({ row, at, countedAt }: Place, field: OpeningField): string {
  const counted = field === 'quantity' ? countedAt : undefined;
  return `${field}@${counted ?? at ?? row}`;
}

type Place = Pick<Opening, 'row' | 'at' | 'countedAt'>;

/** Whether an answer is one for this opening by itself. */
function isOf(key: string, { row, at, countedAt }: Place): boolean {
  return [at ?? String(row), countedAt].some((place) => place !== undefined && key.endsWith(`@${place}`));
}

/** Reads the list again with these answers beside those given before; null takes one back. Gives whether it could be. */
export async function answer(bench: Bench, given: Readonly<Record<string, Answered | null>>): Promise<boolean> {
  const { core, store } = bench;
  const { table, standards, choices, answers, ours } = store.get();
  if (!table) return false;
  const kept = Object.entries(answers).filter(([key]) => !Object.hasOwn(given, key));
  const added = Object.entries(given).flatMap(([key, one]) => (one === null ? [] : [[key, one] as const]));
  // The last answer stands where two are about one row.
  const next = Object.fromEntries([...kept, ...added]);
  const schedule = await core.readSchedule(table, standards, choices, answersOf(next), ours);
  if (!schedule.ok) {
    fail(bench, schedule.message);
    return false;
  }
  store.send({ type: 'answered', answers: next, schedule: schedule.value });
  return true;
}

/** One answer for every row of a question; a question of single rows is answered row by row, so that each can be taken back. */
export function answersTo(id: string, text: string, about: string): Readonly<Record<string, Answered>> {
  const named = rowsNamed(id);
  const keys = named === null ? [id] : named.rows.map((row) => `${named.of}@${row}`);
  return Object.fromEntries(keys.map((key) => [key, { text, about }]));
}

/**
 * A figure typed in place of what the schedule gave; taken by the schedule's own rules or refused in a sentence. A bare
 * figure is in the workbook's unit.
 */
export async function fixOpening(bench: Bench, at: number, field: OpeningField, text: string): Promise<boolean> {
  const { core, store, options } = bench;
  const { schedule, standards } = store.get();
  const opening = schedule?.openings[at];
  if (!schedule || !opening) return false;
  const key = answerKey(opening, field);
  const typed = await core.typed(schedule.openings, at, field, withPoint(text, options.locale), standards.unit);
  if (!typed.ok) {
    store.send({ type: 'answer refused', key, message: typed.message });
    return false;
  }
  return answer(bench, { [key]: { text: typed.value, about: `${fieldOf(field).label} of ${markOrRow(opening)}` } });
}

/** Whether anything was answered or typed for this opening by itself. */
export function isAnswered(answers: Readonly<Record<string, Answered>>, opening: Opening): boolean {
  return Object.keys(answers).some((key) => isOf(key, opening));
}

/** An opening as the list gives it, before anything was typed. */
export function putBack(bench: Bench, opening: Opening): Promise<boolean> {
  const keys = Object.keys(bench.store.get().answers).filter((key) => isOf(key, opening));
  return answer(bench, Object.fromEntries(keys.map((key) => [key, null])));
}
