import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCallout, readDimension } from '../src/dimension';
import { feetInches, shopInches } from '../src/feetInches';
import { expectNear, refusalOf, valueOf } from './value';

describe('dimension text is read', () => {
  it.each<[string, number]>([
    ['36', 36],
    ['36.5', 36.5],
    ['.5', 0.5],
    ['36 1/2', 36.5],
    ['36-1/2', 36.5],
    ['36 - 1/2', 36.5],
    ['80-1/2', 80.5],
    ['36½', 36.5],
    ['36 ½', 36.5],
    ['36-½"', 36.5],
    ['35 7⁄16"', 35.4375],
    ['35 ⁷⁄₁₆', 35.4375],
    ['36"', 36],
    ['36″', 36],
    ['36”', 36],
    ["36''", 36],
    ['36 in', 36],
    ['36 in.', 36],
    ['36 Inches', 36],
    ['36.5"', 36.5],
    ['7/16', 0.4375],
    ['3/16"', 0.1875],
    ['6/8"', 0.75],
    ['½', 0.5],
    ["3'", 36],
    ['3′', 36],
    ['3’', 36],
    ["3.5'", 42],
    ["3 1/2'", 42],
    ['3\'-0"', 36],
    ['3\' - 0"', 36],
    ['7\' - 0"', 84],
    ['3\'0"', 36],
    ["3'6", 42],
    ['3\' 6 1/2"', 42.5],
    ['3\'-6-1/2"', 42.5],
    ['3\'-6 1/2"', 42.5],
    ['3’–6½”', 42.5],
    ['3\'-½"', 36.5],
    ['6\' 8.5"', 80.5],
    ['3ft 6in', 42],
    ['3 ft. 6 in.', 42],
    ['3 feet 6 1/2 inches', 42.5],
    ['3FT', 36],
    ['-3\'-6"', -42],
    ['-1/2', -0.5],
    ['−3', -3],
    ['\u00a036\u00a01/2\u00a0', 36.5],
  ])('%s is %d', (text, inches) => {
    expect(valueOf(readDimension(text))).toBe(inches);
  });

  it.each([
    ['914.4 mm', 36],
    ['914.4mm', 36],
    ['91.44 cm', 36],
    ['0.9144 m', 36],
    ['914,4 mm', 36],
    ['0,9144 m', 36],
    ['914.4 millimeters', 36],
    ['25.4 MM', 1],
    ['1,219.2 mm', 48],
  ])('%s is %d by the definition of the inch, 25.4 mm', (text, inches) => {
    expect(valueOf(readDimension(text))).toBe(inches);
  });

  it.each(['914 mm', '91.4 cm', '0.914 m'])(
    '%s is the same number as 914 mm, and comes back as 914 where millimeters are wanted',
    (text) => {
      expect(valueOf(readDimension(text))).toBe(9140 / 254);
      expect(valueOf(readDimension(text, { answer: 'mm' }))).toBe(914);
    },
  );

  it('without a unit as millimeters where a workbook is kept in them; a fraction there is doubtful', () => {
    expect(valueOf(readDimension('914', { bare: 'mm', answer: 'mm' }))).toBe(914);
    expect(valueOf(readDimension('36"', { bare: 'mm', answer: 'mm' }))).toBe(914.4);
    expect(refusalOf(readDimension('36 1/2', { bare: 'mm' }))).toContain('"36 1/2"');
  });

  it.each([
    ['36,5', 36.5],
    ['36,5"', 36.5],
    ['1.219,2 mm', 48],
    ['1,219 m', 12190 / 254],
    ['36.5', 36.5],
  ])('%s is %d where the locale has a decimal comma', (text, inches) => {
    expect(valueOf(readDimension(text, { decimalComma: true }))).toBe(inches);
  });
});

describe('dimension text is refused with the text quoted back', () => {
  it.each([
    'abc',
    '36 x 80',
    '36"x80"',
    '3/0',
    '6/8',
    '4/4',
    '0/2',
    '36 3/2',
    '36 1/0',
    '3-6',
    '7-0',
    '3\' 14"',
    '3.5\' 6"',
    '1e3',
    '0x10',
    '36 1',
    '36 37',
    '--3',
    '+3',
    '3..5',
    '1,219 mm',
    '1,234',
    '36,5',
    '12,34,56',
    '1,219,5 mm',
    '1.219.5 mm',
    '$36',
    '36#',
    '36\'"',
    '"36',
    '36 yd',
    '36 m m',
    "3'6'",
    '36" R.O.',
    '36 or 38',
    '36?',
    '~36',
    '36±1/16',
    'NaN',
    'Infinity',
    '٣٦',
    '=36',
    '1/2/3',
    '3 feet 6 feet',
    'mm',
    '"',
    "'",
    '-',
    '1'.repeat(61),
    '9'.repeat(400),
  ])('%s', (text) => {
    const sentence = refusalOf(readDimension(text));
    expect(sentence).toContain(`"${text.slice(0, 60)}`);
    expect(sentence).toContain(
      `is not a dimension; accepted are 36, 36.5, 36 1/2, 36-1/2, 36", 3', 3'-6 1/2", 3ft 6in, 914 mm`,
    );
  });

  it('where there is none', () => {
    expect(refusalOf(readDimension('   '))).toContain('a dimension is missing');
  });

  it('1.219 m where the locale has a decimal comma: it may be 1219 m', () => {
    expect(refusalOf(readDimension('1.219 m', { decimalComma: true }))).toContain('"1.219 m"');
  });

  it('whatever is thrown at it: a finite number or one sentence, never an exception', () => {
    const pieces = fc.constantFrom(
      '3',
      '36',
      '1/2',
      '½',
      "'",
      '"',
      '-',
      ' ',
      '.',
      ',',
      'ft',
      'in',
      'mm',
      'm',
      'x',
      '/',
      '0',
      '-0',
      '⁄',
      '’',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(pieces, { maxLength: 8 }).map((some) => some.join('')),
        ),
        (text) => {
          const result = readDimension(text);
          if (result.ok) expect(Number.isFinite(result.value)).toBe(true);
          else expect(result.message).toMatch(/^("|a dimension)/);
        },
      ),
      { numRuns: 3_000 },
    );
  });
});

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

  it.each(['306', '0068', '3068RH', '3/0', '3/12 x 6/8', '3068 x 80 x 2', '', '30 68', '9912345'])(
    '%s is refused',
    (text) => {
      expect(refusalOf(readCallout(text))).toContain(`"${text}" is not a size`);
    },
  );

  it('21110 is refused: 2-11 by 1-0 or 2-1 by 1-10', () => {
    expect(refusalOf(readCallout('21110'))).toBe('"21110" can be read in 2 ways; write it as in 2/10 x 6/8');
  });

  it('but is a plain number as a dimension', () => {
    expect(valueOf(readDimension('3068'))).toBe(3068);
  });
});

describe('feet and inches are written', () => {
  it.each<[number, string]>([
    [42.5, '3\'-6 1/2"'],
    [36, '3\'-0"'],
    [11 + 31 / 32, '1\'-0"'],
    [11.96, '0\'-11 15/16"'],
    [35.99, '3\'-0"'],
    [6.5, '0\'-6 1/2"'],
    [0, '0\'-0"'],
    [-0.01, '0\'-0"'],
    [-42.5, '-3\'-6 1/2"'],
    [-(11 + 31 / 32), '-1\'-0"'],
    [0.25, '0\'-0 1/4"'],
  ])('%d as %s', (inches, text) => {
    expect(valueOf(feetInches(inches))).toBe(text);
  });

  it('a tie goes away from zero', () => {
    expect(valueOf(feetInches(1 / 32))).toBe('0\'-0 1/16"');
    expect(valueOf(feetInches(-1 / 32))).toBe('-0\'-0 1/16"');
    expect(valueOf(feetInches(3 / 32))).toBe('0\'-0 1/8"');
  });

  it.each([
    [1, '3\'-7"'],
    [2, '3\'-6 1/2"'],
    [8, '3\'-6 5/8"'],
    [64, '3\'-6 41/64"'],
    [10, '3\'-6 3/5"'],
  ])('to the nearest 1/%d', (denominator, text) => {
    expect(valueOf(feetInches(42.64, denominator))).toBe(text);
  });

  it.each([
    [35.4375, '35 7/16'],
    [0.4375, '7/16'],
    [12, '12'],
    [0, '0'],
    [-0.5, '-1/2'],
    [23.99, '24'],
  ])('or %d as on a tape: %s', (inches, text) => {
    expect(valueOf(shopInches(inches))).toBe(text);
  });

  it('refuses a denominator that is not whole, and what is no number', () => {
    expect(refusalOf(feetInches(1, 0))).toBe('denominator must be a whole number from 1 to 128; got 0');
    expect(refusalOf(feetInches(1, 2.5))).toBe('denominator must be a whole number from 1 to 128; got 2.5');
    expect(refusalOf(feetInches(NaN))).toBe('inches must be a number between -1e12 and 1e12; got NaN');
    expect(refusalOf(shopInches(Infinity))).toContain('got Infinity');
  });

  it('what is written is read back, within half of the finest fraction', () => {
    const denominator = fc.constantFrom(1, 2, 4, 8, 16, 32, 64, 128);
    fc.assert(
      fc.property(fc.double({ min: -10_000, max: 10_000, noNaN: true }), denominator, (inches, finest) => {
        for (const text of [valueOf(feetInches(inches, finest)), valueOf(shopInches(inches, finest))]) {
          const back = valueOf(readDimension(text));
          expect(Math.abs(back - inches)).toBeLessThanOrEqual(0.5 / finest + 1e-9);
          expectNear(Math.abs(back * finest), Math.round(Math.abs(back * finest)), 1e-15);
        }
      }),
      { numRuns: 1_000 },
    );
  });
});
