import loadHighs from 'highs';
import type { Cutting } from '../../src/stock/cutting';

/** HiGHS, a mixed-integer solver that knows nothing of this planner, given every pattern there is. */
export async function referee(): Promise<(cutting: Cutting) => number | null> {
  const highs = await loadHighs();
  return (cutting) => {
    const solution = highs.solve(modelOf(cutting), { mip_rel_gap: 0, mip_abs_gap: 0, output_flag: false });
    return solution.Status === 'Optimal' ? Math.round(solution.ObjectiveValue) : null;
  };
}

/** The model over all patterns in CPLEX's LP format. Pieces may be made in excess: that never makes the least cost higher. */
export function modelOf({ sizes, demand, boards }: Cutting): string {
  const costs: string[] = [];
  const rows: string[][] = sizes.map(() => []);
  const limits: string[][] = boards.map(() => []);
  boards.forEach(({ room, price }, board) => {
    for (const counts of allPatterns(sizes, demand, room)) {
      const name = `x${costs.length}`;
      costs.push(`${price} ${name}`);
      counts.forEach((count, piece) => count > 0 && rows[piece]!.push(`${count} ${name}`));
      limits[board]!.push(name);
    }
  });
  const lines = (terms: readonly string[]) => terms.join('\n + ');
  return [
    `Minimize\n obj: ${lines(costs)}`,
    'Subject To',
    ...rows.map((terms, piece) => ` d${piece}: ${lines(terms)} >= ${demand[piece]}`),
    ...limits.flatMap((names, k) =>
      boards[k]!.limit === Infinity || names.length === 0 ? [] : [` l${k}: ${lines(names)} <= ${boards[k]!.limit}`],
    ),
    `General\n ${costs.map((_, at) => `x${at}`).join('\n ')}`,
    'End',
  ].join('\n');
}

/** Every pattern that leaves no room for another piece wanted. */
function allPatterns(sizes: readonly number[], demand: readonly number[], room: number): number[][] {
  const found: number[][] = [];
  const counts = sizes.map(() => 0);
  const extend = (piece: number, left: number): void => {
    if (piece === sizes.length) {
      const full = sizes.every((size, at) => size > left || counts[at] === demand[at]);
      if (full && counts.some((count) => count > 0)) found.push([...counts]);
      return;
    }
    for (let count = Math.min(demand[piece]!, Math.floor(left / sizes[piece]!)); count >= 0; count--) {
      counts[piece] = count;
      extend(piece + 1, left - count * sizes[piece]!);
    }
    counts[piece] = 0;
  };
  extend(0, room);
  return found;
}
