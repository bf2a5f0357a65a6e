import type { ExitCode, Io } from './io';
import type { Progress } from './progress';

/** The command was called wrongly: says how, and where to read more. */
export function wrongUsage(io: Io, command: string, message: string): ExitCode {
  io.say(`${message}\nSee archwright ${command} --help.`);
  return 2;
}

/** What the command was given can't be used: says why, the progress bar out of the way. */
export function cannotUse(io: Io, message: string, progress?: Progress): ExitCode {
  progress?.clear();
  io.say(message);
  return 1;
}
