import type { Host } from '../../host';
import type { Core } from '../core';
import type { Action } from '../reducer';
import type { PaneState, Plans } from '../state';
import type { Store } from '../store';

/** What every deed works with. */
export interface Bench {
  readonly store: Store<PaneState, Action>;
  readonly host: Host;
  readonly core: Core;
  readonly options: PaneOptions;
}

export interface OfficeTheme {
  readonly bodyBackgroundColor: string;
  readonly bodyForegroundColor: string;
}

export interface PaneOptions {
  /** Decides the decimal mark shown and read; the browser's own where left out. */
  readonly locale?: string;
  /** The host program's colors; light or dark by the system where left out. */
  readonly theme?: OfficeTheme;
  /** The example schedule, for first use. */
  readonly example: () => Promise<{ readonly name: string; readonly bytes: Uint8Array }>;
  /** False where the host program ignores a download, as Excel on a Mac does: files are shown to be copied instead. */
  readonly savesFiles?: boolean;
  /** The sheet that shows the example, where the workbook has it: read in place of the file, with what was changed in it. */
  readonly exampleSheet?: string;
  /** The list and what was typed into its openings are kept with the workbook, and are there again when it is opened. */
  readonly keepsList?: boolean;
  /** How the workbook's plan stands, from the start and whenever it changes, and the way to make it anew: for a page that says so beside the sheet. */
  readonly onPlans?: (plans: Plans, bringUpToDate: () => void) => void;
  /** Where the page around the pane can print drawings. */
  readonly onPrint?: (drawings: readonly DrawingPage[]) => void;
}

/** A drawing for a page of its own. */
export interface DrawingPage {
  readonly caption: string;
  readonly svg: string;
}

/** Lets the page draw and answer before the work goes on. */
export function breathe(): Promise<void> {
  return new Promise((resume) => {
    setTimeout(resume, 0);
  });
}

let stopper = new AbortController();

/** Asks whatever is under way to stop; the workbook is left as it was. */
export function stop(): void {
  stopper.abort();
}

/**
 * Runs one deed that the user waits for; whatever goes wrong in it is told in words and nothing is left half set. One that
 * can be stopped looks at the signal. While another is under way it is not begun.
 */
export async function work<T>(
  bench: Bench,
  what: string,
  deed: (signal: AbortSignal) => Promise<T>,
  canStop = false,
): Promise<T | undefined> {
  const { store } = bench;
  if (store.get().work) return undefined;
  stopper = new AbortController();
  store.send({ type: 'working', work: { what, done: 0, of: null, canStop } });
  try {
    return await deed(stopper.signal);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    fail(bench, `${what} failed: ${why}`);
    return undefined;
  } finally {
    store.send({ type: 'working', work: null });
  }
}

export function fail({ store }: Bench, text: string): void {
  store.send({ type: 'told', notice: { tone: 'error', text } });
}

export function tell({ store }: Bench, text: string): void {
  store.send({ type: 'told', notice: { tone: 'done', text } });
}
