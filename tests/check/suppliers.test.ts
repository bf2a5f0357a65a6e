import { beforeAll, describe, expect, it } from 'vitest';
import type { QuoteCheck } from '../../src/check/quote';
import { ANSWERS, checkOf, isSum, quotedTakeoff, type Made } from './suppliersQuotes';

const checks = new Map<string, QuoteCheck>();

beforeAll(async () => {
  const taken = await quotedTakeoff();
  for (const file of Object.keys(ANSWERS)) checks.set(file, await checkOf(file, taken));
}, 120_000);

/** The verdict on every row that was made so, as "file row mark: verdict". */
function verdicts(of: (made: Made) => boolean): string[] {
  return Object.entries(ANSWERS).flatMap(([file, { lines }]) =>
    lines.filter(of).map(({ row, mark, line, kind }) => {
      const check = checks.get(file)!;
      const found = check.lines.find((one) => one.line.row === row);
      const sum = check.sums.find(({ item }) => item.row === row);
      const said = line === undefined ? found?.verdict : sum?.finding.verdict;
      return `${file} ${row} ${mark ?? line} ${kind ?? ''}: ${said ?? 'no such row'}`;
    }),
  );
}
const ending = (all: readonly string[], verdict: string) => all.filter((one) => one.endsWith(`: ${verdict}`));

describe('40 quotes in 40 layouts, worded and worked out by somebody else', () => {
  it('have 619 right lines, and each of them agrees', () => {
    const right = verdicts(({ mark, verdict }) => mark !== undefined && verdict === 'right');
    expect(right).toHaveLength(619);
    expect(right.filter((one) => !one.endsWith(': agrees'))).toEqual([]);
  });

  it('have mistakes planted in lines, and none of them is called right', () => {
    const planted = verdicts(
      ({ mark, verdict, kind }) => mark !== undefined && verdict === 'planted' && kind !== 'not quoted',
    );
    expect(planted.length).toBeGreaterThan(110);
    expect(planted.filter((one) => !one.endsWith(': differs'))).toEqual([]);
  });

  it('have sums, of which no right one is accused; only a tax without a rate can’t be told', () => {
    const right = verdicts((made) => isSum(made) && made.verdict === 'right');
    expect(ending(right, 'differs')).toEqual([]);
    expect(ending(right, 'no such row')).toEqual([]);
    expect(ending(right, "can't tell").filter((one) => !/ tax /.test(one))).toEqual([]);
    const planted = verdicts((made) => isSum(made) && made.verdict === 'planted');
    expect(ending(planted, 'agrees')).toEqual([]);
    expect(ending(planted, 'no such row')).toEqual([]);
  });

  it('leave openings out, each of which is named', () => {
    for (const [file, { omitted }] of Object.entries(ANSWERS)) {
      const named = checks.get(file)!.notQuoted.filter(({ finding }) => finding.verdict === 'differs');
      expect([file, ...named.map(({ opening }) => opening.opening.mark)]).toEqual(
        expect.arrayContaining([file, ...omitted]),
      );
    }
  });
});
