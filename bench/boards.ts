import { defaultStandards } from '../src/standards';
import { planBoards } from '../src/takeoff/boards';
import { partsOf } from '../src/takeoff/parts';
import { takeoff } from '../src/takeoff/takeoff';
import { opening } from '../tests/takeoff/openings';
import { random } from '../tests/random';

/**
 * One plan for each wood: cost, bound, what is proven and how long it takes, by size of job. The jobs are generated, see `job`, with the
 * stock list a new workbook starts with and 15 % for defects and waste. Time is processor time of this process, planning alone, with
 * the code warmed up. `npm run bench -- boards` plans them all, `npm run bench -- boards 5 20` those of 5 and 20 openings.
 */
const SIZES: readonly (readonly [openings: number, jobs: number, proven: number, seconds: number])[] = [
  [5, 40, 0.85, 0.5],
  [20, 20, 0.3, 2],
  [60, 10, 0, 4],
  [300, 3, 0, 10],
];

export function run(args: readonly string[]): void {
  const standards = defaultStandards();
  planBoards(partsOf(takeoff(job(20, 999), standards)), standards);
  console.log(
    'openings  jobs  woods      cost     bound   gap %  worst wood %  proven %   goal   mean s   max s  goal',
  );
  for (const [openings, jobs, share, seconds] of SIZES) {
    if (args.length > 0 && !args.includes(String(openings))) continue;
    let cost = 0;
    let bound = 0;
    let woods = 0;
    let proven = 0;
    let worst = 0;
    const times: number[] = [];
    for (let seed = 1; seed <= jobs; seed++) {
      const parts = partsOf(takeoff(job(openings, seed), standards));
      const before = process.cpuUsage();
      const { plans } = planBoards(parts, standards);
      const { user, system } = process.cpuUsage(before);
      times.push((user + system) / 1e6);
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
        `${seconds}`.padStart(6),
    );
  }
}

/** Openings as a builder has them: half poplar, the rest red oak, white oak or poplar again; one in five on legs. */
function job(openings: number, seed: number) {
  const of = random(seed * 1000 + openings);
  const heads = ['segmental', 'segmental', 'segmental', 'half round', 'half round'] as const;
  const others = ['elliptical', 'three-centered', 'pointed', 'quarter round', 'round', 'straight'] as const;
  return Array.from({ length: openings }, (_, at) => {
    const head = of.pick([...heads, ...others]);
    const span = of.whole(48, 192) / 2;
    const quarters = (least: number, most: number) => Math.round(span * of.between(least, most) * 4) / 4;
    const rises: Partial<Record<typeof head, () => number>> = {
      segmental: () => quarters(0.08, 0.4),
      elliptical: () => quarters(0.2, 0.45),
      'three-centered': () => quarters(0.2, 0.45),
      pointed: () => quarters(0.6, 1.1),
    };
    const onLegs = of.between(0, 1) < 0.2;
    return opening({
      row: at + 2,
      mark: `W${at + 1}`,
      quantity: of.whole(1, 4),
      head,
      span,
      rise: rises[head]?.() ?? null,
      face: of.pick([2.25, 3.5, 3.5, 3.5, 4.25]),
      species: of.between(0, 1) < 0.5 ? null : of.pick(['Red oak', 'White oak', 'Poplar']),
      ends: onLegs ? 'legs' : null,
      leg: onLegs ? of.whole(60, 90) : null,
      thickness: of.between(0, 1) < 0.1 ? 1 : null,
    });
  });
}
