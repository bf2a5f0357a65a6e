import { describe, expect, it } from 'vitest';
import { readCallout } from '../src/callout';
import { readDimension } from '../src/dimension';
import { refusalOf, valueOf } from './value';

describe('a call-out is read as width × height, feet and inches each', () => {
  it.each<[string, number, number]>([
    // 3068, 2868, 2668: published sizes of doors, width first.
    ['3068', 36, 80],
    ['2868', 32, 80],
    ['2668', 30, 80],
    ['3070', 36, 84],
    ['21068', 34, 80],
    ['30610', 36, 82],
    ['210610', 34, 82],
    ['3/0 x 6/8', 36, 80],
    ['1/0 x 6/8', 12, 80],
    ['3/0x6/8', 36, 80],
    ['3/0 × 6/8', 36, 80],
    ['2/10 by 6/8', 34, 80],
    ['3-0 x 6-8', 36, 80],
    ['36 x 80', 36, 80],
    ['36" x 80-1/2"', 36, 80.5],
    ['3\'-0" X 6\'-8"', 36, 80],
  ])('%s is %d × %d', (text, width, height) => {
    expect(valueOf(readCallout(text))).toEqual({ width, height });
  });

  it.each(['306', '0068', '3068RH', '3/0', '3/12 x 6/8', '0/6 x 6/8', '3068 x 80 x 2', '', '30 68', '9912345'])(
    '%s is refused',
    (text) => {
      const said = text === '' ? 'nothing' : `"${text}"`;
      expect(refusalOf(readCallout(text))).toContain(`${said} is not a size`);
    },
  );

  it('21110 is refused: 2-11 by 1-0 or 2-1 by 1-10', () => {
    expect(refusalOf(readCallout('21110'))).toBe('"21110" can be read in 2 ways; write it as in 2/10 x 6/8');
  });

  it('but is a plain number as a dimension', () => {
    expect(valueOf(readDimension('3068'))).toBe(3068);
  });

  it('in a workbook kept in millimeters, to the last bit', () => {
    expect(valueOf(readCallout('21068', { answer: 'mm' }))).toEqual({ width: 863.6, height: 2032 });
    expect(valueOf(readCallout('2/10 x 6/8', { answer: 'mm' }))).toEqual({ width: 863.6, height: 2032 });
    expect(valueOf(readCallout('34" x 80"', { answer: 'mm' }))).toEqual({ width: 863.6, height: 2032 });
    expect(valueOf(readCallout('900 x 2000', { answer: 'mm', bare: 'mm' }))).toEqual({ width: 900, height: 2000 });
  });

  it('whose refusal quotes long text no further than a sentence bears', () => {
    expect(refusalOf(readCallout('3068 '.repeat(40)))).toContain(`"${'3068 '.repeat(12)}…"`);
  });
});
