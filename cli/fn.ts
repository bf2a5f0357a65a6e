import { createInterface } from 'node:readline';
import { call } from '../functions/call';
import { FUNCTIONS } from '../functions/registry';
import { wrongUsage } from './endings';
import type { Command, ExitCode, Io } from './io';

const help = `archwright fn NAME ARG…    the result of one worksheet function, as JSON on one line
archwright fn --lines      many calls from stdin, a JSON array such as ["RADIUS",36,6] on each line

An argument that reads as JSON is that value: a number, null for one left out, rows such as [[24],[17]] for a range of
cells. Anything else is text. A refused argument gives {"error":"#VALUE!","message":"…"} and exit code 1.

  archwright fn RADIUS 36 6
  archwright fn HEADLENGTH "half round" "3'-0\\"" null 3.5

Functions: ${FUNCTIONS.map(({ name }) => name).join(', ')}.
`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  // Not parseArgs: an argument such as -3 is a value here, not an option.
  const [name, ...rest] = args;
  if (name === '--lines' && rest.length === 0) return runLines(io);
  if (name === undefined || name.startsWith('-')) {
    return wrongUsage(
      io,
      'fn',
      name === undefined ? 'fn needs the name of a worksheet function.' : `fn has no option "${args.join(' ')}".`,
    );
  }
  const result = call(name, rest.map(readArgument));
  io.out(print(result) + '\n');
  return 'error' in result ? 1 : 0;
}

async function runLines(io: Io): Promise<ExitCode> {
  let number = 0;
  for await (const line of createInterface({ input: io.stdin, crlfDelay: Infinity })) {
    number += 1;
    io.out(answerLine(line, number) + '\n');
  }
  return 0;
}

/** One line in, one line out, whatever the line holds: the caller pairs them by their order. */
function answerLine(line: string, number: number): string {
  const words = readArgument(line);
  if (!Array.isArray(words) || typeof words[0] !== 'string') {
    const message = `line ${number} must be a JSON array such as ["RADIUS",36,6]; got ${line.slice(0, 80)}`;
    return JSON.stringify({ error: '#VALUE!', message });
  }
  return print(call(words[0], words.slice(1)));
}

function readArgument(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

function print(result: ReturnType<typeof call>): string {
  return JSON.stringify('error' in result ? result : result.value);
}

export const fn: Command = { summary: 'the result of one worksheet function', help, run };
