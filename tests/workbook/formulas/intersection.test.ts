import { expect, it } from 'vitest';
import { withoutIntersection } from '../../../src/workbook/formulas/intersection';

it.each([
  ['=@ARCH.RADIUS(A1,@Shop_reveal)', '=ARCH.RADIUS(A1,Shop_reveal)'],
  ['=@_xldudf_ARCH_RADIUS(A1,2)', '=_xldudf_ARCH_RADIUS(A1,2)'],
  ['=INDEX(@Shares,1,2)+@Wood+@OnHand+@Shop', '=INDEX(Shares,1,2)+Wood+OnHand+Shop'],
  ['="@ARCH.X"&@ARCH.RISE(1,2)', '="@ARCH.X"&ARCH.RISE(1,2)'],
  ['=@mine+@A:A+Table1[@Qty]+@Shopping', '=@mine+@A:A+Table1[@Qty]+@Shopping'],
])('%s is read as %s', (shown, read) => {
  expect(withoutIntersection(shown)).toBe(read);
});
