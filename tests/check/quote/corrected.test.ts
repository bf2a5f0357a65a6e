import { describe, expect, it } from 'vitest';
import { amountOf, checkQuote, readQuote, summaryText } from '../../../src/check/quote';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { valueOf } from '../../value';
import { checkRows } from './example';

const HEADINGS = ['Mark', 'Description', 'Qty', 'Length', 'Unit price', 'Extension'];
const standards = { ...defaultStandards(), priceBand: 10 };
const taken = takeoff(
  [
    opening({ head: 'segmental', span: 36, rise: 6, mark: 'W1', quantity: 2 }),
    opening({ head: 'segmental', span: 72, rise: 12, mark: 'W3' }),
    opening({ head: 'half round', span: 36, mark: 'W4' }),
    opening({ head: 'half round', span: 48, mark: 'W5' }),
  ],
  standards,
);
const RIGHT = [
  ['W1', '', 2, '43 3/8', 100, 200],
  ['W3', '', 1, '81 15/16', 250, 250],
  ['W4', '', 1, '68 1/8', 120, 120],
  ['W5', '', 1, '87', 150, 150],
];
const check = (...rows: (string | number)[][]) => checkRows([HEADINGS, ...rows], taken);

describe('what a quote comes to once it is right', () => {
  it('is what it comes to, where nothing is wrong with it', () => {
    const right = check(...RIGHT, ['', 'Sales tax 5%', '', '', '', 36], ['', 'Total', '', '', '', 756]);
    expect([right.corrected.total, right.stakes]).toEqual([
      756,
      { off: 0, prices: 0, omitted: 0, hanging: { lines: 0, amount: 0 } },
    ]);
  });

  it('has the takeoff’s count at the price quoted, sums that are sums, and a tax and a discount figured on them', () => {
    const found = check(
      ['W1', '', 1, '43 3/8', 100, 100],
      ['W3', '', 1, '81 15/16', 250, 350],
      ['W4', '', 1, '68 1/8', 120, 120],
      ['W5', '', 1, '87', 150, 150],
      ['W5', '', 1, '87', 150, 150],
      ['', 'Subtotal', '', '', '', 870],
      ['', 'Discount 10%', '', '', '', -87],
      ['', 'Sales tax 5%', '', '', '', 39.15],
      ['', 'Freight', '', '', '', 60],
      ['', 'Total', '', '', '', 882.15],
    );
    expect(found.lines.map(({ corrected }) => corrected)).toEqual([200, 250, 120, 150, 0]);
    // 720 less 72 is 648, its tax 32.40, and freight as quoted.
    expect([...found.corrected.sums.values()]).toEqual([720, -72, 32.4, 60, 740.4]);
    expect(found.corrected.total).toBe(740.4);
    expect(found.stakes.off).toBeCloseTo(141.75, 9);
    expect(summaryText(found)).toContain(
      'Total as quoted: $882.15; corrected, at the prices it quotes: $740.40 ($141.75 too much).',
    );
  });

  it('has the right feet where a line is priced by the foot', () => {
    const rows = [
      ['Mark', 'Qty', 'Length (ft)', 'Price per LF', 'Amount'],
      ['W3', 1, 6.45, 20, 129],
      ['W4', 1, 5.68, 20, 113.6],
      ['W5', 1, 7.25, 20, 145],
    ];
    const { lines } = checkRows(rows, taken);
    expect(lines[0]!.findings.flatMap(({ mistakes }) => mistakes)).toContain('measured along the inside edge');
    // 81.966 inches at 20 a foot; the feet quoted are rounded to hundredths.
    expect(lines[0]!.corrected).toBeCloseTo(136.61, 1);
    expect(lines[1]!.corrected).toBe(113.6);
  });

  it('leaves money that only hangs on a line apart, and our price for what is not quoted', () => {
    const [one, , three, four] = RIGHT;
    const found = check(one!, ['W3', '', 1, '81 3/4', 250, 250], three!);
    expect(four![0]).toBe('W5');
    expect([found.stakes.off, found.stakes.hanging]).toEqual([0, { lines: 1, amount: 250 }]);
    expect(found.stakes.omitted).toBe(taken.openings[3]!.cost!.price);
    const summary = summaryText(found);
    expect(summary).toContain(
      '- W3 (row 3): length 81 3/4 quoted, 81 15/16 right at the long point, reveal left out; extension $250.00 as quoted.',
    );
    expect(summary).toContain('1 line, $250.00.');
    expect(summary).toMatch(/- W5 is not quoted; our price is \$/);
  });

  it("can't be told where the amount of a line isn't known", () => {
    const found = check(...RIGHT.slice(1), ['W1', '', 2, '43 3/8', '', '']);
    expect(found.corrected.total).toBeNull();
    expect(found.stakes.off).toBeNull();
    expect(summaryText(found)).toContain("what it should be can't be told");
  });
});

describe('what has to be known of a quote first', () => {
  it('is nothing of one that is for this job, wrong as it may be', () => {
    expect(check(...RIGHT).atTop).toEqual([]);
    const chords = RIGHT.map(([mark, words, count, , unit], at) => {
      return [mark!, words!, count!, [36, 72, 36, 48][at]!, unit!, Number(count) * Number(unit)];
    });
    expect(check(...chords).atTop).toEqual([]);
  });

  it('is that it is empty, or that it has no prices', () => {
    const quote = valueOf(readQuote({ name: 'quote', firstRow: 1, rows: [HEADINGS] }, standards));
    const empty = checkQuote(quote, taken);
    expect(empty.atTop).toEqual(['The quote is empty: it has no line for any of the 4 openings of the takeoff.']);
    expect(summaryText(empty).split('\n')[0]).toBe(empty.atTop[0]);
    const unpriced = check(...RIGHT.map((row) => [...row.slice(0, 4), '', '']));
    expect(unpriced.atTop).toEqual(['The quote has no prices.']);
    expect(unpriced.lines.every(({ line }) => amountOf(line) === null)).toBe(true);
  });

  it('is that it may be another job’s: marks of none of our openings, or sizes of others under our marks', () => {
    const marks = check(...['K1', 'K2', 'K3'].map((mark) => [mark, '', 1, '51', 90, 90]));
    expect(marks.atTop).toEqual([
      'Of 3 lines none names an opening of the takeoff: this may be the quote for another job, or an older list.',
    ]);
    const sizes = check(
      ['W1', '', 2, '51 1/16', 90, 180],
      ['W3', '', 1, '60 7/16', 90, 90],
      ['W4', '', 1, '91 5/16', 90, 90],
      ['W5', '', 1, '53 9/16', 90, 90],
    );
    expect(sizes.atTop.join()).toMatch(/^Of 4 lines with a size none has that of the opening with their mark/);
  });
});
