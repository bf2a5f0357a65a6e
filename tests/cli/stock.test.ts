import { describe, expect, test } from 'vitest';
import { archwright } from './archwright';
import { ownFolder, put } from './folder';

const folder = ownFolder();
const pieces = (text: string) => put(folder, 'pieces.csv', text);

interface Plan {
  boards: number;
  cost: number;
  lowerBound: number;
  proven: boolean;
  plan: { count: number; stock: number; cuts: [number, number][]; offcut: number }[];
}

describe('archwright stock', () => {
  test('--json gives a plan that makes exactly the pieces asked for', () => {
    const path = pieces('length,quantity\n24,10\n17,4\n');
    const plan = JSON.parse(archwright(['stock', path, '--stock', '96', '--kerf', '0.125', '--json']).out) as Plan;
    const made = new Map<number, number>();
    for (const { count, cuts } of plan.plan)
      for (const [length, n] of cuts) made.set(length, (made.get(length) ?? 0) + n * count);
    expect(made).toEqual(
      new Map([
        [24, 10],
        [17, 4],
      ]),
    );
    // 3 × 24 and a 17 with their kerfs fill 89.375 of 96; 308 inches of wood can't come from three boards.
    expect(plan).toMatchObject({ boards: 4, lowerBound: 4, proven: true });
  });

  test('columns are found by their names in any order, and lengths may be dimension text', () => {
    const path = pieces('Qty,What,Length\n2,leg,"3\'-6 1/2"""\n');
    const { code, out } = archwright(['stock', path, '--stock', '96,120', '--json']);
    expect(code).toBe(0);
    expect((JSON.parse(out) as Plan).plan).toEqual([{ count: 1, stock: 96, cuts: [[42.5, 2]], offcut: 11 }]);
  });

  test('prints a table with the proof for a person', () => {
    const { out } = archwright(['stock', pieces('length,quantity\n24,4\n'), '--stock', '96']);
    expect(out).toContain('1 × 96: 4 × 24, left 0');
    expect(out).toContain('proven');
  });

  test('a piece longer than every board, and a quantity that is blank or no number, exit 1 with one sentence', () => {
    for (const text of [
      'length,quantity\n200,1\n',
      'length,quantity\n24,some\n',
      'length,quantity\n24,\n17,2\n',
      'length,quantity\n24,1e1\n',
      'length,quantity\n-1,1\n',
      'a,b\n1,2\n',
      'length,quantity\n',
    ]) {
      const { code, out, err } = archwright(['stock', pieces(text), '--stock', '96']);
      expect([text, code, out]).toEqual([text, 1, '']);
      expect(err).toMatch(/^[^\n]+\.\n$/);
    }
  });

  test('wrong usage exits 2', () => {
    const path = pieces('length,quantity\n24,4\n');
    for (const args of [
      [],
      [path],
      [path, '--stock', 'long'],
      [path, '--stock', '96', '--prices', '1,2'],
      [path, '--stock', '96', '--kerf', '-1'],
    ]) {
      expect([args, archwright(['stock', ...args]).code]).toEqual([args, 2]);
    }
  });
});
