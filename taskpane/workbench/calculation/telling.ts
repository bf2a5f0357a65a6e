import { pictured } from './turns';

/** Shorter calculations, in ms, are not worth a word. */
const MOMENT_MS = 50;

/** Tells of calculations that take more than a moment: at once where the last one did, else when the moment is over. */
export class Telling {
  private readonly listeners: ((calculating: boolean) => void)[] = [];
  private told = false;
  private moment: ReturnType<typeof setTimeout> | undefined;
  private began = 0;
  /** The last calculation, in ms. */
  private took = 0;

  hear(listener: (calculating: boolean) => void): void {
    this.listeners.push(listener);
  }

  /** Other sheets stand there now: how long a calculation takes is not known, and one too many is told of rather than one too few. */
  unknown(): void {
    this.took = MOMENT_MS;
  }

  /** Before a calculation: of a long one the word, and what was typed, stand on the page before work that keeps it from drawing. */
  async begins(): Promise<void> {
    this.began = performance.now();
    clearTimeout(this.moment);
    if (this.took < MOMENT_MS) {
      this.moment = setTimeout(() => this.tell(true), MOMENT_MS);
      return;
    }
    this.tell(true);
    await pictured();
  }

  ends(): void {
    clearTimeout(this.moment);
    this.took = performance.now() - this.began;
    this.tell(false);
  }

  private tell(now: boolean): void {
    if (now !== this.told) for (const listener of this.listeners) listener(now);
    this.told = now;
  }
}
