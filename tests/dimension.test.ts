import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDimension, readDimensionIn } from '../src/dimension';
import { refusalOf, valueOf } from './value';

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
    ['35 ¹⁰⁄₁₆"', 35.625],
    [`36${' '.repeat(57)}"`, 36],
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
    ['1/4', 0.25],
    ['3/8', 0.375],
    ['9/16', 0.5625],
    ['5/32', 0.15625],
    ['63/64', 0.984375],
    ['127/128', 0.9921875],
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
    ['-1', -1],
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
    ['36,5"', 36.5],
  ])('%s is %d by the definition of the inch, 25.4 mm', (text, inches) => {
    expect(valueOf(readDimension(text))).toBe(inches);
  });

  it.each(['914 mm', '91.4 cm', '0.914 m'])(
    '%s is the same number as 914 mm, and comes back as 914 where millimeters are wanted',
    (text) => {
      expect(valueOf(readDimension(text))).toBe(9140 / 254);
      expect(valueOf(readDimensionIn(text, { answer: 'mm' }))).toBe(914);
    },
  );

  it('without a unit as millimeters where a workbook is kept in them; a fraction there is doubtful', () => {
    expect(valueOf(readDimensionIn('914', { bare: 'mm', answer: 'mm' }))).toBe(914);
    expect(valueOf(readDimensionIn('36"', { bare: 'mm', answer: 'mm' }))).toBe(914.4);
    expect(refusalOf(readDimensionIn('36 1/2', { bare: 'mm', answer: 'mm' }))).toContain('"36 1/2"');
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
    '36 4/4',
    '2/3',
    '5/6',
    '7/9',
    `36${' '.repeat(58)}"`,
    '36 1/0',
    '3-6',
    '7-0',
    '3\' 12"',
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
