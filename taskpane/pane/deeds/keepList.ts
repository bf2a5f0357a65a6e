import type { MeaningKey } from '../../../src/schedule/meanings';
import type { Table } from '../../../src/schedule/opening';
import { hasOurColumns } from '../../../src/workbook/takeoff/read';
import type { AnswersGiven, PaneState } from '../state';
import type { Bench } from './bench';
import { readAgain } from './chooseList';

const KEY = 'archwright.list';
/** After a change so long is waited for more of them. */
const GATHER_MS = 400;

/** The list with what was chosen, answered and typed: all that the openings follow from. */
interface KeptList {
  readonly table: Table;
  readonly choices: Readonly<Record<number, MeaningKey>>;
  readonly answers: AnswersGiven;
  readonly ours: boolean;
  readonly scheduleStands: boolean;
  readonly plain: boolean;
}

/** Keeps the list with the workbook whenever it changes. Gives back the way to stop. */
export function keepList({ store, host }: Bench): () => void {
  let last: PaneState = store.get();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const leave = store.listen(() => {
    const now = store.get();
    const same = (['table', 'choices', 'answers', 'plain'] as const).every((key) => now[key] === last[key]);
    last = now;
    if (same || now.table === null) return;
    clearTimeout(timer);
    timer = setTimeout(() => {
      const { table, choices, answers, ours, scheduleStands, plain } = store.get();
      const list = { table, choices, answers, ours, scheduleStands, plain };
      if (table) void host.saveSetting(KEY, JSON.stringify(list, written));
    }, GATHER_MS);
  });
  return () => {
    clearTimeout(timer);
    leave();
  };
}

/** The list that was kept with the workbook, read again by its standards; what can't be read is left alone. */
export async function resumeList(bench: Bench): Promise<void> {
  const kept = await bench.host.readSetting(KEY);
  if (!kept.ok || bench.store.get().table !== null) return;
  if (kept.value === null) return resumeTakeoff(bench);
  let list: KeptList;
  try {
    list = JSON.parse(kept.value, read) as KeptList;
  } catch {
    return;
  }
  if (!Array.isArray(list.table?.rows)) return;
  const { table, choices = {}, answers = {}, ours = false, scheduleStands = false, plain = false } = list;
  bench.store.send({ type: 'list resumed', table, choices, answers, ours, scheduleStands, plain });
  if (await readAgain(bench)) bench.store.send({ type: 'stepped', step: 'openings' });
}

/** A workbook that the pane did not fill, by the command say, holds no list: its Takeoff is one, as it stands. */
async function resumeTakeoff(bench: Bench): Promise<void> {
  const names = await bench.host.sheetNames();
  if (!names.ok || !names.value.includes('Takeoff')) return;
  const table = await bench.host.readSheet('Takeoff');
  if (!table.ok || table.value === null || !hasOurColumns(table.value)) return;
  const plain = names.value.includes('Working');
  const itself = { table: table.value, choices: {}, answers: {}, ours: true, scheduleStands: true };
  bench.store.send({ type: 'list resumed', ...itself, plain });
  if (await readAgain(bench)) bench.store.send({ type: 'stepped', step: 'openings' });
}

/** Dates and maps, which JSON has no word for. `this` is what holds the value: a date is a text by now. */
function written(this: unknown, key: string, value: unknown): unknown {
  const held = (this as Record<string, unknown>)[key];
  if (held instanceof Date) return { $date: held.toISOString() };
  if (value instanceof Map) return { $map: [...(value as Map<unknown, unknown>)] };
  return value;
}

function read(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if ('$date' in value) return new Date(String(value.$date));
  if ('$map' in value) return new Map(value.$map as [unknown, unknown][]);
  return value;
}
