import { describe, expect, it } from 'vitest';
import { HEAD_SHAPES } from '../../../src/head/head';
import { SHAPES } from '../../../src/head/shapes';
import { PLAIN_HEADS } from '../../../src/workbook/working/heads';

// What the formulas come to is compared with the core by tests/spreadsheet/plainHeads.test.ts; here, that none is forgotten.
describe.each(HEAD_SHAPES)('the plain formulas of a %s head', (name) => {
  const [shape, plain] = [SHAPES[name], PLAIN_HEADS[name]];

  it('have the rings that the shape says it has', () => {
    expect(plain.crown !== null).toBe(shape.rings !== 'none');
    expect(plain.haunch !== null).toBe(shape.rings === 'haunches' || shape.rings === 'fitted');
  });

  it('judge a rise where the shape has one of its own to judge', () => {
    expect(plain.misfit !== null).toBe(shape.rise.needs !== null);
  });

  it('have a high leg where the shape has a high side', () => {
    expect(plain.highLegTop !== null).toBe(shape.highSide);
  });

  it('have a straight piece where no ring is run', () => {
    if (shape.rings === 'none') expect(plain.straights.count).not.toBe('0');
    expect(plain.straights.count === '0').toBe(plain.straights.long === '0');
  });
});
