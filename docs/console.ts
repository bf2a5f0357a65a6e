import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

/** The pages whose commands are run: what they show is what the command prints. */
export const PAGES_WITH_COMMANDS = ['README.md', 'docs/guide.md'];

const BLOCK = /(```console\n)([\s\S]*?)(```)/g;

/**
 * The page with what each command prints put below it. In a block marked `console`, a line that starts with "$ " is a
 * command for the shell; everything else in the block is output and is made anew.
 */
export function withOutputs(page: string, run: (command: string) => string): string {
  return page.replace(BLOCK, (_, open: string, body: string, close: string) => {
    const commands = body.split('\n').filter((line) => line.startsWith('$ '));
    return open + commands.map((line) => `${line}\n${run(line.slice(2))}`).join('') + close;
  });
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
