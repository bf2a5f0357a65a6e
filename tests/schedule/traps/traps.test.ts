import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSchedule, readTables, type Opening, type Table } from '../../../src/schedule';
import { defaultStandards } from '../../../src/standards';
import { valueOf } from '../../value';
import { truths, type Trapped, type Truth } from './list';
import { TRAPS } from './traps';

/** Invented lists with one trap each. Whatever is priced is right; what is not is asked about. */

const RUNS = 12;
/** As schedules are rounded: 1/32 in. */
const CLOSE = 1 / 32;

async function tableOf({ table }: Trapped): Promise<Table> {
  if (typeof table === 'string') return valueOf(await readTables('list.csv', new TextEncoder().encode(table)))[0]!;
  return { name: 'list.csv', firstRow: 1, ...table };
}

const isPriced = ({ problems }: Opening) => problems.length === 0;

/** What is wrong with an opening that would be priced; nothing where it is as it should be. */
function wrong(opening: Opening, right: Truth, also: Trapped['also'] = {}): readonly string[] {
  const off = (a: number | null, b: number) => a === null || Math.abs(a - b) > CLOSE;
  return [
    ...(opening.quantity === right.quantity ? [] : [`quantity ${opening.quantity}, not ${right.quantity}`]),
    ...(opening.head === right.head ? [] : [`${opening.head}, not ${right.head}`]),
    ...(off(opening.span, right.span) ? [`span ${opening.span}, not ${right.span}`] : []),
    ...(off(opening.rise, right.rise) ? [`rise ${opening.rise}, not ${right.rise}`] : []),
    ...Object.entries(also).flatMap(([key, value]) => {
      const own = opening[key as keyof Opening];
      return own === value ? [] : [`${key} ${String(own)}, not ${String(value)}`];
    }),
  ];
}

describe('an invented list with one trap', () => {
  it.each(TRAPS.map((trap) => [trap.name, trap] as const))(
    'is right or asked about, never wrong in silence: %s',
    async (_name, trap) => {
      await fc.assert(
        fc.asyncProperty(truths, fc.nat(), async (all, place) => {
          const at = 1 + (place % (all.length - 1));
          const trapped = trap.plant(all, at);
          const { asks = [], right = all, also } = trapped;
          const { openings, questions } = valueOf(readSchedule(await tableOf(trapped), defaultStandards()));
          // Nothing is lost, and nothing is made up.
          expect(openings).toHaveLength(all.length);
          for (const [index, opening] of openings.entries()) {
            const must = asks === 'all' || asks.includes(index);
            expect([index, isPriced(opening)]).toEqual([index, !must]);
            if (!must) expect([opening.mark, wrong(opening, right[index]!, also)]).toEqual([right[index]!.mark, []]);
          }
          const asked = new Set(questions.flatMap(({ rows }) => rows));
          for (const { row, problems } of openings) if (problems.length > 0) expect(asked).toContain(row);
          // One thing that is in doubt is one question, or two where a remark and a figure are both to be settled.
          expect(questions.length).toBeLessThanOrEqual(2);
        }),
        { numRuns: RUNS, seed: 20_260_131 },
      );
    },
  );

  it('would be found out: a list that is read in the wrong unit is wrong', () => {
    const right: Truth = { mark: 'W1', quantity: 1, head: 'segmental', span: 36, rise: 6 };
    const rows = [
      ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
      ['W1', 1, 'segmental', 36, 6],
    ];
    const read = (unit: 'in' | 'cm') =>
      valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards(), {}, { unit })).openings[0]!;
    expect(wrong(read('in'), right)).toEqual([]);
    expect(wrong(read('cm'), right)).toHaveLength(2);
  });
});
