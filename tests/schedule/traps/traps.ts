import { HEADINGS, rowsOf, withCell, withColumn, type Trap, type Truth } from './list';

/** Traps of lists as builders send them, each of its own kind; what is right is known, because the list is made here. */

const remark =
  (text: string) =>
  (_one: Truth, index: number, at: number): string | null =>
    index === at ? text : null;

function ofRemark(text: string): Trap {
  return {
    name: `the remark "${text}"`,
    plant: (all, at) => ({
      table: { rows: withColumn(all, 'Remarks', (one, index) => remark(text)(one, index, at)) },
      asks: [at],
    }),
  };
}

function ofCell(name: string, column: string, cell: (one: Truth) => string | number | Date | null): Trap {
  return { name, plant: (all, at) => ({ table: { rows: withCell(all, at, column, cell) }, asks: [at] }) };
}

/** All lengths of the list by this factor, under the headings as they are. */
function inUnit(name: string, factor: number): Trap {
  return {
    name,
    plant: (all) => ({
      table: {
        rows: [HEADINGS, ...rowsOf(all.map((one) => ({ ...one, span: one.span * factor, rise: one.rise * factor })))],
      },
      asks: 'all',
    }),
  };
}

const REMARKS = [
  'both sides',
  'casing int. & ext.',
  '(9) req’d',
  'mulled pair',
  'existing to remain',
  'straight per addendum 2',
  'ALTERNATE NO. 1',
  'N.I.C.',
  'by others',
  'add keystone',
  'no legs',
  '5 1/2" casing',
  'in white oak',
  'radius 90',
  'rise 3"',
  'size TBD',
  'same as W1',
  'head only',
];

export const TRAPS: readonly Trap[] = [
  ...REMARKS.map(ofRemark),
  inUnit('a list in millimeters that doesn’t say so', 25.4),
  {
    // Of widths and rises alone nobody can tell: 90 × 30 may be either. Heights of windows can't be inches.
    name: 'a list in centimeters that doesn’t say so, with heights',
    plant: (all) => ({
      table: {
        rows: [
          [...HEADINGS, 'Height'],
          ...rowsOf(all.map((one) => ({ ...one, span: one.span * 2.54, rise: one.rise * 2.54 }))).map((row) => [
            ...row,
            210,
          ]),
        ],
      },
      asks: 'all',
    }),
  },
  inUnit('a list in feet that doesn’t say so', 1 / 12),
  ofCell('a width in millimeters beside a bare rise', 'Width', ({ span }) => `${span * 25.4} mm`),
  ofCell('a width in bare millimeters among inches', 'Width', ({ span }) => Math.round(span * 25.4)),
  ofCell('a quantity that is blank', 'Qty', () => null),
  ofCell('a quantity of 1,5', 'Qty', () => '1,5'),
  ofCell('a rise that became a date', 'Rise', () => new Date(Date.UTC(2026, 5, 1))),
  ofCell('a width given about', 'Width', ({ span }) => `~${span}`),
  ofCell('a width to be confirmed', 'Width', () => 'TBD'),
  ofCell('a head with a question mark', 'Head', ({ head }) => `${head}?`),
  ofCell('a head nobody knows', 'Head', () => 'type 7'),
  ofCell('a mark for several', 'Mark', () => 'W90-W99'),
  ofCell('a mark with another count', 'Mark', ({ mark }) => `${mark} (9)`),
  ofCell('a mark that is withdrawn', 'Mark', ({ mark }) => `${mark} - VOID`),
  {
    name: 'a half round whose rise is none',
    plant: (all, at) => {
      const right = all.map((one, index) => (index === at ? { ...one, head: 'half round' as const } : one));
      return { table: { rows: withCell(right, at, 'Rise', ({ span }) => span / 2 + 3) }, asks: [at], right };
    },
  },
  {
    name: 'a mark that stands twice',
    plant: (all, at) => {
      const first = at === 0 ? 1 : 0;
      return { table: { rows: withCell(all, at, 'Mark', () => all[first]!.mark) }, asks: [first, at] };
    },
  },
  {
    name: 'a width under mm and a bare rise in inches',
    plant: (all) => {
      const rows = rowsOf(all.map((one) => ({ ...one, span: one.span * 25.4 })));
      return { table: { rows: [['Mark', 'Qty', 'Head', 'Width (mm)', 'Rise'], ...rows] }, asks: 'all' };
    },
  },
  {
    name: 'a radius that contradicts',
    plant: (all, at) => ({
      table: { rows: withColumn(all, 'Crown radius', ({ span }, index) => (index === at ? span * 2 : null)) },
      asks: all[at]!.head === 'elliptical' ? [at] : [at],
    }),
  },
  {
    name: 'a row that is struck through',
    plant: (all, at) => ({
      table: { rows: [HEADINGS, ...rowsOf(all)], struck: new Map([[at + 2, [0, 1, 2, 3, 4]]]) },
      asks: [at],
    }),
  },
  {
    name: 'a status',
    plant: (all, at) => ({
      table: { rows: withColumn(all, 'Status', (_one, index) => (index === at ? 'deleted' : 'new')) },
      asks: [at],
    }),
  },
  {
    name: 'counts by floor',
    plant: (all) => ({
      table: {
        rows: [
          ['Mark', '1st Floor', '2nd Floor', 'Head', 'Width', 'Rise'],
          ...all.map(({ mark, quantity, head, span, rise }) => [mark, quantity, 0, head, span, rise]),
        ],
      },
      asks: 'all',
    }),
  },
  {
    name: 'a casing for the inside and one for the outside',
    plant: (all) => ({
      table: {
        rows: [[...HEADINGS, 'Int. casing', 'Ext. casing'], ...rowsOf(all).map((row) => [...row, 3.5, 5.5])],
      },
      asks: 'all',
    }),
  },
  {
    name: 'a casing with its wood in one cell',
    plant: (all, at) => ({
      table: { rows: withColumn(all, 'Trim', (_one, index) => (index === at ? '4 1/4 red oak' : '3 1/2')) },
      asks: [at],
      also: { face: 3.5 },
    }),
  },
  {
    name: 'the thickness of a door',
    plant: (all) => ({
      table: { rows: [['DOOR SCHEDULE'], ...withColumn(all, 'Thickness', () => 1.75)] },
      also: { thickness: null },
    }),
  },
  {
    name: 'headings in the middle that swap two columns',
    plant: (all, at) => {
      const rows = rowsOf(all);
      const below = rows.slice(at).map(([mark, quantity, head, span, rise]) => [mark!, quantity!, head!, rise!, span!]);
      return { table: { rows: [HEADINGS, ...rows.slice(0, at), ['Mark', 'Qty', 'Head', 'Rise', 'Width'], ...below] } };
    },
  },
  {
    name: 'a page title and headings again',
    plant: (all, at) => {
      const rows = rowsOf(all);
      const title = ['WINDOW SCHEDULE'];
      return { table: { rows: [title, HEADINGS, ...rows.slice(0, at), title, HEADINGS, ...rows.slice(at)] } };
    },
  },
  {
    name: 'a second table in millimeters, which its title says',
    plant: (all, at) => {
      const below = all.slice(at).map((one) => ({ ...one, span: one.span * 25.4, rise: one.rise * 25.4 }));
      const above = rowsOf(all.slice(0, at));
      return { table: { rows: [HEADINGS, ...above, [], ['ATTIC (dimensions in mm)'], HEADINGS, ...rowsOf(below)] } };
    },
  },
  {
    name: 'a note of the unit above the table',
    plant: (all) => {
      const rows = rowsOf(all.map((one) => ({ ...one, span: one.span * 25.4, rise: one.rise * 25.4 })));
      return { table: { rows: [['All dimensions in mm'], HEADINGS, ...rows] } };
    },
  },
  {
    name: 'a total that disagrees',
    plant: (all) => ({ table: { rows: [HEADINGS, ...rowsOf(all), ['Total', 999]] } }),
  },
  {
    name: 'remarks that change nothing',
    plant: (all) => ({
      table: {
        rows: withColumn(all, 'Remarks', (_one, index) => ['verify in field', 'paint', 'tempered', null][index % 4]!),
      },
    }),
  },
  {
    name: 'figures to be verified, and thousands apart',
    plant: (all) => ({
      table: {
        rows: [
          ['Mark', 'Qty', 'Head', 'Width', 'Rise (in)'],
          ...all.map(({ mark, quantity, head, span, rise }) => [mark, quantity, head, `${span}" (VIF)`, `${rise}"`]),
        ],
      },
    }),
  },
  {
    name: 'decimal commas between semicolons',
    plant: (all) => {
      const comma = (value: number) => `${String(value * 10).replace('.', ',')} mm`;
      const lines = all.map(({ mark, quantity, head, span, rise }) =>
        [mark, quantity, head, comma(span * 2.54), comma(rise * 2.54)].join(';'),
      );
      return { table: ['Mark;Qty;Head;Width;Rise', ...lines].join('\n') };
    },
  },
  {
    name: 'a decimal comma between commas',
    plant: (all, at) => {
      const lines = all.map(({ mark, quantity, head, span, rise }, index) =>
        [mark, quantity, head, index === at ? `${Math.floor(span)},5` : span, rise].join(','),
      );
      return { table: ['Mark,Qty,Head,Width,Rise', ...lines].join('\n'), asks: [at] };
    },
  },
];
