import { patternKey, type Pattern } from './cutting';
import type { Effort } from './effort';
import { Simplex } from './simplex';

/** A piece left unmade is priced like so many of the dearest boards. */
export const SHORT_PRICES = 1_000;
/** Work of adding a pattern. */
const ADDING = 500;

/**
 * The restricted master problem of pattern generation: least cost of boards, in fractions, that cover what is wanted with the
 * patterns known so far.
 *
 * Rows: one for each size (pieces made − surplus = demand), one for each kind of board of limited number (boards + spare = limit).
 * Columns: a "short" for each size row (a piece left unmade, at a price no plan would pay), a surplus or spare for each row,
 * exchanges at no cost that let a longer piece serve as the next shorter one (they steady the duals while patterns are few; Valério
 * de Carvalho 2005), then patterns. `fix` takes boards of a pattern as bought and leaves the problem of what is still wanted.
 */
export class Master {
  private readonly sizeRows: number;
  private readonly limitRow: readonly number[];
  /** What is still wanted or, in limit rows, still to be had. */
  readonly wanted: Float64Array;
  /** Patterns by column, from `firstPattern` on. */
  readonly patterns: Pattern[] = [];
  private readonly known = new Set<string>();
  private readonly firstPattern: number;
  private readonly firstExchange: number;
  private simplex: Simplex;

  constructor(
    demand: readonly number[],
    limits: readonly number[],
    private readonly prices: readonly number[],
    private readonly penalty: number,
    private readonly effort: Effort,
    exchanges = true,
  ) {
    this.sizeRows = demand.length;
    let rows = demand.length;
    this.limitRow = limits.map((limit) => (limit === Infinity ? -1 : rows++));
    this.wanted = Float64Array.from([...demand, ...limits.filter((limit) => limit < Infinity)]);
    const simplex = (this.simplex = new Simplex(this.wanted, effort));
    const shorts = demand.map((_, at) => simplex.append(penalty, [at], [1]));
    const spares = Array.from(this.wanted, (_, at) => simplex.append(0, [at], [at < this.sizeRows ? -1 : 1]));
    this.firstExchange = simplex.cost.length;
    for (let at = 0; exchanges && at + 1 < this.sizeRows; at++) simplex.append(0, [at, at + 1], [-1, 1]);
    this.firstPattern = simplex.cost.length;
    simplex.begin([...shorts, ...spares.slice(this.sizeRows)]);
  }

  /** The same problem as far as it has come, to go on with on its own. */
  copy(effort: Effort): Master {
    const limits = this.limitRow.map((row) => (row < 0 ? Infinity : this.wanted[row]!));
    const demand = [...this.wanted.subarray(0, this.sizeRows)];
    const exchanges = this.firstExchange < this.firstPattern;
    const copy = new Master(demand, limits, this.prices, this.penalty, effort, exchanges);
    copy.simplex = this.simplex.copy(copy.wanted, effort);
    for (const pattern of this.patterns) copy.patterns.push(pattern);
    for (const key of this.known) copy.known.add(key);
    return copy;
  }

  /** Duals of the rows: what one more piece of each size would cost, then of each limit. */
  get dual(): Float64Array {
    return this.simplex.dual;
  }

  primal(steps = Infinity): boolean {
    return this.simplex.primal(steps);
  }

  dualSteps(): boolean {
    return this.simplex.dualSteps();
  }

  value(): number {
    return this.simplex.value();
  }

  /** Adds a pattern; false where it is known already. */
  add(pattern: Pattern): boolean {
    const key = patternKey(pattern);
    this.effort.spend(ADDING);
    if (this.known.has(key)) return false;
    this.known.add(key);
    this.patterns.push(pattern);
    const limit = this.limitRow[pattern.board]!;
    const rows = limit < 0 ? pattern.pieces : [...pattern.pieces, limit];
    const entries = limit < 0 ? pattern.counts : [...pattern.counts, 1];
    const column = this.simplex.append(this.prices[pattern.board]!, rows, entries);
    this.simplex.barred[column] = !this.simplex.fits(column);
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

  priceOf(board: number): number {
    return this.prices[board]!;
  }

  /** Dual of a board kind's limit, 0 or less. */
  limitDual(board: number): number {
    const row = this.limitRow[board]!;
    return row < 0 ? 0 : this.dual[row]!;
  }

  /** Patterns used in the fractional plan, and how much of each. */
  used(): { column: number; pattern: Pattern; level: number }[] {
    const used: { column: number; pattern: Pattern; level: number }[] = [];
    const { basis, level } = this.simplex;
    for (let at = 0; at < basis.length; at++) {
      const column = basis[at]!;
      if (column < this.firstPattern || level[at]! <= 1e-7) continue;
      used.push({ column, pattern: this.patterns[column - this.firstPattern]!, level: level[at]! });
    }
    return used;
  }

  /** Takes `times` boards of a pattern as bought; patterns that make more than is then wanted are barred. */
  fix(column: number, times: number): void {
    const { simplex } = this;
    simplex.take(column, times);
    this.effort.spend(5 * simplex.cost.length);
    for (let at = this.firstPattern; at < simplex.cost.length; at++) simplex.barred[at] ||= !simplex.fits(at);
  }

  /** Ends exchanges, so that the plan is made of patterns alone; false where they were ended before. */
  barExchanges(): boolean {
    const { barred } = this.simplex;
    if (this.firstExchange === this.firstPattern || barred[this.firstExchange]) return false;
    barred.fill(true, this.firstExchange, this.firstPattern);
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
    this.patterns.forEach((pattern, at) => unfit(pattern) && (this.simplex.barred[this.firstPattern + at] = true));
    this.dropBarred();
  }

  /** Drives barred columns out of the plan by pricing them like unmade pieces. */
  dropBarred(): void {
    this.simplex.priceBarred(this.penalty);
  }
}
