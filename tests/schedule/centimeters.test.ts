import { describe, expect, it } from 'vitest';
import { readSchedule, type CellValue } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import { random } from '../random';
import { valueOf } from '../value';

const WIDTH_RISE = ['Mark', 'Head', 'Width', 'Rise'];

function read(headings: readonly string[], rows: readonly (readonly CellValue[])[], unit?: 'in' | 'cm') {
  const all = [headings, ...rows.map((row, index) => [`W${index + 1}`, 'segmental', ...row])];
  const how = unit === undefined ? {} : { unit };
  return valueOf(readSchedule({ name: 'list', firstRow: 1, rows: all }, defaultStandards(), {}, how));
}
const asks = (headings: readonly string[], ...rows: readonly (readonly CellValue[])[]) =>
  read(headings, rows).questions.map(({ id }) => id);

describe('a list without units that may be in inches as well as in centimeters', () => {
  it('is asked about once, with two rows as they would read in each, and nothing of it is priced before', () => {
    const { questions, openings } = read(WIDTH_RISE, [
      [90, 15],
      [120, 15],
      [60, 12],
    ]);
    expect(questions.map(({ id, rows, choices }) => [id, rows, choices])).toEqual([
      ['unit', [2, 3, 4], ['inches', 'centimeters', 'feet', 'millimeters']],
    ]);
    expect(questions[0]!.examples!.slice(0, 2)).toEqual([
      'row 2: 90" × 15"; row 3: 120" × 15"',
      'row 2: 35.43" × 5.91"; row 3: 47.24" × 5.91"',
    ]);
    expect(openings.map(({ span, problems }) => [span, problems.length])).toEqual(openings.map(() => [null, 1]));
  });

  it('is settled by one answer, either way', () => {
    const rows = [
      [90, 15],
      [120, 15],
    ];
    const spans = (unit: 'in' | 'cm') =>
      read(WIDTH_RISE, rows, unit).openings.map(({ span, problems }) => [span!.toFixed(3), problems]);
    expect(spans('in')).toEqual([
      ['90.000', []],
      ['120.000', []],
    ]);
    expect(spans('cm')).toEqual([
      ['35.433', []],
      ['47.244', []],
    ]);
  });

  it.each<[string, readonly string[], readonly (readonly CellValue[])[]]>([
    ['of one row', WIDTH_RISE, [[90, 15]]],
    ['of a width and a height', [...WIDTH_RISE, 'Height'], [[90, 15, 210]]],
    [
      'of low windows',
      [...WIDTH_RISE, 'Height'],
      [
        [90, 20, 120],
        [110, 20, 130],
      ],
    ],
    [
      'with one small window',
      WIDTH_RISE,
      [
        [45, 10],
        [90, 15],
        [120, 20],
      ],
    ],
    [
      'of sizes',
      ['Mark', 'Head', 'Size', 'Rise'],
      [
        ['90 x 120', 15],
        ['100 x 140', 20],
      ],
    ],
    [
      'of widths alone',
      ['Mark', 'Head', 'Width', 'Height', 'Leg'],
      [
        [80, 130, 90],
        [100, 150, 100],
      ],
    ],
    [
      'with a casing of 7',
      [...WIDTH_RISE, 'Casing'],
      [
        [90, 15, 7],
        [120, 20, 7],
      ],
    ],
    [
      'measured to the centimeter',
      WIDTH_RISE,
      [
        [87, 13],
        [93, 15],
        [121, 22],
        [78, 11],
        [102, 19],
      ],
    ],
    [
      'of small openings in fives',
      WIDTH_RISE,
      [
        [25, 5],
        [30, 6],
        [35, 7],
      ],
    ],
    [
      'of small openings in tenths',
      WIDTH_RISE,
      [
        [30.4, 6.1],
        [36.7, 7],
      ],
    ],
    [
      'of small openings with a casing of 7',
      [...WIDTH_RISE, 'Casing'],
      [
        [26, 5, 7],
        [32, 6, 7],
      ],
    ],
    [
      'of half feet with a casing 2 thick',
      [...WIDTH_RISE, 'Thickness'],
      [
        [66, 12, 2],
        [72, 14, 2],
      ],
    ],
    [
      'of halves',
      WIDTH_RISE,
      [
        [91.5, 15],
        [122.5, 20.5],
      ],
    ],
  ])('%s', (_, headings, rows) => {
    expect(asks(headings, ...rows)).toEqual(['unit']);
  });
});

describe('a list in inches shows that it is one and is not asked about its unit', () => {
  it.each<[string, readonly string[], readonly (readonly CellValue[])[]]>([
    [
      'by an opening that would be too small',
      WIDTH_RISE,
      [
        [36, 6],
        [90, 15],
        [120, 20],
      ],
    ],
    [
      'by its openings’ usual sizes',
      WIDTH_RISE,
      [
        [30, 6],
        [36, 6],
        [28, 5],
      ],
    ],
    [
      'by tens that are sizes in inches',
      WIDTH_RISE,
      [
        [30, 6],
        [40, 8],
      ],
    ],
    [
      'by sixteenths in decimals',
      WIDTH_RISE,
      [
        [30.0625, 6],
        [36.1875, 7],
      ],
    ],
    [
      'by its usual opening',
      WIDTH_RISE,
      [
        [44, 7],
        [50, 8],
        [56, 9],
        [80, 14],
      ],
    ],
    [
      'by half feet',
      WIDTH_RISE,
      [
        [72, 12],
        [84, 14],
        [60, 10],
        [70, 10],
      ],
    ],
    [
      'by a fraction',
      WIDTH_RISE,
      [
        [90, '15 1/2'],
        [100, 20],
      ],
    ],
    [
      'by a quarter',
      WIDTH_RISE,
      [
        [90.25, 15],
        [100, 20],
      ],
    ],
    [
      'by an inch mark',
      WIDTH_RISE,
      [
        ['90"', 15],
        [100, 20],
      ],
    ],
    [
      'by feet',
      WIDTH_RISE,
      [
        [`7'-6"`, 15],
        [100, 20],
      ],
    ],
    [
      'by a heading',
      ['Mark', 'Head', 'Width', 'Rise (in)'],
      [
        [90, 15],
        [100, 20],
      ],
    ],
    [
      'by its casing',
      [...WIDTH_RISE, 'Casing'],
      [
        [90, 15, 3.5],
        [100, 20, 3.5],
      ],
    ],
    [
      'by the casing’s thickness',
      [...WIDTH_RISE, 'Thickness'],
      [
        [90, 15, 0.75],
        [100, 20, 0.75],
      ],
    ],
    [
      'by a rise that would be none',
      WIDTH_RISE,
      [
        [90, 4],
        [100, 20],
      ],
    ],
    [
      'by call-outs in feet and inches',
      ['Mark', 'Head', 'Size', 'Rise'],
      [
        ['7/6 x 8/0', 15],
        ['100 x 110', 20],
      ],
    ],
    [
      'by the height of its heads',
      [...WIDTH_RISE, 'Head height'],
      [
        [90, 15, 96],
        [100, 20, 96],
      ],
    ],
  ])('%s', (_, headings, rows) => {
    expect(asks(headings, ...rows)).toEqual([]);
  });

  it('and a width of 914 beside a bare rise of 6 is asked about all the same', () => {
    expect(asks(WIDTH_RISE, [914, 6])).toEqual(['unit']);
    expect(asks(WIDTH_RISE, [914, 6], [1219, 8])).toEqual(['unit']);
    expect(
      read(WIDTH_RISE, [
        [36, 6],
        [48, 8],
        [914, 6],
        [60, 9],
      ]).openings[2]!.problems,
    ).not.toEqual([]);
  });
});

describe('how often it asks', () => {
  /** Common sizes of windows, worked out independently here; a list has 2 to 9 of them. */
  const INCHES = [24, 28, 30, 32, 34, 36, 36, 36, 40, 42, 48, 48, 54, 60, 60, 66, 72, 72, 84, 96];
  const share = (width: (from: ReturnType<typeof random>) => number, deepest: number) => {
    const from = random(20_261_130);
    const asked = Array.from({ length: 100 }, () => {
      const rows = Array.from({ length: from.whole(2, 9) }, () => {
        const wide = width(from);
        return [wide, Math.max(deepest, Math.round(wide / from.pick([3, 4, 5, 6])))];
      });
      return asks(WIDTH_RISE, ...rows).includes('unit');
    });
    return asked.filter(Boolean).length / asked.length;
  };

  it('is seldom of inches and nearly always of centimeters', () => {
    expect(share((from) => from.pick(INCHES), 4)).toBeLessThan(0.03);
    expect(share((from) => 60 + 10 * from.whole(0, 18), 8)).toBe(1);
    expect(share((from) => from.whole(55, 220), 8)).toBeGreaterThan(0.97);
  });
});
