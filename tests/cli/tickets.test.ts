import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { archwright } from './archwright';
import { ownFolder, put } from './folder';

const folder = ownFolder();
const SCHEDULE = put(
  folder,
  'job.csv',
  'Mark,Qty,Head,Width,Rise,Leg,Ends\nA1,2,segmental,36,6,60,legs\nA2,1,segmental,48,,,\n',
);

describe('archwright tickets', () => {
  test('prints the boards to buy without prices, and what has no ticket yet', () => {
    const { code, out } = archwright(['tickets', SCHEDULE]);
    expect(code).toBe(0);
    expect(out).toMatch(/^\d+ of Poplar 4\/4, dressed 13\/16, .*bd ft\)$/m);
    expect(out).not.toContain('each');
    expect(out).toMatch(/No ticket for No. 2 A2: .*rise/i);
    expect(archwright(['tickets', SCHEDULE, '--prices']).out).toContain('each');
  });

  test('gives exact figures as JSON, by No.', () => {
    const { out } = archwright(['tickets', SCHEDULE, '--json']);
    const { tickets, purchase, notMade } = JSON.parse(out);
    expect(tickets).toHaveLength(1);
    expect(tickets[0]).toMatchObject({ no: 1, mark: 'A1', heads: 2, pack: { sets: 2 } });
    expect(tickets[0].trim[0].left.inside).toBeCloseTo(27.2533706567, 9);
    expect(purchase[0]).not.toHaveProperty('price');
    expect(notMade).toEqual([{ no: 2, mark: 'A2', needs: [expect.stringMatching(/rise/i)] }]);
  });

  test('writes the sheets to be printed, and refuses what it can not use', () => {
    const path = join(folder, 'tickets.xlsx');
    expect(archwright(['tickets', SCHEDULE, '--out', path]).code).toBe(0);
    expect(existsSync(path)).toBe(true);
    expect(archwright(['tickets', SCHEDULE, '--drawings', join(folder, 'x.pdf')]).code).toBe(2);
    expect(archwright(['tickets']).code).toBe(2);
    expect(archwright(['tickets', SCHEDULE, '--out', SCHEDULE]).code).toBe(2);
  });
});
