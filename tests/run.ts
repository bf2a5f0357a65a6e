/**
 * `npm test`: everything CI runs, from lint to the spreadsheet checks. Closes with "N passed, N failed"; a check that had
 * to be left out is named in capitals, and fails where CI is set.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { missingTools } from './tools';

interface Step {
  readonly name: string;
  readonly command: readonly [string, ...string[]];
}
interface Outcome {
  readonly name: string;
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** What is read of vitest's report. */
interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly unknown[] }[];
}

/** Runs one command and shows its output when it is done, so that steps running side by side don't mix. */
function run(step: Step): Promise<Outcome> {
  const began = Date.now();
  const [program, ...args] = step.command;
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, NO_COLOR: '1' },
    });
    const output: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => output.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => output.push(chunk));
    child.on('error', (error) => output.push(Buffer.from(String(error))));
    child.on('close', (code) => {
      const seconds = ((Date.now() - began) / 1000).toFixed(1);
      console.log(`\n${code === 0 ? 'ok    ' : 'FAILED'} ${step.name} (${seconds} s)`);
      const text = Buffer.concat(output).toString().trim();
      if (code !== 0 || step.command.includes('vitest')) console.log(text);
      resolve({ name: step.name, passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 });
    });
  });
}

/** The same for a project of vitest, counting the tests that it ran. */
async function runTests(name: string, project: string): Promise<Outcome> {
  const path = `artifacts/vitest-${project}.json`;
  rmSync(path, { force: true });
  // Five lanes for two cores are enough.
  const args = ['--project', project, '--maxWorkers=1'];
  const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${path}`];
  const outcome = await run({ name, command: ['npx', 'vitest', 'run', ...args, ...reporters] });
  try {
    const report = JSON.parse(readFileSync(path, 'utf8')) as Report;
    // A file that can't even be loaded has no tests, and counts as one that failed.
    const unloaded = report.testResults.filter(
      (file) => file.status === 'failed' && file.assertionResults.length === 0,
    );
    return {
      name,
      passed: report.numPassedTests,
      failed: Math.max(report.numFailedTests + unloaded.length, outcome.failed),
      skipped: report.numPendingTests + report.numTodoTests,
    };
  } catch {
    return { ...outcome, failed: 1 };
  }
}

const script = (name: string) => () => run({ name, command: ['npm', 'run', '--silent', name] });

/** One after the other, in a lane beside others. */
async function lane(...steps: readonly (() => Promise<Outcome>)[]): Promise<Outcome[]> {
  const outcomes: Outcome[] = [];
  for (const step of steps) outcomes.push(await step());
  return outcomes;
}

async function main(): Promise<void> {
  mkdirSync('artifacts', { recursive: true });
  const missing = missingTools();
  const tests = (project: string) => () => runTests(`tests: ${project}`, project);
  const driven = (project: 'browser' | 'spreadsheet') =>
    missing.some((tool) => tool.project === project) ? [] : [tests(project)];
  // What is generated is checked before the build, which generates some of it anew.
  const ready = lane(script('stale'), script('build'));
  // A browser and a spreadsheet program are driven one test at a time and waited for: what else there is runs beside them.
  const lanes = await Promise.all([
    ready,
    lane(...driven('spreadsheet'), script('lint'), script('types')),
    lane(tests('unit')),
    ready.then(() => lane(...driven('browser'))),
    ready.then(() => lane(tests('built'))),
  ]);
  const outcomes = lanes.flat();

  const skipped = outcomes.reduce((sum, outcome) => sum + outcome.skipped, 0);
  for (const tool of missing) console.log(`\nLEFT OUT: tests/${tool.project} — ${tool.advice}`);
  if (skipped > 0) console.log(`\nSKIPPED: ${skipped} tests are marked to be skipped.`);
  const leftOut = process.env['CI'] ? missing.length + skipped : 0;

  const passed = outcomes.reduce((sum, outcome) => sum + outcome.passed, 0);
  const failed = outcomes.reduce((sum, outcome) => sum + outcome.failed, 0) + leftOut;
  console.log(`\n${passed} passed, ${failed} failed`);
  process.exitCode = failed === 0 ? 0 : 1;
}

await main();
