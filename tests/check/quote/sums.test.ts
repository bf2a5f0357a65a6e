import { describe, expect, it } from 'vitest';
import { totalTexts, type QuoteCheck } from '../../../src/check/quote';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { checkSheet } from '../../../src/workbook/checkSheet';
import { opening } from '../../takeoff/openings';
import { checkRows } from './example';

// A band this wide calls any price right: these quotes are about sums.
const TAKEN = takeoff(
  ['W1', 'W2', 'W3'].map((mark) => opening({ head: 'segmental', span: 36, rise: 6, mark })),
  { ...defaultStandards(), priceBand: 100 },
);
type Row = readonly (string | number)[];
const line = (mark: string, amount: number | string, words = ''): Row => [mark, words, 1, amount, amount];
const sum = (words: string, amount: number): Row => ['', words, '', '', amount];
const check = (...rows: Row[]) => checkRows([['Mark', 'Description', 'Qty', 'Unit price', 'Amount'], ...rows], TAKEN);

/** What follows for each charge and sum, in the order of the quote. */
const follows = ({ corrected }: QuoteCheck) => [...corrected.sums.values()];
const verdicts = ({ sums }: QuoteCheck) => sums.map(({ finding }) => finding.verdict);

/** The Check sheet's cells of the sums, and of the totals on top: what each says, and what follows. */
function onSheet(of: QuoteCheck, plain = true) {
  const { rows, columnKeys } = checkSheet(of, plain);
  const at = (row: (typeof rows)[number], key: string) => row[columnKeys!.indexOf(key)]?.value;
  const from = rows.findIndex((row) => row[0]?.value === 'Charges, subtotals and totals');
  const sums = from < 0 ? [] : rows.slice(from + 1, from + 1 + of.sums.length);
  return {
    says: sums.map((row) => at(row, 'reason')),
    right: sums.map((row) => at(row, 'extensionRight')),
    top: ['reason', 'extension', 'extensionRight', 'off'].map((key) => at(rows[2]!, key)),
  };
}

/** The text, the figures and the sheet say that the quote comes to what it states. */
function expectRight(of: QuoteCheck, total: number) {
  const sheet = onSheet(of);
  expect([of.corrected.total, of.stakes.off, of.compared.total]).toEqual([total, 0, total]);
  expect(totalTexts(of)[0]).not.toMatch(/too (?:much|little)/);
  expect(sheet.top.slice(1)).toEqual([total, total, 0]);
  expect(sheet.right).toEqual(follows(of));
  expect(sheet.says.filter((text) => text !== 'agrees')).toEqual([]);
}

describe('what a sum or a charge is figured on', () => {
  it('is no other line for one that is quoted again without an amount', () => {
    const found = check(line('W1', 100), ['W1', 'again', 1, '', ''], line('W2', 200), sum('Total', 300));
    expect(verdicts(found)).toEqual(['agrees']);
    expect(follows(found)).toEqual([300]);
    expect(onSheet(found).right).toEqual([300]);
  });

  it('has the discount of the subtotal it is on, and the freight beside it', () => {
    const found = check(
      line('W1', 1000),
      sum('Discount', -100),
      sum('Subtotal', 900),
      line('W2', 200),
      sum('Freight', 50),
      sum('Tax 6% on freight', 57),
    );
    expect(verdicts(found)).toEqual(['agrees', 'agrees', 'agrees', 'agrees']);
    expect(follows(found)).toEqual([-100, 900, 50, 57]);
    expect(onSheet(found).right).toEqual([-100, 900, 50, 57]);
  });
});

describe('what follows from a wrong sum', () => {
  it('is corrected on what it was figured on, with the discount off', () => {
    const found = check(
      line('W1', 300),
      sum('Subtotal', 320),
      sum('Discount 5%', -16),
      sum('Tax 7%', 21.28),
      sum('Total', 325.28),
    );
    expect(verdicts(found)).toEqual(['differs', 'agrees', 'agrees', 'agrees']);
    // 300 less 15 is 285, and 7% of it 19.95.
    expect(follows(found)).toEqual([300, -15, 19.95, 304.95]);
    expect(onSheet(found)).toMatchObject({ right: [300, -15, 19.95, 304.95] });
    // The total follows from the subtotal: said once.
    expect(onSheet(found).says.at(-1)).toBe('agrees');
  });

  it('is corrected with all that it holds', () => {
    const found = check(
      line('W1', 600),
      line('W2', 400),
      sum('Subtotal', 1010),
      sum('Freight', 50),
      sum('Subtotal', 1060),
    );
    expect(verdicts(found)).toEqual(['differs', 'agrees', 'agrees']);
    expect(follows(found)).toEqual([1000, 50, 1050]);
    expect(onSheet(found).right).toEqual([1000, 50, 1050]);
  });
});

describe('a right quote is not off by what it doesn’t count the same way', () => {
  it('for a tax that was rounded by a cent', () => {
    expectRight(check(line('W1', 123.45), sum('Tax 6%', 7.4), sum('Total', 130.85)), 130.85);
  });

  it('for an alternate, whether its total holds it or not, or none is stated', () => {
    const alternate = ['', 'Alternate: W1 in red oak', '', '', 200] as const;
    expectRight(check(line('W1', 300), alternate, sum('Total', 300)), 300);
    expectRight(check(line('W1', 300), alternate, sum('Total', 500)), 500);
    expectRight(check(line('W1', 300), alternate), 300);
    expectRight(check(line('W1', 300), sum('Total', 300), alternate), 300);
  });

  it('for a deposit, with a total or with only what is left to pay', () => {
    const deposit = sum('50% deposit', 150);
    expectRight(check(line('W1', 300), deposit, sum('Balance due', 150)), 150);
    expectRight(check(line('W1', 300), sum('Total', 300), deposit, sum('Balance due', 150)), 300);
    expectRight(check(line('W1', 300), deposit), 300);
  });

  it('for freight below its total, or a total for each part of it', () => {
    expectRight(check(line('W1', 300), sum('Total', 300), sum('Freight', 50)), 300);
    expectRight(check(line('W1', 300), sum('Total', 300), line('W2', 200), sum('Total', 200)), 200);
  });

  it('and a wrong one is off by what its total is', () => {
    const found = check(line('W1', 300), line('W2', 200), sum('Total', 510));
    expect([found.corrected.total, found.stakes.off]).toEqual([500, 10]);
    expect(onSheet(found)).toMatchObject({ says: ['$10.00 too much'], right: [500] });
    expect(onSheet(found).top.slice(1)).toEqual([510, 500, 10]);
  });
});

describe('a subtotal of a part of the quote', () => {
  it('is added up from the cells of its own lines, wherever these stand on the sheet', () => {
    const found = check(
      line('W1', 100),
      line('W2', 200),
      sum('First floor total', 300),
      ['W3', '', 1, 50, 500],
      sum('Second floor total', 500),
      sum('Total', 800),
    );
    expect(follows(found)).toEqual([300, 50, 350]);
    expect(onSheet(found).right).toEqual([300, 50, 350]);
    const { rows, columnKeys } = checkSheet(found, true);
    const from = rows.findIndex((row) => row[0]?.value === 'Charges, subtotals and totals') + 1;
    const formulas = rows.slice(from, from + 3).map((row) => row[columnKeys!.indexOf('extensionRight')]?.formula);
    expect(formulas[0]).toMatch(/SUMIFS\(.*">=2",.*"<=3"\)/);
    expect(formulas[1]).toMatch(/SUMIFS\(.*">=5",.*"<=5"\)/);
  });
});
