import { existsSync, readdirSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { test } from 'vitest';
import { changesOf } from './report';

/*
 * `CHANGED="src/arc.ts src/blank" npm run mutants`: changes one number or operator of these sources at a time, runs the tests of
 * the same name or room, and reports the changes that none of them noticed. Such a change is a test that is missing, or one that
 * means nothing (the order of equal things): say which in explained.ts. HELD names other tests, MOST_MS how long those of one
 * change may take together.
 */
const words = (name: string) => (process.env[name] ?? '').split(' ').filter((word) => word !== '');
const within = (path: string, ending: string): string[] =>
  statSync(path).isDirectory()
    ? readdirSync(path)
        .filter((name) => name.endsWith(ending))
        .map((name) => join(path, name))
    : [path];

/** The test of a source's name, or else all of its room. */
function testsOf(source: string): string[] {
  const own = join('tests', dirname(source).slice('src'.length), basename(source).replace(/\.ts$/, '.test.ts'));
  return existsSync(own) ? [own] : within(dirname(own), '.test.ts');
}

test('every change is noticed', { timeout: 86_400_000 }, async () => {
  const changed = words('CHANGED').flatMap((path) => within(path, '.ts'));
  if (changed.length === 0) throw new Error('CHANGED names no source: CHANGED="src/arc.ts src/blank" npm run mutants');
  const held = words('HELD').flatMap((path) => within(path, '.test.ts'));
  const tests = new Set(held.length > 0 ? held : changed.flatMap(testsOf));
  const { changes, unnoticed, explained, needless } = await changesOf(
    changed,
    [...tests],
    Number(process.env['MOST_MS'] ?? Infinity),
    // Said at once, so that a run that is stopped is not lost.
    (line) => console.log(line),
  );
  for (const line of needless) console.log(`explained, but noticed: ${line}`);
  console.log(`${changes} changes, ${unnoticed.length} that no test noticed, ${explained} explained`);
});
