import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { packed } from '../pdf/bombs';
import { drawn, SCHEDULE_ROWS, SCHEDULE_WIDTHS } from '../pdf/plan';
import { archwright } from './archwright';

let folder = '';
const file = (name: string, bytes: Uint8Array) => {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
};

beforeAll(() => void (folder = mkdtempSync(join(tmpdir(), 'archwright-pdf-'))));
afterAll(() => rmSync(folder, { recursive: true }));

test(
  'a few kilobytes that unpack to very much are stopped by time or memory, in a sentence',
  { timeout: 40_000 },
  () => {
    const bomb = packed('q 1 0 0 1 0 0 cm 0 0 m 9 9 l S Q\n', 4_000_000);
    expect(bomb.length).toBeLessThan(20_000);
    const { code, out, err } = archwright(['takeoff', file('bomb.pdf', bomb)]);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(/"bomb\.pdf" can't be read\. It (?:takes longer than 8 seconds|needs more memory)/);
  },
);

test('the next file reads fine, and a question of a row in doubt is printed', async () => {
  const bytes = await drawn((sheet) => {
    sheet.table(SCHEDULE_ROWS, 50, 60, SCHEDULE_WIDTHS);
    sheet.say('XX', 52, 60 + 16 + 11.5);
  });
  const { out } = archwright(['takeoff', file('plan.pdf', bytes), '--json']);
  const { openings, questions } = JSON.parse(out) as {
    openings: readonly { span: number | null }[];
    questions: readonly { id: string }[];
  };
  expect(questions.map(({ id }) => id)).toEqual(['page:letters lie over one another in column 1']);
  expect(openings).toHaveLength(3);
});
