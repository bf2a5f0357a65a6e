import type { GridLibrary } from '../library';

/** How long the page may wait for its turn, in ms; shorter turns let it redraw between them, and take longer in all. */
const TURN_MS = 50;

/** Long work done in turns, between which the page draws and takes typing. */
export class Turns {
  private began = performance.now();

  constructor(private readonly library: GridLibrary) {}

  /** Whether the page has waited long enough. */
  due(): boolean {
    return performance.now() - this.began >= TURN_MS;
  }

  async pass(): Promise<void> {
    let close: () => void = () => undefined;
    await new Promise<void>((resolve) => {
      close = this.library.core.requestImmediateMacroTask(() => resolve());
    });
    close();
    this.began = performance.now();
  }

  /** Does work step by step, as long as `wanted` says so after each turn; false where it was broken off. */
  async take(steps: Iterable<void>, wanted: () => boolean): Promise<boolean> {
    let count = 0;
    for (const _step of steps) {
      if (++count % 16 !== 0 || !this.due()) continue;
      await this.pass();
      if (!wanted()) return false;
    }
    return true;
  }
}
