import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));

/** Before tests that need the built product: builds it where it has not been built. `npm test` always builds first. */
export function setup(): void {
  if (existsSync(PROJECT + 'dist/cli/archwright.cjs') && existsSync(PROJECT + 'dist/web/workbench.html')) return;
  execFileSync('npm', ['run', 'build'], { cwd: PROJECT, stdio: 'inherit' });
}
