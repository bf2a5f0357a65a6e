import { build, type Plugin } from 'esbuild';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { relative, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runInThisContext } from 'node:vm';
import { expect } from 'vitest';
import { changeable, type Change } from './changes';

/** A test held in memory, to be run again and again. */
export interface HeldTest {
  readonly name: string;
  readonly run: () => unknown;
}

/** A test file with everything it imports, ready to be loaded anew. */
export interface HeldFile {
  readonly name: string;
  /** Loads the sources and collects the tests. */
  readonly load: () => HeldTest[];
}

type Body = (...args: unknown[]) => unknown;

/** As much of vitest as the held files use: a test is put aside instead of run. */
function collector(found: HeldTest[]) {
  const setUps: (() => unknown)[] = [];
  let isSetUp = false;
  const test = (name: string, body: Body) => {
    const run = () => {
      if (!isSetUp) for (const setUp of setUps) setUp();
      isSetUp = true;
      return body();
    };
    found.push({ name, run });
  };
  const each =
    (use: (name: string, body: Body) => void) =>
    (rows: readonly unknown[], ...rest: readonly unknown[]) =>
    (name: string, body: Body) => {
      if (rest.length > 0 || !Array.isArray(rows)) throw new Error(`a table in a template isn't held: ${name}`);
      rows.forEach((row: unknown, at) =>
        use(`${name} [${at}]`, () => (Array.isArray(row) ? body(...(row as unknown[])) : body(row))),
      );
    };
  const describe = (_: string, body: Body) => void body();
  const both = Object.assign(test, { each: each(test) });
  return {
    test: both,
    it: both,
    describe: Object.assign(describe, { each: each(describe) }),
    expect,
    beforeAll: (setUp: () => unknown) => void setUps.push(setUp),
    afterAll: () => undefined,
  };
}

/** Makes test files loadable in memory, with the sources that `isChanged` names made changeable. */
export async function hold(
  tests: readonly string[],
  isChanged: (file: string) => boolean,
): Promise<{ files: HeldFile[]; changes: Change[] }> {
  const made = new Map<string, string>();
  const changes: Change[] = [];
  const change: Plugin = {
    name: 'changeable',
    setup({ onLoad, onResolve }) {
      onResolve({ filter: /^vitest$/ }, () => ({ path: 'vitest', namespace: 'held' }));
      onLoad({ filter: /.*/, namespace: 'held' }, () => ({ contents: 'module.exports = $vitest', loader: 'js' }));
      onLoad({ filter: /\/src\/.*\.ts$/ }, ({ path }) => {
        const file = relative('.', path);
        if (!isChanged(file)) return undefined;
        if (!made.has(file)) {
          const done = changeable(file, readFileSync(path, 'utf8'), changes.length + 1);
          changes.push(...done.changes);
          made.set(file, done.text);
        }
        return { contents: made.get(file)!, loader: 'ts' };
      });
    },
  };
  const built = await build({
    entryPoints: [...tests],
    outdir: 'held',
    outbase: '.',
    write: false,
    bundle: true,
    format: 'cjs',
    platform: 'node',
    packages: 'external',
    define: { ARCHWRIGHT_VERSION: '"0.0.0-test"', 'import.meta.url': '$url' },
    plugins: [change],
    logLevel: 'error',
  });
  const files = built.outputFiles.map(({ path: out, text }): HeldFile => {
    const name = relative('held', out).replace(/js$/, 'ts');
    const path = resolve(name);
    const source = `(function ($vitest, $url, require, module, exports) {${text}\n})`;
    const load = () => {
      const found: HeldTest[] = [];
      const module = { exports: {} };
      const start = runInThisContext(source, { filename: `held ${name}` }) as (...args: unknown[]) => void;
      start(collector(found), pathToFileURL(path).href, createRequire(path), module, module.exports);
      return found;
    };
    return { name, load };
  });
  return { files, changes };
}
