import { describe, expect, it } from 'vitest';
import { declines } from '../../src/quote/declined';
import { chargeKind, namesAlternate, readLabel } from '../../src/quote/labels';

describe('the words of a row that is no line', () => {
  it.each([
    ['Fuel surcharge', 'freight'],
    ['Drop charge', 'freight'],
    ['Set-up charge', 'other charge'],
    ['Minimum run charge', 'other charge'],
    ['Sales tax 6%', 'tax'],
  ])('%s is %s', (words, charge) => {
    expect(readLabel([words])).toMatchObject({ kind: 'charge', charge });
  });

  it.each([
    ['S/T', 'tax'],
    ['State & local @ 8.25%', 'tax'],
    ['FOB jobsite add', 'freight'],
    ['Knife grinding', 'other charge'],
  ])('%s, known to be a charge by its figure, is %s', (words, charge) => {
    expect(chargeKind(words, 65)).toBe(charge);
  });

  it.each(['If no reveal, deduct', 'Deduct alt. no. 2', 'Option: prefinish'])(
    '%s is an offer beside the quote',
    (words) => {
      expect(namesAlternate(words)).toBe(true);
    },
  );

  it.each(['NIC', 'By others', 'No bid', 'N/Q', 'To follow', 'Regret - cannot run'])(
    '%s says that it is not quoted',
    (words) => {
      expect(declines(['W1', null, words])).not.toBeNull();
    },
  );

  it.each(['Casing to follow the arch', 'Curved casing', 'Deliver to site'])('%s doesn’t', (words) => {
    expect(declines(['W1', 1, words])).toBeNull();
  });
});
