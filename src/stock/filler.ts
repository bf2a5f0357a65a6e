import type { Effort } from './effort';
import { FillTable, fillByBranching, type Branching } from './knapsack';

/** Table cells beyond which only branching is tried. */
const LARGEST_TABLE = 16_000_000;
/** A step of branching costs about so many table cells. */
const CELLS_A_STEP = 24;
const MOST_STEPS = 300_000;
/** Where no more than this share of a room may be left, the best filling seldom does, and the table is asked at once. */
const STRICT = 0.02;

/** A board filled, and the worth that no filling of it exceeds. */
export type Filled = Pick<Branching, 'filling' | 'upper'>;

/** Fills boards for the most worth, by whichever of the two methods has been the quicker on this problem. */
export class Filler {
  private readonly table: FillTable | null;
  private readonly patience: number;
  /** Fillings for which branching isn't tried, after it was the slower one. */
  private rest = 0;
  private nextRest = 1;

  constructor(
    private readonly sizes: readonly number[],
    private readonly copies: ArrayLike<number>,
    private readonly rooms: readonly number[],
    private readonly effort: Effort,
  ) {
    const table = new FillTable(sizes, Math.max(...rooms));
    this.table = table.cells() <= LARGEST_TABLE ? table : null;
    this.patience = this.table ? Math.max(200, Math.ceil(table.cells() / CELLS_A_STEP / rooms.length)) : MOST_STEPS;
  }

  /** The best filling of each room; within `gain` of it. With `waste`, only fillings that leave no more of the room than that. */
  fill(worths: ArrayLike<number>, gain: number, waste: readonly number[] | null = null): (Filled | null)[] {
    const tight = waste !== null && waste.some((most, at) => most < this.rooms[at]!);
    const strict = tight && waste.some((most, at) => most < STRICT * this.rooms[at]!);
    if (!strict || this.table === null) {
      // The best filling of all that leaves little is the best of those that do.
      const tried = this.branch(worths, gain);
      if (
        tried &&
        (!tight || this.table === null || tried.every((found, at) => this.leaves(found, at) <= waste[at]!))
      ) {
        return tried;
      }
    }
    const table = this.table!;
    this.effort.spend(table.fill(worths, this.copies, tight));
    return this.rooms.map((room, at) => {
      const filling = table.best(room, waste?.[at]);
      return filling && { filling, upper: filling.worth };
    });
  }

  private leaves({ filling: { pieces, counts } }: Filled, at: number): number {
    return pieces.reduce((left, piece, k) => left - counts[k]! * this.sizes[piece]!, this.rooms[at]!);
  }

  private branch(worths: ArrayLike<number>, gain: number): Branching[] | null {
    if (this.table && this.rest > 0) {
      this.rest--;
      return null;
    }
    const found: Branching[] = [];
    for (const room of this.rooms) {
      const branching = fillByBranching(this.sizes, worths, this.copies, room, gain, this.patience);
      this.effort.spend(CELLS_A_STEP * (branching.steps + 2 * this.sizes.length));
      if (this.table && !branching.complete) {
        this.rest = this.nextRest;
        this.nextRest = Math.min(64, this.nextRest * 2);
        return null;
      }
      found.push(branching);
    }
    this.nextRest = 1;
    return found;
  }
}
