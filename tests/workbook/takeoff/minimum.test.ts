import { describe, expect, it } from 'vitest';
import { BLANK_JOB, type Job } from '../../../src/job/fields';
import { jobMinimum } from '../../../src/job/minimum';
import { proposalFrom } from '../../../src/job/offered';
import { defaultStandards } from '../../../src/standards';
import { boardsToBuy } from '../../../src/takeoff/boardsToBuy';
import { planTakeoff } from '../../../src/takeoff/planned';
import { takeoff } from '../../../src/takeoff/takeoff';
import { TAKEOFF_COLUMNS } from '../../../src/workbook/takeoff/columns';
import { takeoffSource } from '../../../src/workbook/takeoff/sheet';
import { stockSheet } from '../../../src/workbook/stockSheet';
import { totalsJson } from '../../../cli/takeoffJson';
import { opening } from '../../takeoff/openings';

const STANDARDS = defaultStandards();
const { taken, boards } = planTakeoff(
  takeoff(
    [
      opening({
        row: 2,
        mark: 'A',
        quantity: 2,
        head: 'segmental',
        span: 36,
        rise: 6,
        extras: [{ kind: 'plinth block', each: 2 }],
      }),
      opening({ row: 3, mark: 'B', quantity: 1, head: 'half round', span: 30, rise: 15 }),
    ],
    STANDARDS,
  ),
);
const PRICE = TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'price');

function moneyRows(job: Job): (readonly [unknown, unknown])[] {
  const rows = [...takeoffSource(taken, null, [], job).rows];
  return rows
    .slice(rows.findIndex((row) => row[0]?.value === 'Total'))
    .map((row) => [row[0]?.value, row[PRICE]?.value]);
}

describe("the job's minimum charge", () => {
  const job = { ...BLANK_JOB, minimum: 5000 };

  it('has no line where the job has none', () => {
    expect(moneyRows(BLANK_JOB).map(([label]) => label)).not.toContain('Job in all');
    expect(totalsJson(taken, BLANK_JOB)).not.toHaveProperty('minimum');
  });

  it('is the same money under the total of the Takeoff, in the JSON and on the proposal', () => {
    const { charges, total } = proposalFrom(taken, job);
    const short = charges.find(({ kind }) => kind === 'minimum')!.amount;
    expect(short).toBeGreaterThan(0);
    expect(total).toBe(5000);
    const rows = moneyRows(job);
    expect(rows.at(-2)).toEqual(["Short of the job's minimum charge, 5000.00", short]);
    expect(rows.at(-1)).toEqual(['Job in all', 5000]);
    expect(totalsJson(taken, job)).toMatchObject({ minimum: { charge: 5000, short, jobTotal: 5000 } });
  });

  it('counts extras at their price and other lines, and is nothing where these reach it', () => {
    const priced = { ...taken, standards: { ...STANDARDS, plinthBlockPrice: 10 } };
    const blocks = jobMinimum(priced, job)!;
    expect(jobMinimum(taken, job)!.short - blocks.short).toBeCloseTo(2 * 2 * 10, 9);
    const lines = { ...job, extras: [{ words: 'Straight casing', quantity: 100, unitPrice: 60 }] };
    expect(jobMinimum(taken, lines)).toMatchObject({ short: 0, otherLines: 6000 });
  });

  it('counts another line at the cents it has on the proposal, and says in the JSON what other lines come to', () => {
    // 0.5 × 2.01 is 1.005: 1.01 as a spreadsheet rounds, 1.00 as a binary fraction would.
    const half = { ...job, extras: [{ words: 'Straight casing', quantity: 0.5, unitPrice: 2.01 }] };
    const { charges, total } = proposalFrom(taken, half);
    const short = charges.find(({ kind }) => kind === 'minimum')!.amount;
    expect(total).toBe(5000);
    expect(totalsJson(taken, half)).toMatchObject({ minimum: { short, otherLines: 1.01, jobTotal: 5000 } });
  });

  it('says where the proposal reckons with more before it asks what is short', () => {
    expect(jobMinimum(taken, job)!.moreOnProposal).toBe(false);
    expect(jobMinimum(taken, { ...job, discount: 0.05 })!.moreOnProposal).toBe(true);
  });
});

describe('money of one job', () => {
  it('is one sum in the rows, the Stock sheet and the plan: the material of all rows is the boards bought', () => {
    const material = taken.openings.reduce((sum, { cost }) => sum + cost!.material, 0);
    const bought = boards.plans.reduce((sum, { cost }) => sum + cost, 0);
    expect(material).toBeCloseTo(bought, 9);
    expect(boardsToBuy(boards, STANDARDS).reduce((sum, { cost }) => sum + cost, 0)).toBeCloseTo(bought, 9);
    const rows = [...stockSheet(boards, STANDARDS, { plain: false, pictures: false }).rows];
    expect(rows.find((row) => row[0]?.value === 'Total')?.[8]?.value).toBeCloseTo(bought, 9);
    const column = TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'material');
    const total = [...takeoffSource(taken, null).rows].find((row) => row[0]?.value === 'Total');
    expect(total?.[column]?.value).toBeCloseTo(bought, 9);
  });
});
