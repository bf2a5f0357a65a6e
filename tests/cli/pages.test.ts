import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { METADATA } from '../../functions/metadata';
import { inFolderOfExamples, PAGES_WITH_COMMANDS, prose, withOutputs } from '../../docs/console';

const page = (name: string) => readFileSync(name, 'utf8');
const linked = ['README.md', 'DEVELOPERS.md', ...readdirSync('docs').filter((name) => name.endsWith('.md')).map((name) => `docs/${name}`)]; // prettier-ignore

/** A command that writes nothing prints the same for every page: it is run once. */
const printed = new Map<string, string>();
const once = (run: (command: string) => string) => (command: string) => {
  if (command.includes('--out')) return run(command);
  if (!printed.has(command)) printed.set(command, run(command));
  return printed.get(command)!;
};

describe('what the pages say', () => {
  test.each(PAGES_WITH_COMMANDS)('%s shows what its commands print now (npm run outputs makes it anew)', (name) => {
    const commands = page(name).match(/^\$ .*$/gm) ?? [];
    expect(commands.length).toBeGreaterThan(3);
    expect(inFolderOfExamples((run) => withOutputs(page(name), once(run)))).toBe(page(name));
  });

  test('every bold figure in the guide is one that the takeoff or the check of the example prints', () => {
    const all = inFolderOfExamples((run) =>
      [
        'npx archwright takeoff examples/schedule.csv',
        'npx archwright takeoff examples/schedule.csv --json',
        'npx archwright check examples/quote.csv --schedule examples/schedule.csv',
      ]
        .map(once(run))
        .join('\n'),
    );
    const bold = [...prose(page('docs/guide.md')).matchAll(/\*\*([^*]+)\*\*/g)].map((match) => match[1]!);
    const figures = bold.filter((text) => /\d/.test(text));
    expect(figures.length).toBeGreaterThan(8);
    const asPrinted = all.replaceAll(',', '');
    const strange = figures.filter((figure) => {
      const plain = figure.replaceAll(',', '').replaceAll('$', '\\$?').replace(/\./g, '\\.');
      return !new RegExp(`(?<![\\d.])${plain}(?![\\d])`).test(asPrinted);
    });
    expect(strange).toEqual([]);
  });

  test.each(linked)('%s links only to files that are there', (name) => {
    const targets = [...page(name).matchAll(/\]\((?!https?:|#)([^)#]+)(?:#[^)]*)?\)/g)].map((match) => match[1]!);
    expect(targets.filter((target) => !existsSync(join(dirname(name), target)))).toEqual([]);
  });

  test('the README counts the worksheet functions right', () => {
    expect(page('README.md')).toContain(`**Calculates** ${METADATA.length} \`ARCH\` worksheet functions,`);
  });

  test('every npm script and folder that DEVELOPERS.md names is there', () => {
    const { scripts } = JSON.parse(page('package.json')) as { scripts: Record<string, string> };
    const named = [...(page('DEVELOPERS.md') + page('README.md')).matchAll(/npm run ([a-z]+)/g)].map(
      (match) => match[1]!,
    );
    expect(named.filter((script) => !(script in scripts))).toEqual([]);
    const paths = [
      ...page('DEVELOPERS.md').matchAll(/`((?:src|cli|functions|taskpane|tests|docs|bench|examples)\/[\w./-]*)`/g),
    ];
    expect(paths.map((match) => match[1]!).filter((path) => !existsSync(path))).toEqual([]);
  });
});
