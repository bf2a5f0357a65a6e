import type { Effort } from './effort';

/** Smaller than this is rounding. */
const TINY = 1e-9;
/** Work of pricing one entry of a column. */
const PRICING = 2;

/**
 * Least cost of columns, taken in fractions of 0 or more, that add up to the right side: a revised simplex with the inverse of
 * the basis kept whole, column by column. Columns may be added and the right side changed along the way.
 */
export class Simplex {
  readonly rows: number;
  readonly cost: number[] = [];
  /** A barred column may not enter the basis. */
  readonly barred: boolean[] = [];
  /** Row in which a column is basic, or −1. */
  readonly basicIn: number[] = [];
  /** Column basic in each row, and how much of it is taken. */
  readonly basis: Int32Array;
  readonly level: Float64Array;
  readonly dual: Float64Array;

  private readonly start: number[] = [0];
  private readonly row: number[] = [];
  private readonly entry: number[] = [];
  /** inverse[c·rows + r]: entry of row r, column c. */
  private readonly inverse: Float64Array;
  private readonly entering: Float64Array;
  private sincePivots = 0;

  constructor(
    private readonly rightSide: Float64Array,
    private readonly effort: Effort,
  ) {
    const rows = (this.rows = rightSide.length);
    this.basis = new Int32Array(rows);
    this.level = Float64Array.from(rightSide);
    this.dual = new Float64Array(rows);
    this.inverse = new Float64Array(rows * rows);
    this.entering = new Float64Array(rows);
  }

  /** The same columns, basis and levels, to go on with from here on its own. */
  copy(rightSide: Float64Array, effort: Effort): Simplex {
    const copy = new Simplex(rightSide, effort);
    for (const at of this.cost.keys()) {
      copy.cost.push(this.cost[at]!);
      copy.barred.push(this.barred[at]!);
      copy.basicIn.push(this.basicIn[at]!);
    }
    copy.start.length = 0;
    for (const at of this.start) copy.start.push(at);
    for (const row of this.row) copy.row.push(row);
    for (const entry of this.entry) copy.entry.push(entry);
    copy.basis.set(this.basis);
    copy.level.set(this.level);
    copy.dual.set(this.dual);
    copy.inverse.set(this.inverse);
    copy.sincePivots = this.sincePivots;
    effort.spend(this.rows * this.rows + 2 * this.row.length);
    return copy;
  }

  /** Begins with these columns, each a single 1 in the row of its place. */
  begin(columns: readonly number[]): void {
    columns.forEach((column, at) => {
      this.basis[at] = column;
      this.basicIn[column] = at;
      this.inverse[at * this.rows + at] = 1;
      this.dual[at] = this.cost[column]!;
    });
  }

  /** Adds a column and gives its number. */
  append(cost: number, rows: readonly number[], entries: readonly number[]): number {
    this.cost.push(cost);
    for (let at = 0; at < rows.length; at++) {
      this.row.push(rows[at]!);
      this.entry.push(entries[at]!);
    }
    this.start.push(this.row.length);
    this.barred.push(false);
    this.basicIn.push(-1);
    return this.cost.length - 1;
  }

  /** Takes `times` a column for good: off the right side, and off its level. */
  take(column: number, times: number): void {
    for (let at = this.start[column]!; at < this.start[column + 1]!; at++)
      this.rightSide[this.row[at]!]! -= times * this.entry[at]!;
    const row = this.basicIn[column]!;
    if (row >= 0) this.level[row]! -= times;
    else this.refresh();
  }

  /** No entry of the column is greater than the right side. */
  fits(column: number): boolean {
    for (let at = this.start[column]!; at < this.start[column + 1]!; at++) {
      if (this.entry[at]! > this.rightSide[this.row[at]!]! + 0.5) return false;
    }
    return true;
  }

  private reducedCost(column: number): number {
    let value = this.cost[column]!;
    for (let at = this.start[column]!; at < this.start[column + 1]!; at++)
      value -= this.dual[this.row[at]!]! * this.entry[at]!;
    return value;
  }

  value(): number {
    let sum = 0;
    for (let at = 0; at < this.rows; at++) sum += this.cost[this.basis[at]!]! * this.level[at]!;
    return sum;
  }

  /** Steps toward the least cost over the columns known, at most `steps`; true once it is reached. Starts from levels that
   * are not negative. */
  primal(steps = Infinity): boolean {
    for (let round = 0; round < steps; round++) {
      this.effort.spend(PRICING * this.row.length);
      let chosen = -1;
      let most = 0;
      for (let column = 0; column < this.cost.length; column++) {
        if (this.basicIn[column]! >= 0 || this.barred[column]) continue;
        const reduced = this.reducedCost(column);
        if (reduced >= -TINY) continue;
        if (-reduced > most) [chosen, most] = [column, -reduced];
      }
      if (chosen < 0 || !this.enter(chosen)) return true;
      if (this.effort.ended) return false;
    }
    return false;
  }

  /** Brings a column into the basis; false where nothing limits it, which a sound problem doesn't have. */
  private enter(column: number): boolean {
    this.image(column);
    const { entering, level, rows } = this;
    let pivot = -1;
    let least = Infinity;
    for (let at = 0; at < rows; at++) {
      if (entering[at]! <= 1e-9) continue;
      const ratio = Math.max(0, level[at]!) / entering[at]!;
      if (ratio < least - 1e-12 || (ratio <= least + 1e-12 && entering[at]! > entering[pivot]!))
        [pivot, least] = [at, Math.min(ratio, least)];
    }
    if (pivot < 0) return false;
    this.pivot(pivot, column);
    return true;
  }

  /** Makes levels that a `take` drove below 0 sound again (dual simplex). False where the columns don't allow it. */
  dualSteps(): boolean {
    const { level, rows, inverse } = this;
    for (;;) {
      let pivot = -1;
      let lowest = -1e-9;
      for (let at = 0; at < rows; at++) if (level[at]! < lowest) [pivot, lowest] = [at, level[at]!];
      if (pivot < 0) return true;
      let chosen = -1;
      let least = Infinity;
      let strongest = 0;
      this.effort.spend(PRICING * this.row.length);
      for (let column = 0; column < this.cost.length; column++) {
        if (this.basicIn[column]! >= 0 || this.barred[column]) continue;
        let along = 0;
        for (let at = this.start[column]!; at < this.start[column + 1]!; at++) {
          along += inverse[this.row[at]! * rows + pivot]! * this.entry[at]!;
        }
        if (along >= -1e-9) continue;
        const ratio = Math.max(0, this.reducedCost(column)) / -along;
        if (ratio < least - 1e-12 || (ratio <= least + 1e-12 && -along > strongest)) {
          [chosen, least, strongest] = [column, Math.min(least, ratio), -along];
        }
      }
      if (chosen < 0) return false;
      this.image(chosen);
      this.pivot(pivot, chosen);
      if (this.effort.ended) return false;
    }
  }

  /** entering = inverse · column. */
  private image(column: number): void {
    const { entering, inverse, rows } = this;
    entering.fill(0);
    this.effort.spend((this.start[column + 1]! - this.start[column]! + 1) * rows);
    for (let at = this.start[column]!; at < this.start[column + 1]!; at++) {
      const base = this.row[at]! * rows;
      const times = this.entry[at]!;
      for (let r = 0; r < rows; r++) entering[r]! += times * inverse[base + r]!;
    }
  }

  private pivot(pivot: number, column: number): void {
    const { entering, inverse, rows, level, dual, basis } = this;
    const reduced = this.reducedCost(column);
    const head = entering[pivot]!;
    const touched: number[] = [];
    for (let r = 0; r < rows; r++) if (r !== pivot && Math.abs(entering[r]!) > 1e-12) touched.push(r);
    const step = level[pivot]! / head;
    for (const r of touched) level[r]! -= step * entering[r]!;
    level[pivot] = step;
    let changed = 0;
    for (let c = 0; c < rows; c++) {
      const base = c * rows;
      const old = inverse[base + pivot]!;
      if (old === 0) continue;
      const share = old / head;
      dual[c]! += reduced * share;
      changed++;
      for (const r of touched) inverse[base + r]! -= share * entering[r]!;
      inverse[base + pivot] = share;
    }
    this.effort.spend(rows + changed * touched.length);
    this.basicIn[basis[pivot]!] = -1;
    basis[pivot] = column;
    this.basicIn[column] = pivot;
    if (++this.sincePivots >= 150 + rows) this.refresh();
  }

  /** Gives barred columns that are still basic this price, if theirs is lower, so that the next steps drive them out. */
  priceBarred(price: number): void {
    let changed = false;
    for (const column of this.basis) {
      if (!this.barred[column] || this.cost[column]! >= price) continue;
      this.cost[column] = price;
      changed = true;
    }
    if (changed) this.priceOut();
  }

  /** Duals from the basis and its costs, after costs changed. */
  private priceOut(): void {
    const { rows, inverse, dual, basis } = this;
    this.effort.spend(rows * rows);
    for (let c = 0; c < rows; c++) {
      let sum = 0;
      for (let r = 0; r < rows; r++)
        if (inverse[c * rows + r] !== 0) sum += this.cost[basis[r]!]! * inverse[c * rows + r]!;
      dual[c] = sum;
    }
  }

  /** Inverts the basis afresh (Gauss and Jordan, largest pivot in the column) and works out levels and duals from it. */
  private refresh(): void {
    this.sincePivots = 0;
    const { rows, inverse, basis, level } = this;
    inverse.fill(0);
    const columns = [...basis];
    for (let r = 0; r < rows; r++) inverse[r * rows + r] = 1;
    const taken = new Uint8Array(rows);
    // Columns with one entry first: they fill nothing in.
    columns.sort((a, b) => this.start[a + 1]! - this.start[a]! - (this.start[b + 1]! - this.start[b]!));
    for (const column of columns) {
      this.image(column);
      let pivot = -1;
      for (let r = 0; r < rows; r++) {
        if (taken[r] === 0 && (pivot < 0 || Math.abs(this.entering[r]!) > Math.abs(this.entering[pivot]!))) pivot = r;
      }
      taken[pivot] = 1;
      const head = this.entering[pivot]!;
      const touched: number[] = [];
      for (let r = 0; r < rows; r++) if (r !== pivot && Math.abs(this.entering[r]!) > 1e-13) touched.push(r);
      let changed = 0;
      for (let c = 0; c < rows; c++) {
        const old = inverse[c * rows + pivot]!;
        if (old === 0) continue;
        const share = old / head;
        changed++;
        for (const r of touched) inverse[c * rows + r]! -= share * this.entering[r]!;
        inverse[c * rows + pivot] = share;
      }
      this.effort.spend(3 * rows + changed * touched.length);
      basis[pivot] = column;
      this.basicIn[column] = pivot;
    }
    level.fill(0);
    for (let c = 0; c < rows; c++) {
      const amount = this.rightSide[c]!;
      if (amount !== 0) for (let r = 0; r < rows; r++) level[r]! += amount * inverse[c * rows + r]!;
    }
    this.priceOut();
  }
}
