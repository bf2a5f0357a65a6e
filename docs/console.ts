import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

/** The pages whose commands are run: what they show is what the command prints. */
export const PAGES_WITH_COMMANDS = ['README.md', 'docs/guide.md'];

const BLOCK = /(```console\n)([\s\S]*?)(```)/g;

/** Stands for what is left out of a long output: a page shows as many lines before it and after it as it did. */
const LEFT_OUT = '…';

/**
 * The page with what each command prints put below it. In a block marked `console`, a line that starts with "$ " is a
 * command for the shell; everything else in the block is output and is made anew.
 */
export function withOutputs(page: string, run: (command: string) => string): string {
  return page.replace(BLOCK, (_, open: string, body: string, close: string) => {
    const shown = body.split(/^\$ (.*)\n/m).slice(1);
    const parts = shown.flatMap((command, at) => (at % 2 === 0 ? [{ command, before: shown[at + 1] ?? '' }] : []));
    return (
      open + parts.map(({ command, before }) => `$ ${command}\n${shortened(run(command), before)}`).join('') + close
    );
  });
}

function shortened(printed: string, before: string): string {
  const lines = linesOf(printed);
  const kept = linesOf(before);
  const gap = kept.indexOf(LEFT_OUT);
  const after = kept.length - gap - 1;
  if (gap < 0 || gap + after >= lines.length) return printed;
  return [...lines.slice(0, gap), LEFT_OUT, ...lines.slice(lines.length - after)].map((line) => `${line}\n`).join('');
}

function linesOf(text: string): string[] {
  return text.split('\n').slice(0, -1);
}

/** The paragraphs of a page, without its blocks of code. */
export function prose(page: string): string {
  return page.replace(/```[\s\S]*?```/g, '');
}

/** Runs the built command as a reader would, in a folder of its own that holds the examples. */
export function inFolderOfExamples<T>(work: (run: (command: string) => string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'archwright-'));
  const built = resolve('dist/cli/archwright.cjs');
  cpSync('examples', join(folder, 'examples'), { recursive: true });
  const run = (command: string): string => {
    const shown = command.replaceAll('npx archwright', `"${process.execPath}" "${built}"`);
    const { stdout, stderr } = spawnSync(shown, { cwd: folder, shell: true, encoding: 'utf8' });
    // No page ends its lines in blanks, whatever a table does.
    return `${stdout}${stderr}`.replace(/[ \t]+$/gm, '');
  };
  try {
    return work(run);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
