import { drawLayout } from './draw';
import { layoutOf, RULED } from './layout';
import { score } from './score';

/** What reading many random tables came to. */
export interface Tally {
  tables: number;
  openings: number;
  right: number;
  asked: number;
  /** Openings read otherwise than they are, nothing asked: which table, which opening. */
  readonly wrong: string[];
  readonly lost: string[];
  /** Cells right, of how many: between rules, and without. */
  ruled: [number, number];
  open: [number, number];
}

/** Draws and reads `count` random tables from `seed` on. */
export async function proof(
  seed: number,
  count: number,
  apart: boolean,
  onTable: (done: number, tally: Tally) => void = () => undefined,
): Promise<Tally> {
  const tally: Tally = { tables: 0, openings: 0, right: 0, asked: 0, wrong: [], lost: [], ruled: [0, 0], open: [0, 0] };
  for (let each = seed; each < seed + count; each += 1) {
    const layout = layoutOf(each, apart);
    const one = await score(await drawLayout(layout, each), layout.headings, layout.rows);
    tally.tables += 1;
    tally.openings += layout.rows.length;
    tally.right += one.right;
    tally.asked += one.asked;
    tally.wrong.push(...one.wrong.map((text) => `table ${each}, wrong: ${text}`));
    tally.lost.push(
      ...one.lost.map((mark) => `table ${each}, lost: ${mark}${one.refused === null ? '' : ` (${one.refused})`}`),
    );
    const cells = RULED.has(layout.rules) ? tally.ruled : tally.open;
    cells[0] += one.cellsRight;
    cells[1] += one.cells;
    onTable(tally.tables, tally);
  }
  return tally;
}
