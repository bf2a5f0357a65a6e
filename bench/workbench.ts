/**
 * The workbench's engine calculates a column of ARCH formulas, and the same figures from native formulas, in turn:
 * `npm run bench -- workbench [CELLS]`. One figure that every row uses is changed, so that each run calculates the whole
 * column again; the engine's own wait for quiet is in both. Best and middle of five.
 */
import { ARCH_FUNCTIONS } from '../taskpane/workbench/archFunctions';
import { startHeadless } from '../taskpane/workbench/headless';
import { WorkbenchHost } from '../taskpane/workbench/workbenchHost';

const ROUNDS = 5;
const STEP = 500;

/** The opening's radius and angle, from a span that moves with the figure in E1. */
const COLUMNS = {
  'ARCH.RADIUS': (row: number) => `=ARCH.RADIUS(A${row}+$E$1,B${row})`,
  'native radius': (row: number) => `=((A${row}+$E$1)^2/4+B${row}^2)/(2*B${row})`,
  'ARCH.HEADLENGTH': (row: number) => `=ARCH.HEADLENGTH("segmental",A${row}+$E$1,B${row},3.5)`,
  'native length': (row: number) =>
    `=(((A${row}+$E$1)^2/4+B${row}^2)/(2*B${row})+3.5)*4*ATAN(2*B${row}/(A${row}+$E$1))`,
};

async function recalculation(
  cells: number,
  formula: (row: number) => string,
): Promise<{ times: number[]; sum: number }> {
  const engine = startHeadless(ARCH_FUNCTIONS);
  const host = new WorkbenchHost(engine);
  try {
    await host.writeCells('Sheet1', 'E1', [[0]], true);
    for (let first = 1; first <= cells; first += STEP) {
      const rows = Array.from({ length: Math.min(STEP, cells - first + 1) }, (_, at) => {
        const row = first + at;
        return [24 + (row % 97), 4 + (row % 13) / 8, formula(row)];
      });
      const written = await host.writeCells('Sheet1', `A${first}`, rows, true);
      if (!written.ok) throw new Error(written.message);
    }
    await engine.settled();
    const times: number[] = [];
    for (let round = 1; round <= ROUNDS; round++) {
      const began = performance.now();
      await host.writeCells('Sheet1', 'E1', [[round / 8]], true);
      await engine.settled();
      times.push(performance.now() - began);
    }
    const read = await host.readSheet('Sheet1');
    if (!read.ok || !read.value) throw new Error('the sheet can not be read');
    const sum = read.value.rows.reduce((total, row) => total + Number(row[2]), 0);
    return { times: times.sort((one, other) => one - other), sum };
  } finally {
    engine.univer.dispose();
  }
}

export async function run(args: readonly string[]): Promise<void> {
  const cells = Number(args[0] ?? 5000);
  if (!Number.isInteger(cells) || cells < 1)
    throw new Error(`cells are counted in whole numbers from 1; got ${args[0]}`);
  console.log(`${cells.toLocaleString('en-US')} cells           best   middle ms   sum of the figures`);
  for (const [name, formula] of Object.entries(COLUMNS)) {
    const { times, sum } = await recalculation(cells, formula);
    const ms = (time: number) => time.toFixed(0).padStart(8);
    console.log(`${name.padEnd(18)}${ms(times[0]!)} ${ms(times[Math.floor(ROUNDS / 2)]!)}      ${sum.toFixed(6)}`);
  }
}
