import { spawnSync } from 'node:child_process';
import { existsSync, realpathSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';

/** A Python that can drive LibreOffice (its module `uno`): Debian's, the one that came with LibreOffice, or null. */
export function findUnoPython(): string | null {
  const offices = (process.env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, 'soffice'))
    .filter((path) => existsSync(path));
  const own = offices.map((path) => join(dirname(realpathSync(path)), 'python'));
  const can = (python: string) => spawnSync(python, ['-c', 'import uno']).status === 0;
  return ['/usr/bin/python3', 'python3', ...own].find(can) ?? null;
}
