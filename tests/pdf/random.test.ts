import { expect, test } from 'vitest';
import { proof } from './tally';

/** `npm run proof:pdf` reads 2,000 of them. */
const TABLES = 20;

test(
  'of random tables no opening is silently wrong or lost, and nearly every cell is right',
  { timeout: 60_000 },
  async () => {
    const tally = await proof(0, TABLES, false);
    expect([...tally.wrong, ...tally.lost]).toEqual([]);
    expect(tally.right).toBeGreaterThan(0.9 * tally.openings);
    expect(tally.ruled[0] / tally.ruled[1]).toBeGreaterThanOrEqual(0.995);
    expect(tally.open[0] / tally.open[1]).toBeGreaterThanOrEqual(0.97);
  },
);

/** Type of one width, letters drawn one by one and tables without side rules are asked about more often, never guessed. */
test(
  'of layouts that the reader was not built with none is silently wrong or lost either',
  { timeout: 60_000 },
  async () => {
    const tally = await proof(0, TABLES, true);
    expect([...tally.wrong, ...tally.lost]).toEqual([]);
    expect(tally.right).toBeGreaterThan(0.6 * tally.openings);
  },
);

test('in rows set tight a plain fraction keeps its own denominator, not that of the row below', async () => {
  const tally = await proof(1144, 1, true);
  expect([tally.wrong, tally.lost, tally.right]).toEqual([[], [], 22]);
});
