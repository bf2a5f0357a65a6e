import { describe, expect, it } from 'vitest';
import { readTableNotes } from '../../src/schedule/tableNotes';

const notes = (...texts: string[]) =>
  readTableNotes(
    texts.map((text) => text.split('|')),
    1,
    'in',
  );

describe('a note about the unit', () => {
  it.each<[string, string | null]>([
    ['All dimensions in mm', 'mm'],
    ['NOTE: ALL DIMENSIONS IN MM U.N.O.', 'mm'],
    ['Unless noted otherwise, all dimensions are in inches', 'in'],
    ['1. All dims. in cm', 'cm'],
    ['Dimensions in feet and inches', 'ft-in'],
    ['(All dimensions in inches)', 'in'],
    ['Units:|mm', 'mm'],
    ['Glass sizes in mm', null],
    ['Trim dimensions in inches', null],
    ['All units in stock', null],
    ['Units delivered|3|mm', null],
  ])('"%s" gives %s', (text, unit) => expect(notes(text).unit).toBe(unit));

  it('is not followed where another note says otherwise', () => {
    const { unit, remarks } = notes('All dimensions in mm', 'All dimensions in inches');
    expect(unit).toBe(null);
    expect(remarks).toEqual([
      'Notes give different units, "All dimensions in mm" and "All dimensions in inches"; none of them was followed.',
    ]);
  });
});

describe('a note about rough openings', () => {
  it.each([
    'All sizes are rough openings.',
    'Sizes shown are R.O.',
    'Dimensions are to rough opening',
    'All dimensions: R.O. sizes',
    'Window rough opening schedule',
    'Window schedule - rough openings',
  ])('"%s" is one', (text) => {
    expect(notes(text)).toMatchObject({ rough: true, remarks: [expect.stringContaining(text)] });
  });

  it.each([
    'Verify rough openings on site',
    'Rough opening = frame size + 2 in',
    'Sizes are frame sizes, not rough openings',
    'Rough openings by others',
  ])('"%s" is none', (text) => expect(notes(text)).toMatchObject({ rough: false, remarks: [] }));

  it('in a title counts above the headings only', () => {
    expect(notes('Mark', 'Rough opening schedule').rough).toBe(false);
  });
});
