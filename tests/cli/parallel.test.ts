import { execFile } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { ownFolder, partsOf, put } from './folder';

const run = promisify(execFile);
const folder = ownFolder();

const JOBS = [1, 2, 3].map((job) => {
  const rows = Array.from(
    { length: 15 },
    (_, at) => `J${job}-${at},${1 + (at % 3)},segmental,${24 + at + job},${5 + job}`,
  );
  return put(folder, `job-${job}.csv`, ['Mark,Qty,Head,Width,Rise', ...rows].join('\n'));
});

async function takeoff(path: string, out: string) {
  const file = path.replace('.csv', out);
  const args = ['dist/cli/archwright.cjs', 'takeoff', path, '--out', file, '--json'];
  const { stdout } = await run(process.execPath, args, { encoding: 'utf8', timeout: 120_000, maxBuffer: 1e8 });
  const { openings, problems, setups, stock } = JSON.parse(stdout) as Record<string, unknown>;
  return { openings, problems, setups, stock, sheet: partsOf(file)['xl/worksheets/sheet1.xml'] };
}

test('takeoffs run at once give what they give one by one, and leave nothing else behind', async () => {
  const alone: Awaited<ReturnType<typeof takeoff>>[] = [];
  for (const job of JOBS) alone.push(await takeoff(job, '-alone.xlsx'));
  const together = await Promise.all(JOBS.map((job) => takeoff(job, '-together.xlsx')));
  expect(together).toEqual(alone);
  expect(alone.map(({ openings }) => (openings as unknown[]).length)).toEqual([15, 15, 15]);
  expect(readdirSync(folder)).toHaveLength(3 * JOBS.length);
}, 240_000);
