import loadHighs from 'highs';
import type { WoodOrder, WoodPlan } from '../src/boards/order';
import { defaultStandards } from '../src/standards';
import { planBoards, workFor } from '../src/takeoff/boards';
import { partsOf } from '../src/takeoff/parts';
import { takeoff } from '../src/takeoff/takeoff';
import { lookAtBound } from '../tests/boards/bounds';
import { faultsOfWood } from '../tests/boards/wholeWood';
import { generatedJob } from '../tests/takeoff/generatedJob';

/**
 * One plan for each wood: cost, bound, what is proven and how long it takes, by size of job. The jobs are generated, see `generatedJob`, with the
 * stock list a new workbook starts with and 15 % for defects and waste. Time is processor time of this process, planning alone, with
 * the code warmed up. Every plan is looked at piece by piece by the tests' independent checker, every bound by another (`lookAtBound`); what the
 * second couldn't tell within its limits is counted as untold and named. Bounds of jobs of up to 20 openings are held against what a search four times as long buys, too. `npm run bench -- boards` plans them all, `npm run bench -- boards 5 20` those of 5 and 20 openings, with
 * `--from 101` those of the seeds from 101 on.
 */
const SIZES: readonly (readonly [openings: number, jobs: number, proven: number, seconds: number])[] = [
  [5, 40, 0.85, 0.5],
  [20, 20, 0.3, 2],
  [60, 10, 0, 4],
  [300, 3, 0, 10],
];

/** Jobs of no more openings are planned again, four times as long. */
const CHECKED = 20;

export async function run(args: readonly string[]): Promise<void> {
  const highs = await loadHighs();
  const standards = defaultStandards();
  const sizes = args.filter((arg, at) => arg !== '--from' && args[at - 1] !== '--from');
  const first = args.includes('--from') ? Number(args[args.indexOf('--from') + 1]) : 1;
  planBoards(partsOf(takeoff(generatedJob(20, 999), standards)), standards);
  console.log(
    'openings  jobs  woods      cost     bound   gap %  worst wood %  proven %   goal   mean s   max s  goal  faults  untold  pricings  looked through',
  );
  for (const [openings, jobs, share, seconds] of SIZES) {
    if (sizes.length > 0 && !sizes.includes(String(openings))) continue;
    let cost = 0;
    let bound = 0;
    let woods = 0;
    let proven = 0;
    let worst = 0;
    let faults = 0;
    let untold = 0;
    let pricings = 0;
    let lookedThrough = 0;
    const times: number[] = [];
    for (let seed = first; seed < first + jobs; seed++) {
      const parts = partsOf(takeoff(generatedJob(openings, seed), standards));
      const before = process.cpuUsage();
      const made: [WoodOrder, WoodPlan][] = [];
      const { plans } = planBoards(parts, standards, { planned: (order, plan) => made.push([order, plan]) });
      const { user, system } = process.cpuUsage(before);
      times.push((user + system) / 1e6);
      const longer =
        openings <= CHECKED ? planBoards(parts, standards, { work: 4 * workFor(parts.length) }).plans : plans;
      faults += plans.flatMap((plan) => faultsOfWood(plan, standards)).length;
      plans.forEach((plan, at) => (faults += plan.lowerBound > longer[at]!.cost + 1e-9 ? 1 : 0));
      for (const [order, plan] of made) {
        const look = await lookAtBound(order, plan, highs);
        for (const what of [...look.faults, ...look.untold])
          console.log(`  ${openings} openings, seed ${seed}: ${what}`);
        faults += look.faults.length;
        untold += look.untold.length;
        pricings += look.pricings;
        lookedThrough += look.lookedThrough;
      }
      for (const plan of plans) {
        cost += plan.cost;
        bound += plan.lowerBound;
        woods++;
        if (plan.proven) proven++;
        worst = Math.max(worst, 1 - plan.lowerBound / plan.cost);
      }
    }
    console.log(
      String(openings).padStart(8) +
        String(jobs).padStart(6) +
        String(woods).padStart(7) +
        cost.toFixed(0).padStart(10) +
        bound.toFixed(0).padStart(10) +
        (100 * (1 - bound / cost)).toFixed(3).padStart(8) +
        (100 * worst).toFixed(2).padStart(14) +
        ((100 * proven) / woods).toFixed(0).padStart(10) +
        `${(100 * share).toFixed(0)} %`.padStart(7) +
        (times.reduce((sum, time) => sum + time, 0) / jobs).toFixed(2).padStart(9) +
        Math.max(...times)
          .toFixed(2)
          .padStart(8) +
        `${seconds}`.padStart(6) +
        String(faults).padStart(8) +
        String(untold).padStart(8) +
        String(pricings).padStart(10) +
        String(lookedThrough).padStart(10),
    );
  }
}
