import { describe, expect, it } from 'vitest';
import { checkRows } from './example';
import {
  agreesIn,
  below,
  cents,
  check,
  COUNTS,
  each,
  found,
  inches,
  LENGTHS,
  MARKS,
  PRICES,
  says,
  TAKEN,
  verdicts,
  W1,
  W2,
  W3,
} from './threeOpenings';

describe('columns are what their figures say', () => {
  it.each([
    ['of each piece', false],
    ['of all pieces', true],
  ])('"Rate" is by the foot, with the feet %s', (_what, all) => {
    const rows = each((at) => {
      const feet = Number((((all ? COUNTS[at]! : 1) * LENGTHS[at]!) / 12).toFixed(2));
      return [MARKS[at]!, COUNTS[at]!, feet, 20, cents((all ? 1 : COUNTS[at]!) * feet * 20)];
    });
    const of = check(['Mark', 'Qty', 'Feet', 'Rate', 'Amount'], ...rows);
    expect(verdicts(of)).toEqual(['agrees', 'agrees', 'agrees']);
    expect(agreesIn(of)[2]).toEqual(['quantity', 'length', 'price']);
  });

  it('a list price and a net one: the amount is figured from the net', () => {
    const of = check(
      ['Mark', 'Qty', 'Length', 'List', 'Net', 'Amount'],
      ...each((at) => [
        MARKS[at]!,
        COUNTS[at]!,
        inches(LENGTHS[at]!),
        2 * PRICES[at]!,
        PRICES[at]!,
        COUNTS[at]! * PRICES[at]!,
      ]),
    );
    expect(verdicts(of)).toEqual(['agrees', 'agrees', 'agrees']);
    expect(of.lines.map(({ line }) => line.unitPrice)).toEqual(PRICES);
  });

  it.each([
    ['Mult.', 0.65, 0.65],
    ['Less', '35%', 0.65],
    ['Disc. %', 15, 0.85],
  ])('a list price under "%s" %s leaves what is paid', (heading, cell, left) => {
    const of = check(
      ['Mark', 'Qty', 'Length', 'List', heading, 'Amount'],
      ...each((at) => [
        MARKS[at]!,
        COUNTS[at]!,
        inches(LENGTHS[at]!),
        PRICES[at]!,
        cell,
        cents(COUNTS[at]! * PRICES[at]! * left),
      ]),
    );
    expect(verdicts(of)).toEqual(['agrees', 'agrees', 'agrees']);
  });

  it('a price for a pair', () => {
    const of = checkRows(
      [
        ['Mark', 'Qty', 'Length', 'Price', 'Amount'],
        ['W2', 2, inches(W2), 300, 300],
        ['W3', 4, inches(W3), 350, 700],
      ],
      TAKEN,
    );
    expect(verdicts(of)).toEqual(['agrees', 'agrees']);
    expect(of.lines.map(({ line }) => line.unitPrice)).toEqual([150, 175]);
  });

  it('the column whose cells are our marks is the mark, one that counts the lines is none', () => {
    const of = check(
      ['Mark', 'Location', 'Qty', 'Length', 'Price', 'Amount'],
      ...each((at) => [at + 1, MARKS[at]!, COUNTS[at]!, inches(LENGTHS[at]!), PRICES[at]!, COUNTS[at]! * PRICES[at]!]),
    );
    expect(verdicts(of)).toEqual(['agrees', 'agrees', 'agrees']);
    expect(of.notQuoted).toEqual([]);
  });

  it('"Casing" over "Width" is not the opening’s width', () => {
    const of = check(
      ['', 'Casing', '', 'Long point', 'Unit', ''],
      ['Mark', 'Width', 'Qty', 'Length', 'Price', 'Amount'],
      ...each((at) => [MARKS[at]!, 3.5, COUNTS[at]!, inches(LENGTHS[at]!), PRICES[at]!, COUNTS[at]! * PRICES[at]!]),
    );
    expect(verdicts(of)).toEqual(['agrees', 'agrees', 'agrees']);
    expect(found(of, 'W1', 'casing width').verdict).toBe('agrees');
  });

  it.each([
    ['All dimensions in mm', 25.4],
    ['Dimensions in centimeters', 2.54],
  ])('"%s" holds for the whole quote', (note, perInch) => {
    const of = check(
      [note, '', '', '', ''],
      ['Mark', 'Qty', 'Length', 'Price', 'Amount'],
      ...each((at) => [
        MARKS[at]!,
        COUNTS[at]!,
        Number((LENGTHS[at]! * perInch).toFixed(1)),
        PRICES[at]!,
        COUNTS[at]! * PRICES[at]!,
      ]),
    );
    expect(verdicts(of)).toEqual(['agrees', 'agrees', 'agrees']);
  });
});

describe('rows are what their figures say', () => {
  it.each(['Net merchandise', 'First floor total', 'Material & workmanship', 'Curved pieces, this page'])(
    '"%s" over the sum of the lines is a subtotal, never counted twice',
    (words) => {
      const of = below([words, 1110], ['Total', 1110]);
      expect(says(of)).toEqual(['agrees: subtotal $1,110.00 agrees', 'agrees: total $1,110.00 agrees']);
      expect(of.lines).toHaveLength(3);
    },
  );

  it('a sum of the work that is wrong is called wrong', () => {
    expect(says(below(['Material & workmanship', 1101], ['Freight', 40], ['Total', 1150]))[0]).toContain('differs');
  });

  it('a tax on goods less discount with freight between', () => {
    // 1,110.00 - 111.00 = 999.00; 8 % of it is 79.92; with freight of 40.00 it comes to 1,118.92.
    const of = below(
      ["Builder's discount 10%", -111],
      ['LTL freight', 40],
      ['TX sales tax 8%', 79.92],
      ['Total', 1118.92],
    );
    expect(of.sums.map(({ finding }) => finding.verdict)).toEqual(['agrees', 'agrees', 'agrees', 'agrees']);
    expect(says(of)[2]).toContain('8% of the goods less discount');
    expect(of.corrected.total).toBe(1118.92);
  });

  it.each<[string, number, string, number]>([
    ['Less 5%', -55.5, '-$55.50 is 5%', 1054.5],
    ['Less 5%', 55.5, '-$55.50 is 5%', 1054.5],
    ['Less 5%', 1054.5, '-$55.50 is 5%', 1054.5],
    ['Mult. 0.65', 721.5, '-$388.50 is 35%', 721.5],
    ['Multiplier .65', -388.5, '-$388.50 is 35%', 721.5],
  ])('"%s" over %d is what it takes off, or what is left', (words, amount, text, total) => {
    const of = below([words, amount], ['Total', total]);
    expect(says(of)).toEqual([expect.stringContaining(text), expect.stringContaining('agrees: total')]);
    expect(of.corrected.total).toBe(total);
  });

  it('a multiplier that was figured wrong is called wrong, and a net sum below its discount stays a sum', () => {
    expect(says(below(['Mult. 0.65', 712.5], ['Total', 712.5]))[0]).toMatch(/^differs: .*35% of the goods/);
    const of = below(['Discount 5%', -55.5], ['Net after 5% discount', 1054.5], ['Total', 1054.5]);
    expect(of.sums.map(({ finding }) => finding.verdict)).toEqual(['agrees', 'agrees', 'agrees']);
    expect(of.corrected.total).toBe(1054.5);
  });

  it('"Small order handling" is a charge and no freight: a tax on it is on no freight', () => {
    const of = below(['Small order handling', 25], ['Sales tax 8%', 90.8], ['Total', 1225.8]);
    expect(says(of)).toEqual([
      'agrees: other charge $25.00',
      'agrees: tax $90.80 is 8% of the goods with charges',
      'agrees: total $1,225.80 agrees',
    ]);
  });

  it('several marks, or a range of them, share a line with the pieces of all', () => {
    const of = check(['Mark', 'Qty', 'Amount'], ['W1, W2', 3, 410], ['W3', 4, 700]);
    expect(of.lines.map(({ places }) => places)).toEqual([[0, 1], [2]]);
    const range = check(['Mark', 'Qty', 'Amount'], ['W1-W3', 7, 1110]);
    expect(range.lines[0]!.places).toEqual([0, 1, 2]);
    expect(range.notQuoted).toEqual([]);
  });

  it.each(['NIC', 'by others', 'no bid'])('"%s" is not quoted, and has our price', (words) => {
    const of = check(
      ['Mark', 'Description', 'Qty', 'Length', 'Amount'],
      ['W1', 'casing', 1, inches(W1), 110],
      ['W2', 'casing', 2, inches(W2), 300],
      ['W3', words, '', '', ''],
    );
    expect(of.lines).toHaveLength(2);
    expect(
      of.notQuoted.map(
        ({
          opening: {
            opening: { mark },
          },
        }) => mark,
      ),
    ).toEqual(['W3']);
    expect(of.stakes.omitted).toBeCloseTo(cents(4 * cents(TAKEN.openings[2]!.cost!.unitPrice)), 1);
  });
});
