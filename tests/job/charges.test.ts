import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { percentText, sumsOf } from '../../src/job/charges';
import { addUp } from '../../src/rounding';
import { BLANK_JOB, type Job } from '../../src/job/fields';

/** Sums worked out by hand for this test: each line of a case is one step of the calculation. */
const CASES: readonly {
  title: string;
  amounts: number[];
  setups?: number;
  length?: number;
  job: Partial<Job>;
  charges: Record<string, number>;
  total: number;
}[] = [
  {
    title: 'no charge at all: the total is the sum of the amounts',
    amounts: [100.1, 200.2, 0.03],
    job: {},
    charges: {},
    total: 300.33,
  },
  {
    title: 'a discount of 5% of 150.50 is 7.525, rounded to 7.53; tax of 6.25% on 162.97 is 10.185625',
    amounts: [100, 50.5],
    job: { discount: 0.05, deliveryCharge: 20, taxRate: 0.0625 },
    charges: { discount: -7.53, delivery: 20, tax: 10.19 },
    total: 173.16,
  },
  {
    title: 'tax without delivery: 6.25% of 142.97 is 8.935625',
    amounts: [100, 50.5],
    job: { discount: 0.05, deliveryCharge: 20, taxRate: 0.0625, taxOn: 'everything but delivery' },
    charges: { discount: -7.53, delivery: 20, tax: 8.94 },
    total: 171.91,
  },
  {
    title: 'an exact half cent of tax goes up: 5% of 0.10 is 0.005',
    amounts: [0.1],
    job: { taxRate: 0.05 },
    charges: { tax: 0.01 },
    total: 0.11,
  },
  {
    title: 'a half cent of discount rounds away from zero, as ROUND does: 5% of 0.10',
    amounts: [0.1],
    job: { discount: 0.05 },
    charges: { discount: -0.01 },
    total: 0.09,
  },
  {
    title: '1.005 is a cent and a half although it is held as less: 10.05 at 10%',
    amounts: [10.05],
    job: { taxRate: 0.1 },
    charges: { tax: 1.01 },
    total: 11.06,
  },
  {
    title: 'the minimum charge adds what is missing after the discount, before delivery and tax',
    amounts: [200],
    job: { discount: 0.1, minimum: 250, deliveryCharge: 30, taxRate: 0.08 },
    charges: { discount: -20, minimum: 70, delivery: 30, tax: 22.4 },
    total: 302.4,
  },
  {
    title: 'the minimum charge adds nothing to a job that reaches it',
    amounts: [250],
    job: { minimum: 250 },
    charges: {},
    total: 250,
  },
  {
    title: 'set-ups of their own are rounded once and discounted with the rest',
    amounts: [100],
    setups: 33.335,
    job: { discount: 0.1 },
    charges: { setups: 33.34, discount: -13.33 },
    total: 120.01,
  },
  {
    title: 'the finish is charged by the length as printed: 41.26 ft are 41.3 ft at 1.15',
    amounts: [100],
    length: 41.26,
    job: { finishRate: 1.15 },
    charges: { finish: 47.5 },
    total: 147.5,
  },
  {
    title: 'a discount of 100% leaves nothing to tax',
    amounts: [99.99],
    job: { discount: 1, taxRate: 0.07 },
    charges: { discount: -99.99 },
    total: 0,
  },
  {
    title: 'a credit beyond the lines is taken as it is',
    amounts: [50, -60],
    job: { taxRate: 0.1 },
    charges: { tax: -1 },
    total: -11,
  },
];

describe('charges of a job', () => {
  it.each(CASES)('$title', ({ amounts, setups = 0, length = 0, job, charges, total }) => {
    const sums = sumsOf({ amounts, setups, length }, { ...BLANK_JOB, ...job }, 'in');
    expect(Object.fromEntries(sums.charges.map(({ kind, amount }) => [kind, amount]))).toEqual(charges);
    expect(sums.total).toBe(total);
  });

  it('print what they are, with rate, length and unit', () => {
    const job = {
      ...BLANK_JOB,
      finishRate: 1.5,
      finishWords: 'Priming, one coat',
      discount: 0.025,
      minimum: 500,
      taxRate: 0.07,
      taxOn: 'everything but delivery',
    } as const;
    const texts = (unit: 'in' | 'mm') =>
      sumsOf({ amounts: [100], setups: 10, length: 12.34 }, job, unit).charges.map(({ text }) => text);
    expect(texts('in')).toEqual([
      'Knives, guides and set-ups charge',
      'Priming, one coat, 12.3 ft at 1.50 a foot',
      'Discount 2.5%',
      'Minimum charge 500.00, what is short of it',
      'Tax 7%, not on delivery',
    ]);
    expect(texts('mm')[1]).toBe('Priming, one coat, 12.3 m at 1.50 a meter');
  });

  it('always add up to the total in whole cents, whatever the rules', () => {
    const cents = fc.integer({ min: 0, max: 5_000_000 }).map((amount) => amount / 100);
    const share = fc.integer({ min: 0, max: 10_000 }).map((tenThousandths) => tenThousandths / 10_000);
    const job = fc.record({
      discount: share,
      taxRate: share,
      minimum: cents,
      deliveryCharge: cents,
      finishRate: fc.double({ min: 0, max: 20, noNaN: true }),
      taxOn: fc.constantFrom('everything' as const, 'everything but delivery' as const),
    });
    fc.assert(
      fc.property(
        fc.array(cents, { maxLength: 60 }),
        job,
        fc.double({ min: 0, max: 900, noNaN: true }),
        (amounts, rules, length) => {
          const { charges, total } = sumsOf({ amounts, setups: length / 3, length }, { ...BLANK_JOB, ...rules }, 'in');
          const whole = (amount: number) => {
            const at = Math.round(amount * 100);
            expect(amount).toBe(at / 100);
            return at;
          };
          // Added as whole numbers, another way than the program adds.
          const sum = [...amounts, ...charges.map(({ amount }) => amount)]
            .map(whole)
            .reduce((one, other) => one + other, 0);
          expect(whole(total)).toBe(sum);
          if (rules.minimum === 0) return;
          const before = charges
            .filter(({ kind }) => kind === 'tax' || kind === 'delivery')
            .reduce((rest, { amount }) => rest - whole(amount), whole(total));
          expect(before).toBeGreaterThanOrEqual(Math.round(rules.minimum * 100));
        },
      ),
    );
  });

  it('show a share as a person writes it', () => {
    expect(['0.0625', '0.07', '0.08875', '0.1'].map((share) => percentText(Number(share)))).toEqual([
      '6.25%',
      '7%',
      '8.875%',
      '10%',
    ]);
    expect(addUp([0.1, 0.2, 0.3])).toBe(0.6);
  });
});
