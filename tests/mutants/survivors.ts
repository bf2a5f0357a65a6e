import { runInThisContext } from 'node:vm';
import type { Change } from './changes';
import type { HeldFile, HeldTest } from './held';

/** What the changeable sources ask while they run. */
interface Asked {
  $number: (id: number, figure: number, neighbor: number) => number;
  $operator: (id: number, from: string, to: string, left: () => unknown, right: () => unknown) => unknown;
  $run: () => unknown;
}
const asked = globalThis as unknown as Asked;

/** The change that is made now; 0: none. */
let active = 0;
/** The changes whose place was passed. */
let passed = new Set<number>();

const OPERATORS: Record<string, (left: () => any, right: () => any) => unknown> = {
  '+': (left, right) => left() + right(),
  '-': (left, right) => left() - right(),
  '*': (left, right) => left() * right(),
  '/': (left, right) => left() / right(),
  '<': (left, right) => left() < right(),
  '<=': (left, right) => left() <= right(),
  '>': (left, right) => left() > right(),
  '>=': (left, right) => left() >= right(),
  '===': (left, right) => left() === right(),
  '!==': (left, right) => left() !== right(),
  '&&': (left, right) => left() && right(),
  '||': (left, right) => left() || right(),
};

asked.$number = (id, figure, neighbor) => {
  passed.add(id);
  return active === id ? neighbor : figure;
};
asked.$operator = (id, from, to, left, right) => {
  passed.add(id);
  return OPERATORS[active === id ? to : from]!(left, right);
};

/** A change can make a loop endless: after this long it counts as noticed. */
const LONGEST_MS = 20_000;
const guarded = runInThisContext.bind(null, '$run()', { timeout: LONGEST_MS });

async function failsUnder(id: number, run: () => unknown): Promise<boolean> {
  active = id;
  asked.$run = run;
  try {
    await guarded();
    return false;
  } catch {
    return true;
  } finally {
    active = 0;
  }
}

/** What one test passes, and how long it takes without any change. */
interface Run {
  readonly test: HeldTest;
  readonly file: HeldFile;
  /** The test's place in its file. */
  readonly at: number;
  readonly passes: ReadonlySet<number>;
  readonly ms: number;
}

/** Runs every test once without a change, and notes which places it passes. */
async function record(files: readonly HeldFile[]): Promise<{ runs: Run[]; loads: Map<HeldFile, ReadonlySet<number>> }> {
  const runs: Run[] = [];
  const loads = new Map<HeldFile, ReadonlySet<number>>();
  for (const file of files) {
    passed = new Set();
    const tests = file.load();
    loads.set(file, passed);
    for (const [at, test] of tests.entries()) {
      passed = new Set();
      const began = performance.now();
      try {
        await test.run();
      } catch (error) {
        throw new Error(`${file.name} > ${test.name} fails without any change`, { cause: error });
      }
      runs.push({ test, file, at, passes: passed, ms: performance.now() - began });
    }
  }
  return { runs: runs.sort((a, b) => a.ms - b.ms), loads };
}

/**
 * The changes that no test notices, each given to `found` at once, the quickest tests first and no more of them than `mostMs` together. What is computed while a
 * source is loaded needs the file loaded again.
 */
export async function survivorsOf(
  files: readonly HeldFile[],
  changes: readonly Change[],
  mostMs = Infinity,
  found: (survivor: Change) => void = () => undefined,
): Promise<Change[]> {
  const { runs, loads } = await record(files);
  const survivors: Change[] = [];
  for (const change of changes) {
    let noticed = false;
    let spent = 0;
    const loaded = new Map<HeldFile, HeldTest[]>();
    for (const run of runs) {
      const { file, at } = run;
      const isFromStart = loads.get(file)!.has(change.id);
      if (noticed || (!isFromStart && !run.passes.has(change.id))) continue;
      if ((spent += run.ms) > mostMs) break;
      const anew = () => {
        if (!loaded.has(file)) loaded.set(file, file.load());
        return loaded.get(file)![at]!.run();
      };
      noticed = await failsUnder(change.id, isFromStart ? anew : run.test.run);
    }
    if (noticed) continue;
    survivors.push(change);
    found(change);
  }
  return survivors;
}
