import { spawnSync } from 'node:child_process';

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built command as a user would, from the project's folder. */
export function archwright(args: readonly string[], input = ''): Ran {
  const ran = spawnSync(process.execPath, ['dist/cli/archwright.cjs', ...args], {
    input,
    encoding: 'utf8',
    timeout: 30_000,
  });
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
}
