/**
 * The Takeoff changed in the workbench's grid, without a page around it: how long until all that follows from one span is
 * calculated, the first time, when the grid has yet to read every formula, and later (the middle of five); from a setting
 * that every figure rests on; how long a filling takes; and for how long nothing else could be done meanwhile. The clock
 * stops when the values stand in the cells. Beside it, in the same run and under the same grid, a workbook of the first version.
 * `npm run bench -- grid [OPENINGS…]`.
 */
import { cpus, loadavg } from 'node:os';
import { valueOf } from '../tests/value';
import { random } from '../tests/random';
import { randomOpenings, scheduleOf } from '../tests/takeoff/openings';
import type { Result } from '../src/result';
import { cellName, defaultStandards } from '../src/standards';
import { takeoff } from '../src/takeoff/takeoff';
import { workbookSheets } from '../src/workbook/workbook';
import { ARCH_FUNCTIONS } from '../taskpane/workbench/archFunctions';
import { startHeadless } from '../taskpane/workbench/headless';
import { openBook } from '../taskpane/workbench/openBook';
import { WorkbenchHost } from '../taskpane/workbench/workbenchHost';
import { firstVersion } from './lists/firstVersion';

const SPAN_OF_THE_FIRST = 'F6';
/** In seconds, on a quiet machine of two cores. */
const LATER_GOALS: Readonly<Record<number, number>> = { 100: 0.2, 300: 0.4, 1000: 1 };
const SETTING_GOALS: Readonly<Record<number, number>> = { 1000: 2 };
const FILLING_GOALS: Readonly<Record<number, number>> = { 1000: 2 };
const STANDSTILL_GOAL = 0.2;

interface Timed {
  readonly took: number;
  /** The longest time in which nothing else got its turn. */
  readonly still: number;
}

async function timed(change: () => Promise<Result<void>>, settled: () => Promise<void>): Promise<Timed> {
  let still = 0;
  let turn = performance.now();
  const see = () => {
    still = Math.max(still, performance.now() - turn);
    turn = performance.now();
  };
  const clock = setInterval(see, 1);
  const began = performance.now();
  valueOf(await change());
  await settled();
  const took = performance.now() - began;
  see();
  clearInterval(clock);
  return { took: took / 1000, still: still / 1000 };
}

async function measure(count: number): Promise<void> {
  const openings = randomOpenings(count, random(1));
  const sheets = workbookSheets(scheduleOf(openings), takeoff(openings, defaultStandards()));
  const engine = startHeadless(ARCH_FUNCTIONS);
  const host = new WorkbenchHost(engine);
  const settled = () => engine.settled();
  const spanChanged = (span: number) =>
    timed(() => host.writeCells('Takeoff', SPAN_OF_THE_FIRST, [[span]], true), settled);
  const revealAt = sheets
    .flatMap(({ names }) => names ?? [])
    .find(({ name }) => name === cellName('reveal'))!
    .ref.replace(/^.*\$C\$/, 'B');
  const filled = await timed(() => host.writeSheets(sheets, { replace: [] }), settled);
  const first = await spanChanged(41);
  const later: Timed[] = [];
  for (const span of [42, 43, 44, 45, 46]) later.push(await spanChanged(span));
  const setting = await timed(() => host.writeCells('Standards', revealAt, [[0.25]], true), settled);
  const middle = middleOf(later);
  const still = Math.max(...[first, ...later, setting].map((each) => each.still));

  console.log(
    `${count} openings${engine.calculation.handedOver === null ? '' : ` (${engine.calculation.handedOver})`}`,
  );
  const line = (what: string, took: number, goal?: number, before?: number) => {
    const seconds = (value: number) => `${value.toFixed(2)} s`.padStart(8);
    const aim = goal === undefined ? '' : `   goal ${seconds(goal)}`;
    console.log(
      `  ${what.padEnd(28)}${seconds(took)}${aim}${before === undefined ? '' : `   version 1 ${seconds(before)}`}`,
    );
  };
  const goal = LATER_GOALS[count];
  const before = await measureFirstVersion(count);
  line('one span, later', middle, goal, middleOf(before.later));
  line('one span, at first', first.took, goal === undefined ? undefined : 2 * goal, before.first.took);
  line('the reveal of the shop', setting.took, SETTING_GOALS[count]);
  line('filled in', filled.took, FILLING_GOALS[count]);
  line('longest standstill, edits', still, STANDSTILL_GOAL);
  line('longest standstill, filling', filled.still, STANDSTILL_GOAL);
  engine.univer.dispose();
}

function middleOf(times: readonly Timed[]): number {
  return times.map(({ took }) => took).sort((one, other) => one - other)[Math.floor(times.length / 2)]!;
}

/** The same edits in the sheet of 75 formulas a row that the first version wrote. */
async function measureFirstVersion(count: number): Promise<{ first: Timed; later: Timed[] }> {
  const engine = startHeadless(ARCH_FUNCTIONS);
  const host = new WorkbenchHost(engine);
  const settled = () => engine.settled();
  const { book, span } = firstVersion(count);
  valueOf(await openBook(engine, book, () => Promise.resolve()));
  await settled();
  const spanChanged = (to: number) => timed(() => host.writeCells('Takeoff', span, [[to]], true), settled);
  const first = await spanChanged(41);
  const later: Timed[] = [];
  for (const to of [42, 43, 44]) later.push(await spanChanged(to));
  engine.univer.dispose();
  return { first, later };
}

export async function run(args: readonly string[]): Promise<void> {
  for (const count of args.length > 0 ? args.map(Number) : [27, 100, 300, 1000]) await measure(count);
  console.log(`load of the machine in the last minute: ${loadavg()[0]!.toFixed(1)} on ${cpus().length} cores`);
}
