import { expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { handsOf, handsText, SIDE_UNSAID } from '../../src/takeoff/hands';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from './openings';

const raked = (remarks: string | null, quantity = 2, sides = 1) =>
  handsOf({ head: 'half segmental', quantity, sides, remarks });

it.each([
  ['2 high side left, 1 high side right', 3, { right: 1, left: 2 }],
  ['(1) high at left / (1) high at right', 2, { right: 1, left: 1 }],
  ['high side right', 4, { right: 4, left: 0 }],
  ['High end at left', 1, { right: 0, left: 1 }],
  ['high side: 3 left, 2 right', 5, { right: 2, left: 3 }],
  ['LH & RH', 2, { right: 1, left: 1 }],
  ['1 LH, 1 RH', 2, { right: 1, left: 1 }],
  ['left hand and right hand', 6, { right: 3, left: 3 }],
  ['mulled pair', 4, { right: 2, left: 2 }],
  ['opposite hands; stain grade', 2, { right: 1, left: 1 }],
  ['one left, one right', 2, { right: 1, left: 1 }],
  ['two left / two right', 4, { right: 2, left: 2 }],
])('the hands of a raked pair are read from "%s", of %i', (remarks, quantity, hands) => {
  expect(raked(remarks, quantity)).toEqual(hands);
});

it.each([
  [null, 2],
  ['verify in field', 2],
  // Whether the high side of a left-hand unit is left or right is no settled custom.
  ['LH', 1],
  ['2 LH, 1 RH', 3],
  // Counts that don't come to the quantity.
  ['2 high side left, 1 high side right', 4],
  ['LH and RH', 3],
  ['pair', 3],
  ['two left, one right', 3],
  ['right leg 60" high', 1],
  ['verify in field', 0],
])('and stay unsaid where "%s" doesn\'t say, of %s', (remarks, quantity) => {
  expect(raked(remarks, quantity)).toBe('unsaid');
});

it('is said beside the drawing, which has the high side at the right', () => {
  expect(handsText('unsaid')).toContain('is not said: drawn with it right');
  expect(handsText({ right: 3, left: 0 })).toBe('3 high side right, as drawn');
  expect(handsText({ right: 0, left: 2 })).toBe('2 high side left: cuts and legs change sides');
  expect(handsText({ right: 1, left: 2 })).toBe(
    '1 high side right, as drawn; 2 high side left: cuts and legs change sides',
  );
  expect(handsText({ right: 2, left: 1 })).toBe(
    '2 high side right, as drawn; 1 high side left: cuts and legs change sides',
  );
});

it('casing on both sides of the wall has one of each hand for each opening', () => {
  expect(raked(null, 3, 2)).toEqual({ right: 3, left: 3 });
});

it('a head alike on both sides has no hands', () => {
  expect(handsOf({ head: 'half round', quantity: 2, sides: 1, remarks: 'LH and RH' })).toBeNull();
});

it('an unsaid hand is said where the row is priced', () => {
  const raked = { head: 'half segmental', span: 18, rise: 6, quantity: 2 } as const;
  const remarks = ['stain grade', 'LH', '1 high side left, 1 high side right'];
  const openings = remarks.map((each, at) => opening({ ...raked, row: at + 2, remarks: each }));
  const taken = takeoff([...openings, opening({ row: 9, head: 'segmental', span: 18, rise: 6 })], defaultStandards());
  expect(taken.openings.map(({ sideUnsaid }) => sideUnsaid)).toEqual([[SIDE_UNSAID], [SIDE_UNSAID], [], []]);
  expect(taken.openings.map(({ cost }) => cost === null)).toEqual([false, false, false, false]);
});
