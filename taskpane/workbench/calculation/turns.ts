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
    for (const _step of steps) {
      if (!this.due()) continue;
      await this.pass();
      if (!wanted()) return false;
    }
    return true;
  }
}

/** How long a picture is waited for, in ms, on a page that draws none. */
const PICTURE_MS = 100;

/** Waits until the page has drawn what was changed so far; where nothing is drawn, not at all. */
export function pictured(): Promise<void> {
  if (typeof requestAnimationFrame === 'undefined' || document.hidden) return Promise.resolve();
  return new Promise((resolve) => {
    const limit = setTimeout(resolve, PICTURE_MS);
    requestAnimationFrame(() =>
      // The picture is drawn when what was asked for before it is done.
      setTimeout(() => {
        clearTimeout(limit);
        resolve();
      }),
    );
  });
}
