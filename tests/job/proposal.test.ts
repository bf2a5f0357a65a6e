import { describe, expect, it } from 'vitest';
import { BLANK_JOB, type Job } from '../../src/job/fields';
import { proposalOf, type Offered } from '../../src/job/proposal';

const opening = (no: number, given: Partial<Offered> = {}): Offered => ({
  ...{ no, mark: `A${no}`, place: null, head: 'half round', words: 'Half round casing', quantity: 1 },
  ...{ unitPrice: 100, setups: 0, length: 5, legs: [false, false], needs: [] },
  ...given,
});
const proposed = (openings: Offered[], job: Partial<Job> = {}, weeks = 2) =>
  proposalOf({ openings, job: { ...BLANK_JOB, ...job }, unit: 'in', weeks });

describe('a proposal', () => {
  it('has a line for each opening, and a total that is the sum of what is shown', () => {
    const { lines, total } = proposed([opening(1, { quantity: 3, unitPrice: 33.33 }), opening(2, { unitPrice: 0.01 })]);
    expect(lines.map(({ mark, quantity, unitPrice, amount }) => [mark, quantity, unitPrice, amount])).toEqual([
      ['A1', 3, 33.33, 99.99],
      ['A2', 1, 0.01, 0.01],
    ]);
    expect(total).toBe(100);
  });

  it('leaves openings that are not priced out of the total, and names them', () => {
    const { lines, notPriced, total } = proposed([
      opening(1),
      opening(2, { unitPrice: null, needs: ['Needs a span: more than 0.'] }),
    ]);
    expect(lines).toHaveLength(1);
    expect(notPriced.map(({ mark }) => mark)).toEqual(['A2']);
    expect(total).toBe(100);
  });

  it('shows alternates apart, found by mark in any letter case; a mark that no opening has is named', () => {
    const { lines, alternates, unknownAlternates, total } = proposed([opening(1), opening(2, { unitPrice: 70 })], {
      alternates: ['a2', 'Z9'],
    });
    expect(lines.map(({ mark }) => mark)).toEqual(['A1']);
    expect(alternates.map(({ mark, amount }) => [mark, amount])).toEqual([['A2', 70]]);
    expect(unknownAlternates).toEqual(['Z9']);
    expect(total).toBe(100);
  });

  it('puts the openings of one place on one line, with all their marks and what they are', () => {
    const { lines } = proposed(
      [
        opening(1, { place: '1st floor', quantity: 2 }),
        opening(2, { place: '2nd floor' }),
        opening(3, { place: '1ST FLOOR', words: 'Segmental casing', unitPrice: 50.5 }),
        opening(4),
      ],
      { linesBy: 'place' },
    );
    expect(
      lines.map(({ mark, words, quantity, unitPrice, amount }) => [mark, words, quantity, unitPrice, amount]),
    ).toEqual([
      ['A1, A3', '1st floor: 2 half round casing; 1 segmental casing', 3, null, 250.5],
      ['A2', '2nd floor: 1 half round casing', 1, 100, 100],
      ['A4', 'Place not given: 1 half round casing', 1, 100, 100],
    ]);
  });

  it('counts the rest of a long group instead of listing it', () => {
    const many = Array.from({ length: 5000 }, (_, at) => opening(at + 1, { place: 'Hall', words: `Casing ${at}` }));
    const [line] = proposed(many, { linesBy: 'place' }).lines;
    expect(line!.mark).toMatch(/^A1, A2, .*A12, and 4988 more$/);
    expect(line!.words.length).toBeLessThan(500);
    expect(line!.amount).toBe(500_000);
  });

  it('adds other lines, and what is charged for set-ups and finish of the openings in the base alone', () => {
    const job = {
      extras: [{ words: 'Straight casing by the foot', quantity: 10.5, unitPrice: 3.33 }],
      alternates: ['A2'],
      finishRate: 2,
    };
    const { extras, charges, total } = proposed(
      [opening(1, { setups: 12.344 }), opening(2, { setups: 9, length: 50 })],
      job,
    );
    expect(extras[0]!.amount).toBe(34.97);
    expect(charges.map(({ kind, amount }) => [kind, amount])).toEqual([
      ['setups', 12.34],
      ['finish', 10],
    ]);
    expect(total).toBe(157.31);
  });

  it('tells the lead time only where it shall', () => {
    expect(proposed([opening(1)], {}, 3).weeks).toBeNull();
    expect(proposed([opening(1)], { leadTime: 'shown' }, 3).weeks).toBe(3);
    expect(proposed([opening(1)], { leadTime: 'shown' }, 0).weeks).toBeNull();
  });
});
