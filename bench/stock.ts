import loadHighs from 'highs';
import { costOf, type Cutting } from '../src/stock/cutting';
import { Effort } from '../src/stock/effort';
import { firstFitDecreasing } from '../src/stock/decreasing';
import { readOrder } from '../src/stock/order';
import { search } from '../src/stock/search';
import { pricedOrder, shopOrder, triplets, uniform } from '../tests/stock/instances';

/**
 * Boards to buy: what is proven, and how long it takes, by class of problem; how it grows with distinct lengths; what first-fit
 * decreasing buys more; and what a mixed-integer solver proves that is given the whole model (a few jobs, since it takes its time).
 * `npm run bench -- stock quick` takes a fifth of the problems.
 */
export async function run(args: readonly string[] = []): Promise<void> {
  const share = args.includes('quick') ? 0.2 : 1;
  const many = (count: number) => Math.max(4, Math.round(count * share));
  const shop = (number: number, lengths?: number) => cuttingOf(shopOrder(number, lengths));
  for (let number = 5_000; number < 5_040; number++) solve(shop(number), 500);

  heading('class', 'problems');
  measure('shop-like, one length', many(300), 5_000, (number) => shop(number));
  for (const pieces of [120, 250, 500, 1_000]) {
    measure(`uniform ${pieces}`, many(20), 10_000, (number) => uniform(pieces, number));
  }
  for (const pieces of [60, 120, 249, 501]) {
    measure(`triplets ${pieces}`, many(20), 10_000, (number) => triplets(pieces, number));
  }
  measure('several lengths, priced', many(40), 1_000, (number) => cuttingOf(pricedOrder(number, false)));
  measure('the same, limited', many(40), 1_000, (number) => cuttingOf(pricedOrder(number, true)));

  heading('distinct lengths', 'jobs');
  for (const lengths of [20, 50, 100, 200, 400]) {
    measure(`${lengths}`, many(10), 10_000, (number) => shop(9_000 + number, lengths));
  }

  const highs = await loadHighs();
  console.log('\nHiGHS given the whole model, 5 s each (its limit overruns): boards bought, proven or not');
  for (let number = 0; number < many(12); number++) {
    const cutting = shop(number);
    const ours = solve(cutting, 5_000);
    const start = performance.now();
    let said: string;
    try {
      const solution = highs.solve(assignmentModel(cutting, ours.first), { time_limit: 5, output_flag: false });
      const found = solution.ObjectiveValue;
      said = `${solution.Status}, ${Number.isFinite(found) ? `${Math.round(found)} boards` : 'no plan'}`;
    } catch (fault) {
      said = `failed: ${fault instanceof Error ? fault.message : String(fault)}`;
    }
    const took = performance.now() - start;
    console.log(
      `job ${number}: here ${ours.cost} boards${ours.proven ? ', proven' : ''}, ${ours.ms.toFixed(0)} ms; ` +
        `HiGHS ${said}, ${took.toFixed(0)} ms; first fit ${ours.first}`,
    );
  }
}

function cuttingOf(order: Parameters<typeof readOrder>[0]): Cutting {
  const checked = readOrder(order);
  if (!checked.ok) throw new Error(checked.message);
  return checked.value.cutting;
}

interface Solved {
  readonly cost: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly ms: number;
  /** What first-fit decreasing costs. */
  readonly first: number;
}

function solve(cutting: Cutting, deadlineMs: number): Solved {
  const start = performance.now();
  const { runs, bound } = search(cutting, {
    effort: new Effort(Infinity, () => performance.now() - start > deadlineMs),
    better: () => undefined,
  });
  const ms = performance.now() - start;
  const costFrom = (plan: typeof runs) => (plan === null ? NaN : costOf(plan, cutting.boards));
  return {
    cost: costFrom(runs),
    bound,
    proven: costFrom(runs) <= bound,
    ms,
    first: costFrom(firstFitDecreasing(cutting, new Effort(Infinity))),
  };
}

function heading(name: string, count: string): void {
  console.log(
    `\n${name.padEnd(26)}${count.padStart(9)}  proven   median     p90      max ms   gap median / max %   first fit buys more %`,
  );
}

function measure(name: string, count: number, deadlineMs: number, make: (number: number) => Cutting): void {
  const solved = Array.from({ length: count }, (_, number) => solve(make(number), deadlineMs));
  const sorted = (of: (one: Solved) => number) => solved.map(of).sort((a, b) => a - b);
  const at = (figures: readonly number[], share: number) => figures[Math.min(count - 1, Math.floor(count * share))]!;
  const ms = sorted((one) => one.ms);
  const gaps = sorted((one) => (100 * (one.cost - one.bound)) / one.cost);
  const known = solved.filter((one) => !Number.isNaN(one.first));
  const more = known.reduce((sum, one) => sum + (100 * (one.first - one.cost)) / one.cost, 0) / known.length;
  console.log(
    name.padEnd(26) +
      String(count).padStart(9) +
      String(solved.filter((one) => one.proven).length).padStart(8) +
      [at(ms, 0.5), at(ms, 0.9), at(ms, 1)].map((each) => each.toFixed(1).padStart(9)).join('') +
      `${gaps[count >> 1]!.toFixed(3)} / ${at(gaps, 1).toFixed(3)}`.padStart(20) +
      more.toFixed(2).padStart(22),
  );
}

/** The textbook model: y_b, board b is used; x_ib, pieces of size i cut from it. `most` boards are enough. */
function assignmentModel({ sizes, demand, boards }: Cutting, most: number): string {
  const room = boards[0]!.room;
  const all = Array.from({ length: most }, (_, board) => board);
  const sum = (terms: readonly string[]) => terms.join('\n + ');
  return [
    `Minimize\n obj: ${sum(all.map((board) => `y${board}`))}`,
    'Subject To',
    ...sizes.map((_, piece) => ` d${piece}: ${sum(all.map((board) => `x${piece}_${board}`))} = ${demand[piece]}`),
    ...all.map(
      (board) =>
        ` r${board}: ${sum(sizes.map((size, piece) => `${size} x${piece}_${board}`))} - ${room} y${board} <= 0`,
    ),
    ...all.slice(1).map((board) => ` o${board}: y${board - 1} - y${board} >= 0`),
    `Binary\n ${all.map((board) => `y${board}`).join('\n ')}`,
    `General\n ${sizes.flatMap((_, piece) => all.map((board) => `x${piece}_${board}`)).join('\n ')}`,
    'End',
  ].join('\n');
}
