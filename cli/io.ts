import type { Readable } from 'node:stream';

/** What a command talks through: data out, messages to the side, and whether a person is watching. */
export interface Io {
  readonly stdin: Readable;
  /** Data: what the user asked for. */
  out(text: string): void;
  /** Messages: what went wrong, progress, advice. */
  say(text: string): void;
  /** Writes over the line of messages that the cursor is on. */
  rewrite(text: string): void;
  /** Messages go to a terminal, so that a progress bar makes sense. */
  readonly watched: boolean;
}

/** 0 done; 1 the input can't be used; 2 wrong usage. */
export type ExitCode = 0 | 1 | 2;

export interface Command {
  /** One line for the list of commands. */
  readonly summary: string;
  readonly help: string;
  run(args: readonly string[], io: Io): Promise<ExitCode>;
}
