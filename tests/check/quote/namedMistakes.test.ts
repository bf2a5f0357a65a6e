import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { checkRows } from './example';
import { arc, below, type Cell, cents, check, found, inches, OUTSIDE, says, W1, W2, W3 } from './threeOpenings';

describe('a usual mistake is named', () => {
  const lengths = (first: Cell, second: Cell = inches(W2), third: Cell = inches(W3)) =>
    check(
      ['Mark', 'Qty', 'Length', 'Price', 'Amount'],
      ['W1', 1, first, 110, 110],
      ['W2', 2, second, 150, 300],
      ['W3', 4, third, 175, 700],
    );

  it.each<[string, Cell]>([
    ['fraction dropped', 43],
    ['two digits changed places', inches(W1 - 9)],
    ["another casing width's length", inches(arc(36, 6, 2.25 + 3 / 16))],
    ['25 mm taken for an inch', inches((W1 * 25.4) / 25)],
    // 3.613 ft written as 3'-6.13".
    ['decimal feet read as feet and inches', inches(36 + 10 * (W1 / 12 - 3))],
    // 3'-7.356" written as 3.7356 ft.
    ['feet and inches read as decimal feet', inches(12 * (3 + (W1 - 36) / 10))],
    ['diameter read as radius', inches(2 * Math.asin(0.6) * (60 + OUTSIDE))],
  ])('%s, in a length', (mistake, cell) => {
    const of = lengths(cell);
    expect(found(of, 'W1', 'length')).toMatchObject({ verdict: 'differs', right: expect.closeTo(W1, 6) as number });
    expect(found(of, 'W1', 'length').mistakes).toContain(mistake);
  });

  it.each([
    ['the opening’s', 60],
    ['the casing’s inside', 60.375],
    ['the casing’s outside', 2 * (30 + OUTSIDE)],
  ])('diameter for radius, %s', (_whose, radius) => {
    const of = check(['Mark', 'Qty', 'Radius', 'Length', 'Amount'], ['W1', 1, radius, inches(W1), 110]);
    expect(found(of, 'W1', 'radius')).toMatchObject({ verdict: 'differs', right: 30.1875 });
    expect(found(of, 'W1', 'radius').mistakes).toContain('diameter read as radius');
  });

  it('rows swapped', () => {
    const of = lengths(inches(W2), inches(W1));
    expect(found(of, 'W1', 'length').mistakes).toEqual(['rows swapped']);
    expect(found(of, 'W2', 'length').mistakes).toEqual(['rows swapped']);
    expect(found(of, 'W3', 'length').verdict).toBe('agrees');
  });

  it('rows slipped by one', () => {
    const of = lengths(inches(W2), inches(W3), inches(W1));
    expect(found(of, 'W1', 'length').mistakes).toEqual(['slipped by one row']);
    expect(found(of, 'W2', 'length').mistakes).toEqual(['slipped by one row']);
  });

  it('a price ten times ours, and an amount that is a tenth of what it should be', () => {
    const priced = takeoff([opening({ head: 'half round', span: 36, mark: 'W1', quantity: 2 })], defaultStandards());
    const ours = cents(priced.openings[0]!.cost!.unitPrice);
    const rows = (price: number, amount: number) => [
      ['Mark', 'Qty', 'Price', 'Amount'],
      ['W1', 2, price, amount],
    ];
    const high = checkRows(rows(cents(10 * ours), cents(20 * ours)), priced);
    expect(found(high, 'W1', 'unit price')).toMatchObject({ verdict: 'differs', mistakes: ['price ten times ours'] });
    const low = checkRows(rows(ours, cents(ours / 5)), priced);
    expect(found(low, 'W1', 'extension').text).toContain('a tenth of it');
  });

  it('two legs added', () => {
    const taken = takeoff([opening({ head: 'half round', span: 36, mark: 'D1', ends: 'legs', leg: 60, quantity: 1 })], {
      ...defaultStandards(),
      priceBand: 100,
    });
    const of = checkRows(
      [
        ['Mark', 'Qty', 'Length', 'Amount'],
        ['D1', 1, inches(W3 + 120), 400],
      ],
      taken,
    );
    expect(found(of, 'D1', 'length').mistakes).toContain('two legs added');
  });

  it('a tax at another rate, and one on freight', () => {
    // 7 % of 1,110.00 is 77.70, 8 % would be 88.80; with freight of 40.00 8 % is 92.00.
    expect(says(below(['Sales tax 8%', 77.7]))[0]).toMatch(/^differs: .*another rate: 7%$/);
    expect(says(below(['Freight', 40], ['Sales tax 8%', 92]))[1]).toMatch(/^can't tell: .*with freight/);
  });
});
