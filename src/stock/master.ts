import { patternKey, type Pattern } from './cutting';

/** A piece left unmade is priced like so many of the dearest boards. */
export const SHORT_PRICES = 1_000;

/** Smaller than this is rounding. */
const TINY = 1e-9;

/**
 * The restricted master problem of pattern generation: least cost of boards, in fractions, that cover what is wanted with the
 * patterns known so far. A revised simplex with the inverse of the basis kept whole, column by column.
 *
 * Rows: one for each size (pieces made − surplus = demand), one for each kind of board of limited number (boards + spare = limit).
 * Columns: a "short" for each size row (a piece left unmade, at a price no plan would pay), a surplus or spare for each row,
 * exchanges at no cost that let a longer piece serve as the next shorter one (they steady the duals while patterns are few; Valério
 * de Carvalho 2005), then patterns. `fix` takes boards of a pattern as bought and leaves the problem of what is still wanted.
 */
export class Master {
  readonly rows: number;
  private readonly sizeRows: number;
  private readonly limitRow: readonly number[];
  /** What is still wanted or, in limit rows, still to be had. */
  readonly wanted: Float64Array;
  /** Patterns by column, from `firstPattern` on. */
  readonly patterns: Pattern[] = [];
  private readonly known = new Set<string>();
  readonly firstPattern: number;
  private readonly firstExchange: number;

  private readonly cost: number[] = [];
  private readonly start: number[] = [0];
  private readonly row: number[] = [];
  private readonly entry: number[] = [];
  /** A barred column may not enter the basis: it makes more of a size than is still wanted. */
  private readonly barred: boolean[] = [];
  /** Row in which a column is basic, or −1. */
  private readonly basicIn: number[] = [];

  private readonly basis: Int32Array;
  private readonly level: Float64Array;
  /** inverse[c·rows + r]: entry of row r, column c. */
  private readonly inverse: Float64Array;
  readonly dual: Float64Array;
  private readonly entering: Float64Array;
  private sincePivots = 0;

  constructor(
    demand: readonly number[],
    limits: readonly number[],
    private readonly prices: readonly number[],
    private readonly penalty: number,
    exchanges = true,
  ) {
    this.sizeRows = demand.length;
    let next = demand.length;
    this.limitRow = limits.map((limit) => (limit === Infinity ? -1 : next++));
    this.rows = next;
    this.wanted = new Float64Array(next);
    demand.forEach((count, at) => (this.wanted[at] = count));
    limits.forEach((limit, at) => limit !== Infinity && (this.wanted[this.limitRow[at]!] = limit));
    this.basis = new Int32Array(next);
    this.level = Float64Array.from(this.wanted);
    this.inverse = new Float64Array(next * next);
    this.dual = new Float64Array(next);
    this.entering = new Float64Array(next);
    for (let at = 0; at < this.sizeRows; at++) this.append(penalty, [at], [1]);
    for (let at = 0; at < next; at++) this.append(0, [at], [at < this.sizeRows ? -1 : 1]);
    this.firstExchange = this.cost.length;
    for (let at = 0; exchanges && at + 1 < this.sizeRows; at++) this.append(0, [at, at + 1], [-1, 1]);
    this.firstPattern = this.cost.length;
    for (let at = 0; at < next; at++) {
      const column = at < this.sizeRows ? at : this.sizeRows + at;
      this.basis[at] = column;
      this.basicIn[column] = at;
      this.inverse[at * next + at] = 1;
      this.dual[at] = this.cost[column]!;
    }
  }

  private append(cost: number, rows: readonly number[], entries: readonly number[]): number {
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

  /** Adds a pattern; false where it is known already. */
  add(pattern: Pattern): boolean {
    const key = patternKey(pattern);
    if (this.known.has(key)) return false;
    this.known.add(key);
    this.patterns.push(pattern);
    const limit = this.limitRow[pattern.board]!;
    const rows = limit < 0 ? pattern.pieces : [...pattern.pieces, limit];
    const entries = limit < 0 ? pattern.counts : [...pattern.counts, 1];
    const column = this.append(this.prices[pattern.board]!, rows, entries);
    this.barred[column] = !this.fits(column);
    return true;
  }

  /** Boards of a kind still to be had. */
  hadOf(board: number): number {
    const row = this.limitRow[board]!;
    return row < 0 ? Infinity : this.wanted[row]!;
  }

  /** How often a pattern can be made without making more than is wanted. */
  mostOf(pattern: Pattern): number {
    let most = this.hadOf(pattern.board);
    for (let at = 0; at < pattern.pieces.length; at++) {
      most = Math.min(most, Math.floor(this.wanted[pattern.pieces[at]!]! / pattern.counts[at]!));
    }
    return most;
  }

  /** Dual of a board kind's limit, 0 or less. */
  limitDual(board: number): number {
    const row = this.limitRow[board]!;
    return row < 0 ? 0 : this.dual[row]!;
  }

  reducedCost(column: number): number {
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

  /** Pieces left unmade in the fractional plan. */
  short(): number {
    let sum = 0;
    for (let at = 0; at < this.sizeRows; at++)
      if (this.basicIn[at]! >= 0) sum += Math.max(0, this.level[this.basicIn[at]!]!);
    return sum;
  }

  /** Patterns used in the fractional plan, and how much of each. */
  used(): { column: number; pattern: Pattern; level: number }[] {
    const used: { column: number; pattern: Pattern; level: number }[] = [];
    for (let at = 0; at < this.rows; at++) {
      const column = this.basis[at]!;
      if (column < this.firstPattern || this.level[at]! <= 1e-7) continue;
      used.push({ column, pattern: this.patterns[column - this.firstPattern]!, level: this.level[at]! });
    }
    return used;
  }

  /** Steps toward the least cost over the columns known, at most `steps`; true once it is reached. Starts from levels that
   * are not negative. */
  primal(ended: () => boolean, steps = Infinity): boolean {
    for (let round = 0; round < steps; round++) {
      let chosen = -1;
      let most = 0;
      for (let column = 0; column < this.cost.length; column++) {
        if (this.basicIn[column]! >= 0 || this.barred[column]) continue;
        const reduced = this.reducedCost(column);
        if (reduced >= -TINY) continue;
        if (-reduced > most) [chosen, most] = [column, -reduced];
      }
      if (chosen < 0 || !this.enter(chosen)) return true;
      if (round % 64 === 63 && ended()) return false;
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

  /** Makes levels that a `fix` drove below 0 sound again (dual simplex). False where the columns don't allow it. */
  dualSteps(ended: () => boolean): boolean {
    const { level, rows, inverse } = this;
    for (let round = 0; ; round++) {
      let pivot = -1;
      let lowest = -1e-9;
      for (let at = 0; at < rows; at++) if (level[at]! < lowest) [pivot, lowest] = [at, level[at]!];
      if (pivot < 0) return true;
      let chosen = -1;
      let least = Infinity;
      let strongest = 0;
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
      if (round % 64 === 63 && ended()) return false;
    }
  }

  /** entering = inverse · column. */
  private image(column: number): void {
    const { entering, inverse, rows } = this;
    entering.fill(0);
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
    for (let c = 0; c < rows; c++) {
      const base = c * rows;
      const old = inverse[base + pivot]!;
      if (old === 0) continue;
      const share = old / head;
      dual[c]! += reduced * share;
      for (const r of touched) inverse[base + r]! -= share * entering[r]!;
      inverse[base + pivot] = share;
    }
    this.basicIn[basis[pivot]!] = -1;
    basis[pivot] = column;
    this.basicIn[column] = pivot;
    if (++this.sincePivots >= 150 + rows) this.refresh();
  }

  /** Takes `times` boards of a pattern as bought. */
  fix(column: number, times: number): void {
    for (let at = this.start[column]!; at < this.start[column + 1]!; at++)
      this.wanted[this.row[at]!]! -= times * this.entry[at]!;
    const row = this.basicIn[column]!;
    if (row >= 0) this.level[row]! -= times;
    else this.refresh();
    for (let at = this.firstPattern; at < this.cost.length; at++)
      if (!this.barred[at]) this.barred[at] = !this.fits(at);
  }

  private fits(column: number): boolean {
    for (let at = this.start[column]!; at < this.start[column + 1]!; at++) {
      if (this.entry[at]! > this.wanted[this.row[at]!]! + 0.5) return false;
    }
    return true;
  }

  /** Ends exchanges, so that the plan is made of patterns alone; false where they were ended before. */
  barExchanges(): boolean {
    if (this.firstExchange === this.firstPattern || this.barred[this.firstExchange]) return false;
    for (let at = this.firstExchange; at < this.firstPattern; at++) this.barred[at] = true;
    this.dropBarred();
    return true;
  }

  /** What a pattern is worth over its price, at the present duals. */
  worthOver(pattern: Pattern): number {
    let over = this.limitDual(pattern.board) - this.prices[pattern.board]!;
    for (let at = 0; at < pattern.pieces.length; at++) over += pattern.counts[at]! * this.dual[pattern.pieces[at]!]!;
    return over;
  }

  /** Bars the patterns that answer. */
  barWhere(unfit: (pattern: Pattern) => boolean): void {
    this.patterns.forEach((pattern, at) => unfit(pattern) && (this.barred[this.firstPattern + at] = true));
    this.dropBarred();
  }

  /** Drives barred columns out of the basis by pricing them like unmade pieces. */
  dropBarred(): void {
    let changed = false;
    for (let at = 0; at < this.rows; at++) {
      const column = this.basis[at]!;
      if (!this.barred[column] || this.cost[column]! >= this.penalty) continue;
      this.cost[column] = this.penalty;
      changed = true;
    }
    if (changed) this.priceOut();
  }

  private priceOut(): void {
    const { rows, inverse, dual, basis } = this;
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
      for (let c = 0; c < rows; c++) {
        const old = inverse[c * rows + pivot]!;
        if (old === 0) continue;
        const share = old / head;
        for (const r of touched) inverse[c * rows + r]! -= share * this.entering[r]!;
        inverse[c * rows + pivot] = share;
      }
      basis[pivot] = column;
      this.basicIn[column] = pivot;
    }
    level.fill(0);
    for (let c = 0; c < rows; c++) {
      const amount = this.wanted[c]!;
      if (amount !== 0) for (let r = 0; r < rows; r++) level[r]! += amount * inverse[c * rows + r]!;
    }
    this.priceOut();
  }
}
