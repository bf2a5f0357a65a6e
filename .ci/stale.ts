/** `npm run stale`: makes the generated files again and fails where one of them was not up to date. */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const GENERATED_IN = ['functions', 'docs'];
const GENERATORS = ['functions', 'docs'];

function contents(): Map<string, string> {
  const files = new Map<string, string>();
  for (const folder of GENERATED_IN.filter((name) => existsSync(name))) {
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      if (!entry.isFile()) continue;
      const path = join(entry.parentPath, entry.name);
      files.set(path, readFileSync(path).toString('base64'));
    }
  }
  return files;
}

const before = contents();
for (const name of GENERATORS) execFileSync('npm', ['run', '--silent', name], { stdio: 'inherit' });
const stale = [...contents()].filter(([path, content]) => before.get(path) !== content).map(([path]) => path);
if (stale.length > 0) {
  console.error(`Not up to date: ${stale.join(', ')}. Commit what npm run functions and npm run docs make.`);
  process.exitCode = 1;
}
