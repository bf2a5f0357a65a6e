import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { chooseTable, MEANINGS, readSchedule, readTables, type Schedule, type Table } from '../../src/schedule';
import { matchHeading, meaningOf } from '../../src/schedule/meanings';
import type { CellValue } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';

const standards = defaultStandards();
const table = (rows: CellValue[][], firstRow = 1): Table => ({ name: 'test', firstRow, rows });

function schedule(rows: CellValue[][], unit: 'in' | 'mm' = 'in'): Schedule {
  const read = readSchedule(table(rows), defaultStandards(unit));
  if (!read.ok) throw new Error(read.message);
  return read.value;
}

/** Every row is an opening's or passed over, exactly once. */
function accounted(read: Schedule, rows: number, firstRow: number): void {
  const all = [...new Set(read.openings.map(({ row }) => row)), ...read.passedOver.map(({ row }) => row)].sort(
    (a, b) => a - b,
  );
  expect(all).toEqual(Array.from({ length: rows }, (_, index) => firstRow + index));
}

const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Remarks'];

describe('headings in the middle of a list', () => {
  const marks = (rows: CellValue[][]) => schedule(rows).openings.map(({ row, mark, span }) => [row, mark, span]);

  it('leave an opening below them one that says the same as one above, or says "page"', () => {
    const first = [
      ['Mark', 'Head', 'Width', 'Rise'],
      ['W1', 'segmental', '36', '6'],
    ];
    expect(marks([...first, ['Mark', 'Head', 'Rise', 'Width'], ['W1', 'segmental', '6', '36']])).toEqual([
      [2, 'W1', 36],
      [4, 'W1', 36],
    ]);
    expect(marks([...first, ['Tag', 'Head', 'Width', 'Rise'], ['W1', 'segmental', '36', '6']])).toEqual([
      [2, 'W1', 36],
      [4, 'W1', 36],
    ]);
    expect(marks([...first, ['Mark', 'Width', 'Rise', 'Leg'], ['W9 page 2', '36', '6', '40']])).toEqual([
      [2, 'W1', 36],
      [4, 'W9 page 2', 36],
    ]);
  });

  it('are not made of a row with figures, whatever its words would name with those above', () => {
    const list = [
      ['Mark', 'Qty', 'Head', 'Span', 'Rise', 'Frame', 'Remarks'],
      ['A', '2', 'segmental', `3'-0"`, '6"', 'Wood', 'Egress'],
      ['B', 1, 'segmental', 40, 6, 'Wood', null],
    ];
    expect(marks(list)).toEqual([
      [2, 'A', 36],
      [3, 'B', 40],
    ]);
  });

  it('are read anew where they name one column more', () => {
    const rows = [
      ['Mark', 'Width', 'Rise'],
      ['W1', 36, 6],
      ['Mark', 'Width', 'Rise', 'Leg'],
      ['W2', 40, 7, 50],
    ];
    expect(schedule(rows).openings.map(({ leg }) => leg)).toEqual([null, 50]);
  });

  it('make no list of doors of openings whose marks say door', () => {
    const first = [
      ['Mark', 'Head', 'Width', 'Rise'],
      ['door 1', 'segmental', 36, 6],
    ];
    const below = ['Mark', 'Head', 'Width', 'Rise', 'Thickness'];
    const thickness = (rows: CellValue[][]) => schedule(rows).openings.at(-1)!.thickness;
    expect(thickness([...first, below, ['W2', 'segmental', 36, 6, 1]])).toBe(1);
    expect(thickness([...first, ['DOORS'], below, ['D2', 'segmental', 36, 6, 1]])).toBeNull();
  });

  it('take the unit that the title above them gives, and those above keep theirs', () => {
    const rows = [
      ['Mark', 'Head', 'Width', 'Rise'],
      ['W1', 'segmental', 36, 6],
      ['ATTIC (dimensions in mm)'],
      ['Mark', 'Head', 'Width', 'Rise', 'Qty'],
      ['W2', 'segmental', 914.4, 152.4, 1],
    ];
    expect(schedule(rows).openings.map(({ span, rise, problems }) => [span, rise, problems])).toEqual([
      [36, 6, []],
      [36, 6, []],
    ]);
    // Of another part the title says nothing.
    const glass = rows.map((row, index) => (index === 2 ? ['Glass (mm)'] : row));
    expect(schedule(glass).openings.map(({ problems }) => problems.map(({ question }) => question))).toEqual([
      ['unit'],
      ['unit'],
    ]);
  });
});

describe('readSchedule', () => {
  it('accounts for every row of any table below headings, whatever the cells hold', () => {
    const cell = fc.oneof(
      fc.constantFrom<CellValue>(
        null,
        '',
        ' ',
        '"',
        '-',
        'Total',
        'Notes:',
        'in',
        'Mark',
        'Width',
        'half round',
        '36',
        '3068',
        '#REF!',
        '=A1',
      ),
      fc.string({ maxLength: 12 }),
      fc.double(),
      fc.boolean(),
      fc.date({ noInvalidDate: false }),
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { maxLength: 8 }), { maxLength: 12 }),
        fc.integer({ min: 1, max: 9 }),
        (rows, firstRow) => {
          const read = readSchedule(table([HEADINGS, ...rows], firstRow), standards);
          if (!read.ok) throw new Error(read.message);
          accounted(read.value, rows.length + 1, firstRow);
          for (const opening of read.value.openings) {
            for (const input of ['quantity', 'span', 'rise', 'reveal', 'face', 'thickness', 'leg'] as const) {
              const value = opening[input];
              expect(value === null || (Number.isFinite(value) && value >= 0)).toBe(true);
            }
            for (const field of ['span', 'quantity', 'head'] as const)
              if (opening[field] === null) expect(opening.problems.map((problem) => problem.field)).toContain(field);
            for (const { message } of opening.problems) expect(message).toMatch(/^[^\n]{10,400}$/);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('never throws on a table of noise, with or without chosen columns', () => {
    const keys = MEANINGS.map(({ key }) => key);
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.oneof(fc.string(), fc.double(), fc.constant(null)), { maxLength: 6 }), { maxLength: 8 }),
        fc.dictionary(fc.constantFrom('0', '1', '2', '5'), fc.constantFrom(...keys), { maxKeys: 4 }),
        (rows, choices) => {
          const read = readSchedule(table(rows), standards, choices);
          if (read.ok) accounted(read.value, rows.length, 1);
          else expect(read.message).toMatch(/\.$/);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('keeps any text of a mark, species, profile or remark as that text', () => {
    const text = fc.string({ minLength: 1, maxLength: 30 }).filter(
      (given) =>
        /[a-z]/i.test(given) &&
        // A footnote's sign, a list, a count in a mark, and a word that is to be asked about.
        !/[*,;&+()×]|\d|\bx\b|\band\b|\bdel\b/i.test(given) &&
        !/^(?:do\.?|ditto|same.*|n\/?a|none|nil|.*total.*|notes?.*|sum.*)$/i.test(given.trim()),
    );
    fc.assert(
      fc.property(text, text, text, (mark, species, profile) => {
        const rows = [
          ['Mark', 'Qty', 'Head', 'Width', 'Species', 'Profile'],
          [mark, 1, 'half round', 36, species, profile],
        ];
        const [opening] = schedule(rows).openings;
        expect(opening).toMatchObject({ mark: mark.trim(), species: species.trim(), profile: profile.trim() });
        expect(opening!.source).toEqual(rows[1]!.map((cell) => String(cell).trim()));
      }),
      { numRuns: 500 },
    );
  });
});

/** Ways to write the same heading and the same length; the reader must bring them back to one. */
const NAMES = {
  mark: ['Mark', 'ITEM', 'Tag No.', 'Window #', 'ID'],
  quantity: ['Qty', 'QUANTITY', 'Count', 'No. Req’d', 'Pcs'],
  head: ['Head', 'Head shape', 'Arch type', 'SHAPE'],
  width: ['Width', 'Frame Width', 'Unit width', 'W', 'Opening width', 'Span'],
  rise: ['Rise', 'Arch rise', 'RISE'],
  face: ['Casing', 'Casing width', 'Trim face', 'Face'],
  species: ['Species', 'Wood', 'Material'],
} as const;
const SHAPES = {
  segmental: ['segmental', 'Seg.', 'eyebrow', 'SEGMENT'],
  elliptical: ['elliptical', 'ellipse', 'Ellip.'],
  pointed: ['pointed', 'Gothic', 'lancet'],
} as const;

/** A length in sixteenths, written one of many ways. */
function written(sixteenths: number, way: number): CellValue {
  const inches = sixteenths / 16;
  const whole = Math.floor(inches);
  const top = sixteenths - whole * 16;
  const fraction = top === 0 ? '' : `${top}/16`;
  const feet = Math.floor(whole / 12);
  const rest = whole - feet * 12;
  switch (way % 7) {
    case 0:
      return inches;
    case 1:
      return String(inches);
    case 2:
      return fraction ? `${whole} ${fraction}` : `${whole}`;
    case 3:
      return fraction ? `${whole}-${fraction}"` : `${whole}"`;
    case 4:
      return fraction ? `${feet}'-${rest} ${fraction}"` : `${feet}'-${rest}"`;
    case 5:
      return fraction ? `${feet}’ ${rest}-${fraction}”` : `${feet}’ ${rest}”`;
    default:
      return `${(inches * 25.4).toFixed(5)} mm`;
  }
}

const planted = fc.record({
  quantity: fc.integer({ min: 1, max: 99 }),
  shape: fc.constantFrom('segmental', 'elliptical', 'pointed'),
  span: fc.integer({ min: 16 * 20, max: 16 * 200 }),
  ratio: fc.integer({ min: 10, max: 45 }),
  face: fc.integer({ min: 32, max: 100 }),
  species: fc.constantFrom('Poplar', 'Red oak', 'White oak'),
  ways: fc.tuple(fc.nat(), fc.nat(), fc.nat(), fc.nat()),
});
type Planted = typeof planted extends fc.Arbitrary<infer T> ? T : never;

/** A pointed head rises more than half its span, the others less. */
const riseOf = ({ shape, span, ratio }: Planted) =>
  Math.round((span * (shape === 'pointed' ? ratio + 50 : ratio)) / 100);

describe('a schedule planted with known openings', () => {
  const keys = Object.keys(NAMES) as (keyof typeof NAMES)[];

  it('is read back exactly whatever its headings, column order, units and notation', () => {
    fc.assert(
      fc.property(
        fc.array(planted, { minLength: 1, maxLength: 8 }),
        fc.shuffledSubarray(keys, { minLength: keys.length }),
        fc.array(fc.nat(), { minLength: keys.length, maxLength: keys.length }),
        fc.array(fc.constantFrom('title', 'blank', 'headings', 'total'), { maxLength: 4 }),
        (openings, order, names, mess) => {
          const headings = order.map((key, index) => NAMES[key][names[index]! % NAMES[key].length]!);
          const rows: CellValue[][] = mess.includes('title') ? [['Sample job'], []] : [];
          rows.push(headings);
          openings.forEach((opening, index) => {
            if (mess.includes('blank') && index === 1) rows.push([]);
            if (mess.includes('headings') && index === 2) rows.push([...headings]);
            const cells: Record<keyof typeof NAMES, CellValue> = {
              mark: `W${index + 1}`,
              quantity: opening.ways[3] % 2 === 0 ? opening.quantity : String(opening.quantity),
              head: SHAPES[opening.shape][opening.ways[3] % SHAPES[opening.shape].length]!,
              width: written(opening.span, opening.ways[0]),
              // A bare figure beside one in millimeters is asked about.
              rise: written(riseOf(opening), opening.ways[0] % 7 === 6 ? 6 : opening.ways[1] % 6),
              face: written(opening.face, opening.ways[2]),
              species: opening.species,
            };
            rows.push(order.map((key) => cells[key]));
          });
          const first = order[0];
          if (mess.includes('total') && first !== 'quantity')
            rows.push(order.map((key, index) => (index === 0 ? 'Total' : key === 'quantity' ? 7 : null)));
          const read = schedule(rows);
          expect(read.openings.map(({ problems }) => problems)).toEqual(openings.map(() => []));
          read.openings.forEach((got, index) => {
            const sown = openings[index]!;
            expect([got.mark, got.quantity, got.head, got.species]).toEqual([
              `W${index + 1}`,
              sown.quantity,
              sown.shape,
              sown.species,
            ]);
            expect(got.span).toBeCloseTo(sown.span / 16, 5);
            expect(got.rise).toBeCloseTo(riseOf(sown) / 16, 5);
            expect(got.face).toBeCloseTo(sown.face / 16, 5);
          });
          expect(read.openings).toHaveLength(openings.length);
          accounted(read, rows.length, 1);
        },
      ),
      { numRuns: 250 },
    );
  });

  it('in millimeters gives the same openings in a workbook of inches and in one of millimeters', () => {
    const headings = ['Mark', 'Qty', 'Head', 'Width (mm)', 'Rise, mm'];
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 1500 }), fc.integer({ min: 20, max: 99 }), (width, rise) => {
        const rows = [headings, ['A', 1, 'segmental', width, rise]];
        const [inInches] = schedule(rows, 'in').openings;
        const [inMillimeters] = schedule(rows, 'mm').openings;
        expect(inMillimeters).toMatchObject({ span: width, rise });
        // By definition of the inch.
        expect(inInches!.span! * 25.4).toBeCloseTo(width, 9);
        expect(inInches!.rise! * 25.4).toBeCloseTo(rise, 9);
      }),
    );
  });

  it('gives the rise of a radius and a width: span 96, rise 12, radius 102 (carpentry tip, C. W. Davis)', () => {
    const [opening] = schedule([
      ['Mark', 'Qty', 'Head', 'Width', 'Radius'],
      ['A', 1, 'segmental', 96, 102],
    ]).openings;
    expect(opening!.rise).toBeCloseTo(12, 12);
  });

  it('gives the rise of chord 21 with radius 12.1875: 6 (matheass.eu, Circular Sections)', () => {
    const [opening] = schedule([
      ['Mark', 'Qty', 'Head', 'Width', 'Radius'],
      ['A', 1, 'segmental', 21, 12.1875],
    ]).openings;
    expect(opening!.rise).toBeCloseTo(6, 12);
  });

  it('brings a rough opening of 38 to the 36 of a 3068 door, 2 in less (a door maker’s list, richardraffan.com)', () => {
    const [opening] = schedule([
      ['Mark', 'Qty', 'Head', 'R.O. width'],
      ['A', 1, 'half round', 38],
    ]).openings;
    expect(opening).toMatchObject({
      span: 36,
      rise: 18,
      notes: ['Width 36 is the rough opening 38 less 2.', 'Rise 18 is half the width of the half round.'],
    });
  });
});

describe('headings', () => {
  it('every meaning of the list can be found by its key', () => {
    for (const meaning of MEANINGS) expect(meaningOf(meaning.key)).toBe(meaning);
  });

  it('no text up to 60 characters takes longer than 20 ms to be told from a heading', () => {
    const words = [
      'rough',
      'opening',
      'arch',
      'head',
      'width',
      'clear',
      'of',
      'spring',
      'line',
      'height',
      'inside',
      'jamb',
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...words), { maxLength: 12 }), (parts) => {
        const start = process.cpuUsage();
        matchHeading(parts.join(' ').slice(0, 60));
        expect(process.cpuUsage(start).user / 1000).toBeLessThan(20);
      }),
    );
  });

  // The first two lists are the headings of real schedules, as met in public documents; the rest common practice.
  it.each([
    ['Mark, Type, Count, Height, Width, Hardware, Notes', 'mark,head,quantity,height,width,,remarks'],
    [
      'Mark, Type, Qty, Unit width, Unit height, R.O. width, R.O. height, Head height, Level, Operation, Glazing',
      'mark,head,quantity,width,height,roughWidth,roughHeight,headHeight,,,',
    ],
    [
      'Item, Type, Nominal W, Nominal H, R.O. Width, R.O. Height, Header, Notes',
      'mark,head,width,height,roughWidth,roughHeight,,remarks',
    ],
    ['#, Qty., W., Ht., R, Casing W.', 'mark,quantity,width,height,radius,face'],
    ['No., Mark, Qty, Width', ',mark,quantity,width'],
    ['No., Qty, Width', 'mark,quantity,width'],
    ['Mark, No., Width', 'mark,quantity,width'],
    ['No., Width', 'mark,width'],
    ['Door No., Each, Rough width, Ht to spring line, O.A. height', 'mark,quantity,roughWidth,springHeight,height'],
    ['Mark, Glass width, Jamb depth, Wall thickness, Width', 'mark,,,,width'],
  ])('%s', (headings, meanings) => {
    const titles = headings.split(', ');
    const cells = titles.map((title) => (/type/i.test(title) ? 'half round' : 12));
    const read = schedule([titles, cells]);
    expect(read.meaning.map((key) => key ?? '').join(',')).toBe(meanings);
  });
});

describe('the example job', () => {
  const example = (name: string) => readFileSync(new URL(`../../examples/${name}`, import.meta.url));

  async function readExample(name: string): Promise<Schedule> {
    const tables = await readTables(name, example(name));
    if (!tables.ok) throw new Error(tables.message);
    const read = readSchedule(chooseTable(tables.value)!, standards);
    if (!read.ok) throw new Error(read.message);
    return read.value;
  }

  it('has every head shape, and rows in every kind of trouble', async () => {
    const { openings } = await readExample('schedule.csv');
    expect(new Set(openings.map(({ head }) => head))).toEqual(
      new Set([
        'half round',
        'segmental',
        'elliptical',
        'three-centered',
        'pointed',
        'round',
        'quarter round',
        'straight',
      ]),
    );
    expect(new Set(openings.flatMap(({ problems }) => problems.map(({ field }) => field)))).toEqual(
      new Set(['rise', 'span', 'mark', 'quantity', 'reveal']),
    );
    expect(openings.filter(({ problems }) => problems.length === 0).length).toBeGreaterThanOrEqual(18);
  });

  it('reads the same from the workbook as from the text file', async () => {
    const strip = ({ openings }: Schedule) =>
      openings.map(({ source: _source, notes: _notes, problems, ...inputs }) => ({
        ...inputs,
        fields: problems.map(({ field }) => field),
      }));
    expect(strip(await readExample('schedule.xlsx'))).toEqual(strip(await readExample('schedule.csv')));
  });

  it('small.csv has no problems', async () => {
    const { openings } = await readExample('small.csv');
    expect(openings.flatMap(({ problems }) => problems)).toEqual([]);
    expect(openings).toHaveLength(5);
  });
});
