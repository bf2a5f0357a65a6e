import type { Io } from './io';

const WIDTH = 24;

/** A bar that rewrites its line on a terminal, and is silent anywhere else. */
export class Progress {
  #shown = 0;

  constructor(
    private readonly io: Io,
    private readonly steps: number,
  ) {}

  /** `done` of the steps are behind us, `doing` is next. */
  show(done: number, doing: string): void {
    if (!this.io.watched) return;
    const full = Math.round((done / this.steps) * WIDTH);
    const line = `[${'#'.repeat(full)}${'·'.repeat(WIDTH - full)}] ${doing}`;
    this.io.rewrite(line.padEnd(this.#shown));
    this.#shown = line.length;
  }

  clear(): void {
    if (this.#shown === 0) return;
    this.io.rewrite(' '.repeat(this.#shown));
    this.io.rewrite('');
    this.#shown = 0;
  }
}
