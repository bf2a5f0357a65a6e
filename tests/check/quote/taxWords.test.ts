import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { checkRows } from './example';

const TAKEN = takeoff([opening({ mark: 'W1', head: 'half round', span: 36 })], defaultStandards());

/** What is said of a tax of 10% on goods of 200 and freight of 50, in these words and of this amount. */
function said(words: string, tax: number): [string, string] {
  const check = checkRows(
    [
      ['Mark', 'Qty', 'Unit price', 'Amount'],
      ['W1', 1, 200, 200],
      ['Freight', null, null, 50],
      [words, null, null, tax],
      ['Total', null, null, 250 + tax],
    ],
    TAKEN,
  );
  const { verdict, text } = check.sums.find(({ finding }) => finding.text.includes('tax $'))!.finding;
  return [verdict, text];
}

describe('a tax whose words say whether freight is taxed', () => {
  it.each([
    ['Tax 10%, delivery included', 25, 'agrees'],
    ['Sales tax 10% on goods and freight', 25, 'agrees'],
    ['Tax 10%, not on delivery', 20, 'agrees'],
    ['Tax 10% before freight', 20, 'agrees'],
    ['Tax 10%, delivery included', 20, 'differs'],
    ['Tax 10%, not on delivery', 25, 'differs'],
    // Without a word on it, it is for the state to say.
    ['Tax 10%', 25, "can't tell"],
    ['Tax 10%', 20, 'agrees'],
  ])('%s of %d: %s', (words, tax, verdict) => {
    expect(said(words, tax)[0]).toBe(verdict);
  });

  it('names what its words say', () => {
    expect(said('Tax 10%, not on delivery', 25)[1]).toContain('but its words say that freight is not taxed');
  });
});
