import { describe, expect, it } from 'vitest';
import { boardFeet } from '../src/lumber';
import { inches } from '../src/unit';
import { expectNear, refusalOf, valueOf } from './value';

/** Sizes in inches. */
const boardFeetOf = (thickness: number, width: number, length: number, quantity?: number) =>
  boardFeet(inches(thickness, 'in'), inches(width, 'in'), inches(length, 'in'), quantity);

describe('board feet', () => {
  it.each([
    { size: '2 × 4 × 8 ft', args: [2, 4, 96], feet: 16 / 3, source: 'PS 20-20, section 2.2' },
    { size: '2 × 10 × 16 ft', args: [2, 10, 192], feet: 80 / 3, source: 'PS 20-20, section 2.2' },
    { size: '1 × 12 × 10 ft', args: [1, 12, 120], feet: 10, source: 'PS 20-20, section 2.2' },
    { size: '4/4 × 8 in × 8 ft', args: [1, 8, 96], feet: 16 / 3, source: 'extension fact sheet, quoted as 5.33' },
    { size: '2 × 8 × 72 in', args: [2, 8, 72], feet: 8, source: 'arithmetic, 1152/144' },
  ])('of $size are $feet ($source)', ({ args, feet }) => {
    expectNear(valueOf(boardFeetOf(args[0]!, args[1]!, args[2]!)), feet, 1e-15);
  });

  it('count stock under an inch as an inch thick (common practice)', () => {
    expect(boardFeetOf(0.5, 6, 120)).toEqual(boardFeetOf(1, 6, 120));
    expect(valueOf(boardFeetOf(1.25, 6, 120))).toBe(6.25);
  });

  it('go with the quantity, of which none gives none', () => {
    expect(valueOf(boardFeetOf(1, 6, 120, 7))).toBe(35);
    expect(valueOf(boardFeetOf(1, 6, 120, 0))).toBe(0);
  });

  it('refuse sizes that are none', () => {
    expect(refusalOf(boardFeetOf(0, 6, 120))).toBe('thickness must be more than 0; got 0');
    expect(refusalOf(boardFeetOf(1, -6, 120))).toBe('width must be more than 0; got -6');
    expect(refusalOf(boardFeetOf(1, 6, 2e9))).toBe('length must be no more than 1000000; got 2000000000');
    expect(refusalOf(boardFeetOf(1, 6, 120, -1))).toBe('quantity must be 0 or more; got -1');
  });
});
