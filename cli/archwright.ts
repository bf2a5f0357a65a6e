import { harmless } from './harmless';
import type { Command, ExitCode, Io } from './io';

declare const ARCHWRIGHT_VERSION: string;

/** Each command is loaded when it is asked for, so that a small one starts quickly. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  fn: async () => (await import('./fn')).fn,
  takeoff: async () => (await import('./takeoff')).takeoffCommand,
  check: async () => (await import('./check')).checkCommand,
  proposal: async () => (await import('./proposal')).proposalCommand,
  compare: async () => (await import('./compare')).compareCommand,
  stock: async () => (await import('./stock')).stock,
  tickets: async () => (await import('./tickets')).ticketsCommand,
  template: async () => (await import('./template')).template,
};

export async function main(args: readonly string[], io: Io): Promise<ExitCode> {
  const [name, ...rest] = args;
  if (name === '--version') {
    io.out(ARCHWRIGHT_VERSION + '\n');
    return 0;
  }
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    const text = await overview();
    if (name === undefined) io.say(text);
    else io.out(text);
    return name === undefined ? 2 : 0;
  }
  const load = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!load) {
    io.say(`archwright has no command "${name}"; it has ${Object.keys(COMMANDS).join(', ')}.`);
    return 2;
  }
  const command = await load();
  if (rest.includes('--help') || rest[0] === '-h') {
    io.out(command.help);
    return 0;
  }
  return command.run(rest, io);
}

async function overview(): Promise<string> {
  const lines = await Promise.all(
    Object.entries(COMMANDS).map(async ([name, load]) => `  ${name.padEnd(10)}${(await load()).summary}`),
  );
  return `archwright COMMAND …, the takeoff of curved moldings on the command line

${lines.join('\n')}

archwright COMMAND --help tells more. Exit codes: 0 done, 1 the input can't be used, 2 wrong usage.
`;
}

/** The real console. Output to a pipe whose reader has left ends quietly, as other commands do. */
function consoleIo(): Io {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
      process.exit(0);
    });
  }
  return {
    stdin: process.stdin,
    out: (text) => void process.stdout.write(harmless(text)),
    say: (text) => void process.stderr.write(harmless(text.endsWith('\n') ? text : text + '\n')),
    rewrite: (text) => void process.stderr.write('\r' + harmless(text)),
    watched: process.stderr.isTTY === true,
  };
}

main(process.argv.slice(2), consoleIo()).then(
  (code) => (process.exitCode = code),
  (error: unknown) => {
    process.stderr.write(`archwright stopped on a fault of its own: ${error instanceof Error ? error.stack : error}\n`);
    process.exitCode = 1;
  },
);
