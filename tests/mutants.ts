/**
 * `npm run mutants -- src/arc.ts src/machine.ts --most 40`: changes one number or operator at a time in a copy of the
 * project, runs the tests, and reports the changes that none of them noticed. Such a change is a test that is missing, or
 * one that means nothing (a limit of rounding, the order of equal things): say which.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import ts from 'typescript';
import { random } from './random';

/** A place in a file with the text to put there instead. */
interface Mutant {
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly from: string;
  readonly to: string;
}

const NEIGHBORS = new Map<ts.SyntaxKind, string>([
  [ts.SyntaxKind.PlusToken, '-'],
  [ts.SyntaxKind.MinusToken, '+'],
  [ts.SyntaxKind.AsteriskToken, '/'],
  [ts.SyntaxKind.SlashToken, '*'],
  [ts.SyntaxKind.LessThanToken, '<='],
  [ts.SyntaxKind.LessThanEqualsToken, '<'],
  [ts.SyntaxKind.GreaterThanToken, '>='],
  [ts.SyntaxKind.GreaterThanEqualsToken, '>'],
  [ts.SyntaxKind.EqualsEqualsEqualsToken, '!=='],
  [ts.SyntaxKind.ExclamationEqualsEqualsToken, '==='],
  [ts.SyntaxKind.AmpersandAmpersandToken, '||'],
  [ts.SyntaxKind.BarBarToken, '&&'],
]);

/** What runs without the built product; what is compared cell by cell is slow, and left to `npm test`. */
const COPIED = ['src', 'functions', 'taskpane', 'cli', 'docs', 'examples', 'tests', 'bench', 'package.json', 'manifest.xml', 'tsconfig.json', 'vitest.config.ts', 'README.md', 'DEVELOPERS.md']; // prettier-ignore

function mutantsIn(file: string): Mutant[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  const found: Mutant[] = [];
  const put = (node: ts.Node, to: string) =>
    found.push({ file, start: node.getStart(), end: node.getEnd(), from: node.getText(), to });
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node)) return;
    if (ts.isNumericLiteral(node)) put(node, node.text === '0' ? '1' : `(${node.getText()} * 1.01)`);
    if (ts.isBinaryExpression(node)) {
      const to = NEIGHBORS.get(node.operatorToken.kind);
      if (to !== undefined) put(node.operatorToken, to);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function lineOf({ file, start }: Mutant): number {
  return readFileSync(file, 'utf8').slice(0, start).split('\n').length;
}

/** Whether these tests of the copy fail. */
function fails(copy: string, args: readonly string[]): boolean {
  const run = spawnSync('npx', ['vitest', ...args, '--run', '--project', 'unit', '--bail', '1', '--reporter', 'dot'], {
    cwd: copy,
    encoding: 'utf8',
    timeout: 600_000,
  });
  return run.status !== 0;
}

/** The tests beside a file: of its own, or of its room. */
function testsBeside(file: string): string {
  const own = file.replace(/^src\//, 'tests/').replace(/\.ts$/, '.test.ts');
  return existsSync(own) ? own : own.replace(/\/[^/]*$/, '/');
}

/** Tests that fail without any change would notice every one. */
const sound = new Set<string>();
function mustPass(copy: string, args: readonly string[]): void {
  const key = args.join(' ');
  if (sound.has(key)) return;
  if (fails(copy, args)) throw new Error(`vitest ${key} fails without any change.`);
  sound.add(key);
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { most: { type: 'string', default: '40' }, seed: { type: 'string', default: '1' } },
});
const copy = mkdtempSync(join(tmpdir(), 'archwright-mutants-'));
try {
  for (const path of COPIED) cpSync(path, join(copy, path), { recursive: true });
  symlinkSync(resolve('node_modules'), join(copy, 'node_modules'));

  const all = positionals.flatMap(mutantsIn);
  const any = random(Number(values.seed));
  const chosen: Mutant[] = [];
  while (all.length > 0 && chosen.length < Number(values.most)) {
    chosen.push(...all.splice(any.whole(0, all.length - 1), 1));
  }
  let survived = 0;
  for (const mutant of chosen) {
    const text = readFileSync(mutant.file, 'utf8');
    const target = join(copy, mutant.file);
    const ways = [[testsBeside(mutant.file)], ['related', mutant.file]];
    const notices = (args: readonly string[]) => {
      writeFileSync(target, text);
      mustPass(copy, args);
      writeFileSync(target, text.slice(0, mutant.start) + mutant.to + text.slice(mutant.end));
      return fails(copy, args);
    };
    const seen = ways.some(notices);
    writeFileSync(target, text);
    if (!seen) survived++;
    console.log(`${seen ? 'noticed ' : 'SURVIVED'} ${mutant.file}:${lineOf(mutant)}  ${mutant.from} → ${mutant.to}`);
  }
  console.log(`${chosen.length} changes, ${survived} that no test noticed`);
} finally {
  rmSync(copy, { recursive: true, force: true });
}
