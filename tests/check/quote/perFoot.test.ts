import { describe, expect, it } from 'vitest';
import type { QuoteCheck } from '../../../src/check/quote';
import { halfLastDecimal } from '../../../src/quote/reckon';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { checkRows } from './example';

/** A half round of 36 in, 68.133 in or 5.678 ft at the long point, one and three of it. */
const TAKEN = takeoff(
  [
    opening({ head: 'half round', span: 36, row: 2, mark: 'A3', quantity: 1 }),
    opening({ head: 'half round', span: 36, row: 3, mark: 'A4', quantity: 3 }),
  ],
  defaultStandards(),
);
const FEET = TAKEN.openings[0]!.own!.curve.length / 12;
const cents = (amount: number) => Math.round(amount * 100) / 100;
const [ONE, THREE] = TAKEN.openings.map(({ cost }) => cents(cost!.unitPrice / FEET));
const feet = (count: number) => Number((count * FEET).toFixed(2));

type Cell = string | number;
const check = (headings: string[], ...rows: Cell[][]) => checkRows([headings, ...rows], TAKEN);
const found = ({ lines }: QuoteCheck, about: string, line = 0) =>
  lines[line]!.findings.find((one) => one.about === about)!;
/** What is called wrong on the first line. */
const accused = ({ lines }: QuoteCheck) =>
  lines[0]!.findings.filter(({ verdict }) => verdict === 'differs').map(({ about }) => about);
const verdicts = ({ lines }: QuoteCheck) => lines.map(({ verdict }) => verdict);

describe('a right quote that is priced by the foot', () => {
  it.each(['Price per LF', '$/LF', 'Rate/ft', 'Price per foot', 'Price/ft'])(
    'under "%s" is accused of nothing',
    (heading) => {
      const amount = cents(feet(1) * ONE!);
      const of = check(['Mark', 'Qty', 'LF', heading, 'Amount'], ['A3', 1, feet(1), ONE!, amount]);
      expect(verdicts(of)).toEqual(['agrees']);
      expect(of.lines[0]!.agreesIn).toEqual(['quantity', 'length', 'price']);
      expect(found(of, 'extension').text).toContain(`5.68 ft × $${ONE!.toFixed(2)}`);
    },
  );

  it('in the price’s cell is accused of nothing', () => {
    const amount = cents(feet(1) * ONE!);
    const of = check(['Mark', 'Qty', 'LF', 'Price', 'Amount'], ['A3', 1, feet(1), `${ONE!}/lf`, amount]);
    expect(verdicts(of)).toEqual(['agrees']);
  });

  it.each([
    ['of each piece', 1, 3],
    ['of all pieces', 3, 1],
  ])('may give the feet %s', (_what, given, times) => {
    const of = check(
      ['Mark', 'Qty', 'LF', '$/LF', 'Amount'],
      ['A4', 3, feet(given), THREE!, cents(times * feet(given) * THREE!)],
    );
    expect(verdicts(of)).toEqual(['agrees']);
  });

  it('may give a length in inches, and feet that were rounded after the price was figured', () => {
    const exact = cents(3 * FEET * THREE!);
    expect(verdicts(check(['Mark', 'Qty', 'Length', '$/LF', 'Ext'], ['A4', 3, '68 1/8', THREE!, exact]))).toEqual([
      'agrees',
    ]);
    expect(verdicts(check(['Mark', 'Qty', 'LF', '$/LF', 'Ext'], ['A4', 3, feet(1), THREE!, exact]))).toEqual([
      'agrees',
    ]);
  });

  it('may count no pieces, or name feet as the unit of measure', () => {
    const amount = cents(feet(1) * ONE!);
    const none = check(['Mark', 'LF', '$/LF', 'Amount'], ['A3', feet(1), ONE!, amount]);
    expect(accused(none)).toEqual([]);
    expect(found(none, 'extension').verdict).toBe('agrees');
    const all = cents(feet(3) * THREE!);
    const unit = check(['Mark', 'Qty', 'UOM', 'LF', 'Price each', 'Amount'], ['A4', 3, 'LF', feet(3), THREE!, all]);
    expect(verdicts(unit)).toEqual(['agrees']);
  });
});

describe('a price by the foot that is wrong', () => {
  it('makes an extension of neither: the nearer is named, once', () => {
    const of = check(
      ['Mark', 'Qty', 'LF', '$/LF', 'Amount'],
      ['A4', 3, feet(1), THREE!, cents(3 * feet(1) * THREE!) + 50],
    );
    expect(found(of, 'extension')).toMatchObject({ verdict: 'differs', dollars: expect.closeTo(50, 2) as number });
    expect(found(of, 'extension').text).toContain(`3 × 5.68 ft × $${THREE!.toFixed(2)}`);
    expect(accused(of)).toEqual(['extension']);
  });

  it('is compared with ours by the piece', () => {
    const dear = cents(ONE! * 1.5);
    const of = check(['Mark', 'Qty', 'LF', '$/LF', 'Amount'], ['A3', 1, feet(1), dear, cents(feet(1) * dear)]);
    expect(found(of, 'unit price').text).toContain('50.1% above our');
  });

  it('can’t be told without a length', () => {
    const of = check(['Mark', 'Qty', '$/LF', 'Amount'], ['A4', 3, THREE!, cents(3 * FEET * THREE!)]);
    expect(verdicts(of)).toEqual(['agrees']);
    expect(found(of, 'extension').text).toBe("can't tell: no length given");
  });
});

describe('half of the last decimal', () => {
  it.each([
    ['5.68', 0.005],
    [5.7, 0.05],
    ['6', 0],
    [5.677777, 0],
    [`5'-8 1/8"`, 0],
  ])('of %s is %d', (cell, half) => expect(halfLastDecimal(cell)).toBeCloseTo(half, 12));
});
