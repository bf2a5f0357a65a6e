/**
 * What a search may still do. Work is counted in steps of the innermost loops, a nanosecond or two each, so that the same
 * problem ends at the same plan on any machine. A clock or the user can end it sooner, and only then does the plan depend on when.
 */
export class Effort {
  private spent = 0;
  private wasInterrupted = false;

  /** `interrupts` is asked now and then; true ends the work. */
  constructor(
    private most: number,
    private readonly interrupts: () => boolean = () => false,
    private readonly whole: Effort | null = null,
  ) {}

  spend(work: number): void {
    this.spent += work;
    this.whole?.spend(work);
  }

  get left(): number {
    return Math.max(0, Math.min(this.most - this.spent, this.whole?.left ?? Infinity));
  }

  /** True once the work is counted out, or was interrupted. */
  get ended(): boolean {
    return this.left <= 0 || this.interrupted;
  }

  /** The work didn't come to the end of its count. */
  get interrupted(): boolean {
    this.wasInterrupted ||= this.whole === null ? this.interrupts() : this.whole.interrupted;
    return this.wasInterrupted;
  }

  /** Lets it do so much more, as far as the whole allows. */
  more(work: number): void {
    this.most += work;
  }

  /** So much of what is left; what a part leaves over is still the whole's. */
  part(most: number): Effort {
    return new Effort(most, undefined, this);
  }
}
