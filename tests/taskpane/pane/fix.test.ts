import { describe, expect, it } from 'vitest';
import { fixOpening } from '../../../taskpane/pane/fix';
import { defaultStandards } from '../../../src/standards';
import { opening } from './opening';

const shop = defaultStandards();
const missingRise = opening({ rise: null, problems: [{ row: 2, field: 'rise', message: 'Rise is missing.' }] });

function fix(one: ReturnType<typeof opening>, field: Parameters<typeof fixOpening>[2], text: string) {
  return fixOpening([one], 0, field, text, shop);
}

describe('fixing an opening in place', () => {
  it.each([
    ['6', 6],
    ['6 1/2', 6.5],
    ['0\'-6 1/2"', 6.5],
    ['152.4 mm', 6],
    [' 6" ', 6],
  ])('takes a missing rise typed as %s', (text, rise) => {
    const fixed = fix(missingRise, 'rise', text);
    expect(fixed.ok && fixed.value.rise).toBeCloseTo(rise, 12);
    expect(fixed.ok && fixed.value.problems).toEqual([]);
  });

  it('refuses a text that is no length, quoting it', () => {
    const fixed = fix(missingRise, 'rise', 'six');
    expect(fixed).toMatchObject({ ok: false });
    expect(!fixed.ok && fixed.message).toContain('you typed "six"');
  });

  it.each(['-3', '0'])('refuses a rise of %s', (text) => {
    expect(fix(missingRise, 'rise', text).ok).toBe(false);
  });

  it('says so when a typed rise cannot stand over the span', () => {
    const fixed = fix(opening({ head: 'three-centered', span: 60, rise: null }), 'rise', '40');
    expect(fixed.ok && fixed.value.problems[0]?.message).toContain('rises less than half');
    expect(fixed.ok && fixed.value.rise).toBeNull();
  });

  it('sets a rise aside when the head becomes one that has it from the span', () => {
    const fixed = fix(opening(), 'head', 'half round');
    expect(fixed.ok && fixed.value).toMatchObject({ head: 'half round', rise: 18, problems: [] });
    const straight = fix(opening(), 'head', 'straight');
    expect(straight.ok && straight.value).toMatchObject({ head: 'straight', rise: null, problems: [] });
  });

  it('lets the rise of a half round follow its span', () => {
    const fixed = fix(opening({ head: 'half round', rise: 18 }), 'span', '40');
    expect(fixed.ok && fixed.value).toMatchObject({ span: 40, rise: 20, problems: [] });
  });

  it('lets a typed span no longer follow the rough opening', () => {
    const rough = { ...opening({ span: 36 }), rough: { span: 38, rise: 8.5 } };
    const fixed = fixOpening([rough], 0, 'span', '40', shop);
    expect(fixed.ok && fixed.value).toMatchObject({ span: 40, rise: 6 });
    expect(fixed.ok && fixed.value.rough).toEqual({ rise: 8.5 });
  });

  it('keeps problems of other fields', () => {
    const two = opening({
      rise: null,
      quantity: null,
      problems: [...missingRise.problems, { row: 2, field: 'quantity', message: 'Quantity is blank.' }],
    });
    const fixed = fix(two, 'rise', '6');
    expect(fixed.ok && fixed.value.problems.map((one) => one.field)).toEqual(['quantity']);
  });

  it('leaves a blank field to the shop where the shop has a figure for it', () => {
    const fixed = fix(opening({ face: 4 }), 'face', '');
    expect(fixed.ok && fixed.value.face).toBeNull();
    expect(fix(opening(), 'span', '').ok).toBe(false);
  });

  it('refuses a mark that another opening has', () => {
    const list = [opening(), opening({ row: 3, mark: 'W2' })];
    const fixed = fixOpening(list, 1, 'mark', 'w1', shop);
    expect(!fixed.ok && fixed.message).toBe('The mark "w1" already stands in row 2; give this opening another.');
    expect(fixOpening(list, 1, 'mark', 'W3', shop).ok).toBe(true);
  });

  it('takes a count in words of the trade and refuses half an opening', () => {
    expect(fix(opening(), 'quantity', '4 ea')).toMatchObject({ ok: true, value: { quantity: 4 } });
    expect(fix(opening(), 'quantity', '1.5').ok).toBe(false);
  });
});
