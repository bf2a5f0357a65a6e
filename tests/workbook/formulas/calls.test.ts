import { describe, expect, it } from 'vitest';
import { callsIn, withoutIntersection } from '../../../src/workbook/formulas/calls';

describe('the ARCH calls of a formula', () => {
  it.each([
    ['=ARCH.RADIUS(B2, -3)', [{ name: 'RADIUS', args: ['B2', '-3'] }]],
    ['=_xldudf_ARCH_RADIUS(36,6)', [{ name: 'RADIUS', args: ['36', '6'] }]],
    ['=arch.radius(36,,6)', [{ name: 'RADIUS', args: ['36', '', '6'] }]],
    ['=ARCH.HEADLENGTH("a,b",B2)', [{ name: 'HEADLENGTH', args: ['"a,b"', 'B2'] }]],
    ["=ARCH.RADIUS('It''s, here'!B2,6)", [{ name: 'RADIUS', args: ["'It''s, here'!B2", '6'] }]],
    ['=ARCH.RADIUS()', [{ name: 'RADIUS', args: [] }]],
    [
      '=ROUND(ARCH.SPAN(6,ARCH.RADIUS(A1,{1,2})),2)',
      [
        { name: 'SPAN', args: ['6', 'ARCH.RADIUS(A1,{1,2})'] },
        { name: 'RADIUS', args: ['A1', '{1,2}'] },
      ],
    ],
    ['="ARCH.RADIUS(1,2)"', []],
    ['=SUM(A1:A3)', []],
  ])('in %s', (formula, calls) => {
    expect(callsIn(formula)).toEqual(calls);
  });

  it('ends with the formula where a parenthesis was never closed', () => {
    expect(callsIn('=ARCH.RADIUS(36,"6')).toEqual([{ name: 'RADIUS', args: ['36', '"6'] }]);
  });
});

it.each([
  ['=@ARCH.RADIUS(A1,@Shop_reveal)', '=ARCH.RADIUS(A1,Shop_reveal)'],
  ['=@_xldudf_ARCH_RADIUS(A1,2)', '=_xldudf_ARCH_RADIUS(A1,2)'],
  ['=INDEX(@Shares,1,2)+@Wood+@OnHand+@Shop', '=INDEX(Shares,1,2)+Wood+OnHand+Shop'],
  ['="@ARCH.X"&@ARCH.RISE(1,2)', '="@ARCH.X"&ARCH.RISE(1,2)'],
  ['=@mine+@A:A+Table1[@Qty]+@Shopping', '=@mine+@A:A+Table1[@Qty]+@Shopping'],
])('%s is read as %s', (shown, read) => {
  expect(withoutIntersection(shown)).toBe(read);
});
