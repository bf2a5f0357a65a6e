import { book, escaped, type Book, type Cell, type Looks } from './fods';
import { grouped, HEADINGS, schedule, type Source } from '../../pdf/source';

/** A workbook to be saved as PDF, and the schedule that stands on it. */
export interface Saved extends Source {
  /** A flat OpenDocument spreadsheet. */
  readonly fods: string;
  /** The page turned by 90° afterwards, as viewers and plotters do. */
  readonly turned?: boolean;
  /** How many of its openings are asked about at the most. */
  readonly asked?: number;
}

const WIDTHS = [0.6, 0.5, 2.1, 1.1, 0.9, 0.8, 3];
const cells = (texts: readonly string[], look = 'd'): Cell[] => texts.map((text) => ({ text, look }));
const plainRows = ({ headings, rows }: Source): Cell[][] => [cells(headings, 'h'), ...rows.map((row) => cells(row))];

const TEN = schedule(10);
const LONG = schedule(75);
const RULE = 'fo:border="0.5pt solid #000000"';
const BOLD = 'fo:font-weight="bold"';

/** A look for all cells, and one for the headings. */
const looks = (cell: string, heading = cell, text = '', align = 'start'): Looks => ({
  d: { cell, text, align },
  h: { cell: heading, text: `${BOLD} ${text}`, align },
});

const simple = (source: Source, style: Looks, others: Partial<Book> = {}): Saved => ({
  ...source,
  fods: book({ looks: style, widths: WIDTHS, sheets: [plainRows(source)], ...others }),
});

const WRAPPED = [0.5, 0.45, 0.9, 0.9, 0.55, 0.5, 1.1];
const wrap = 'fo:wrap-option="wrap"';

const banded = (source: Source): Cell[][] => [
  cells(source.headings, 'h'),
  ...source.rows.map((row, at) => cells(row, at % 2 ? 'd' : 'e')),
];

const fractions = (source: Source): Cell[][] => [
  cells(source.headings, 'h'),
  ...source.rows.map((row) =>
    row.map((text): Cell => {
      if (!/\d\/\d/.test(text)) return { text, look: 'd' };
      const markup = escaped(text).replace(
        / ?(\d+)\/(\d+)/,
        '<text:span text:style-name="up">$1</text:span>⁄<text:span text:style-name="low">$2</text:span>',
      );
      return { text, look: 'd', markup };
    }),
  ),
];

const GROUPED = grouped(9);
const groupedRows = (source: Source): Cell[][] => [
  [
    { text: '', look: 'h' },
    { text: '', look: 'h' },
    { text: 'ROUGH OPENING', look: 'm', across: 2 },
    ...cells(['', '', ''], 'h'),
  ],
  cells(['MARK', 'QTY', 'WIDTH', 'HEIGHT', 'HEAD', 'RISE', 'REMARKS'], 'h'),
  ...source.rows.map((row) => cells(row)),
];

const NOTHING = cells(['', '', '', '', '', '', ''], 'n');
const line = (...texts: string[]) => cells([...texts, '', '', '', '', '', ''].slice(0, 7), 'n');

/** A sheet as an office draws one up in a spreadsheet: title block, several tables, notes. */
const PLAN_ROWS: readonly Cell[][] = [
  line('RESIDENCE FOR A CLIENT', '', '', '', '', '', 'SHEET A-601'),
  line('DATE 3/4/2026', '', '', '', '', '', 'SCALE 1/4" = 1\'-0"'),
  NOTHING,
  [{ text: 'WINDOW SCHEDULE', look: 't', across: 7 }],
  ...plainRows(TEN),
  NOTHING,
  line('NOTES'),
  line('1. All dimensions are to the face of studs unless noted otherwise on the drawings.'),
  line('2. Verify each rough opening in the field.'),
];

const SEVERAL: readonly Cell[][] = [
  line('DOOR SCHEDULE'),
  ...[
    ['DOOR', 'LEAF', 'MATERIAL', 'HARDWARE'],
    ['D1', '3080', 'OAK', 'SET 1'],
    ['D2', '2868', 'PINE', 'SET 2'],
    ['D3', '2668', 'PINE', 'SET 2'],
  ].map((row) => [...cells(row), ...cells(['', '', ''], 'n')]),
  NOTHING,
  line('WINDOW SCHEDULE'),
  ...plainRows(TEN),
  NOTHING,
  line('FINISHES'),
  ...[
    ['ROOM', 'FLOOR', 'BASE', 'CEILING'],
    ['101 HALL', 'OAK', 'WD-1', 'GYP'],
    ['102 STUDY', 'CARPET', 'WD-1', 'GYP'],
  ].map((row) => [...cells(row), ...cells(['', '', ''], 'n')]),
];

/** Workbooks as builders save them as PDF. */
export const SHEETS: Readonly<Record<string, Saved>> = {
  ruled: simple(TEN, looks(RULE)),
  dotted: simple(TEN, looks('fo:border="0.75pt dotted #000000"')),
  dashed: simple(TEN, looks('fo:border="0.75pt dashed #000000"')),
  'double rules': simple(TEN, looks('fo:border="2pt double #000000" style:border-line-width="0.5pt 0.8pt 0.5pt"')),
  'white rules on bands': {
    ...TEN,
    fods: book({
      looks: {
        d: { cell: 'fo:border="1.5pt solid #ffffff"' },
        e: { cell: 'fo:border="1.5pt solid #ffffff" fo:background-color="#dddde8"' },
        h: { cell: 'fo:border="1.5pt solid #ffffff" fo:background-color="#334455"', text: 'fo:color="#ffffff"' },
      },
      widths: WIDTHS,
      sheets: [banded(TEN)],
    }),
  },
  'bands without rules': {
    ...TEN,
    fods: book({
      looks: { d: {}, e: { cell: 'fo:background-color="#eeeeee"' }, h: { text: BOLD } },
      widths: WIDTHS,
      sheets: [banded(TEN)],
    }),
  },
  'rules under the rows alone': simple(TEN, looks('fo:border-bottom="0.5pt solid #888888"')),
  'rules between the columns alone': simple(TEN, looks('fo:border-left="0.5pt solid #888888"')),
  'a frame and a rule under the headings': simple(TEN, looks('', 'fo:border-bottom="1pt solid #000000"')),
  'no rules': simple(TEN, looks('')),
  'the grid printed': simple(TEN, looks(''), { page: 'style:print="charts drawings grid objects zero-values"' }),
  'merged headings': {
    ...GROUPED,
    fods: book({
      looks: { ...looks(RULE), m: { cell: RULE, align: 'center', text: BOLD } },
      widths: [0.6, 0.5, 1, 1, 1.1, 0.8, 3],
      sheets: [groupedRows(GROUPED)],
    }),
  },
  'merged headings without rules': {
    ...GROUPED,
    fods: book({
      looks: { ...looks(''), m: { align: 'center', text: BOLD } },
      widths: [0.6, 0.5, 1, 1, 1.1, 0.8, 3],
      sheets: [groupedRows(GROUPED)],
    }),
  },
  'a page turned': { ...simple(TEN, looks(RULE)), turned: true },
  'several tables below one another': {
    ...TEN,
    fods: book({ looks: { ...looks(RULE), n: {} }, widths: WIDTHS, sheets: [SEVERAL] }),
  },
  'several tables without rules': {
    ...TEN,
    fods: book({ looks: { ...looks(''), n: {} }, widths: WIDTHS, sheets: [SEVERAL] }),
  },
  'several sheets': {
    ...TEN,
    fods: book({
      looks: { ...looks(RULE), n: {} },
      widths: WIDTHS,
      sheets: [SEVERAL.slice(0, 5), plainRows(TEN), SEVERAL.slice(-4)],
    }),
  },
  'over pages, headings repeated': simple(LONG, looks(RULE), { repeated: 1 }),
  'over pages, headings once': simple(LONG, looks(RULE)),
  'over pages without rules': simple(LONG, looks(''), { repeated: 1 }),
  'columns on a page of their own': {
    ...TEN,
    fods: book({ looks: looks(RULE), widths: [0.6, 0.5, 4, 2, 2, 2, 3], sheets: [plainRows(TEN)] }),
  },
  'columns on a page of their own, over pages': simple(LONG, looks(RULE), {
    repeated: 1,
    widths: [0.6, 0.5, 4, 2, 2, 2, 3],
  }),
  'columns on a page of their own, without rules': {
    asked: 10,
    ...TEN,
    fods: book({ looks: looks(''), widths: [0.6, 0.5, 4, 2, 2, 2, 3], sheets: [plainRows(TEN)] }),
  },
  'remarks on a page of their own': {
    ...TEN,
    fods: book({ looks: looks(RULE), widths: [0.6, 0.5, 3, 2, 2, 1.5, 3], sheets: [plainRows(TEN)] }),
  },
  'a sheet with title block and notes': {
    ...TEN,
    fods: book({
      looks: { ...looks(RULE), n: {}, t: { cell: RULE, align: 'center', text: BOLD } },
      widths: WIDTHS,
      sheets: [PLAN_ROWS],
    }),
  },
  'a sheet with title block and notes, no rules': {
    ...TEN,
    fods: book({
      looks: { ...looks(''), n: {}, t: { align: 'center', text: BOLD } },
      widths: WIDTHS,
      sheets: [PLAN_ROWS],
    }),
  },
  'fractions high and low': {
    ...TEN,
    fods: book({ looks: looks(RULE), widths: WIDTHS, sheets: [fractions(TEN)] }),
  },
  'fractions high and low without rules': {
    ...TEN,
    fods: book({ looks: looks(''), widths: WIDTHS, sheets: [fractions(TEN)] }),
  },
  'small type': simple(TEN, looks(RULE, RULE, 'fo:font-size="4pt"'), {
    widths: [0.3, 0.25, 1, 0.5, 0.4, 0.35, 1.4],
  }),
  'a wide sheet fitted to one page': simple(TEN, looks(RULE), {
    page: 'style:scale-to-X="1" style:scale-to-Y="1"',
    widths: WIDTHS.map((width) => 2 * width),
  }),
  'wrapped cells': simple(TEN, looks(`${RULE} ${wrap}`), { widths: WRAPPED }),
  'wrapped cells, middle': simple(TEN, looks(`${RULE} ${wrap} style:vertical-align="middle"`), { widths: WRAPPED }),
  'wrapped cells without rules': {
    asked: 1,
    ...simple(TEN, looks(`${wrap} style:vertical-align="top"`), { widths: WRAPPED }),
  },
  'wrapped cells without rules, bottom': { asked: 6, ...simple(TEN, looks(wrap), { widths: WRAPPED }) },
  'right-aligned cells without rules': simple(TEN, looks('', '', '', 'end')),
  'centered cells': simple(TEN, looks(RULE, RULE, '', 'center')),
  'texts cut off or running over': {
    asked: 2,
    ...simple(TEN, looks(RULE), { widths: [0.6, 0.5, 1.2, 1.1, 0.9, 0.8, 1] }),
  },
  'texts cut off or running over without rules': {
    asked: 10,
    ...simple(TEN, looks(''), {
      widths: [0.6, 0.5, 1.2, 1.1, 0.9, 0.8, 1],
    }),
  },
  'headings turned upright': simple(TEN, {
    d: { cell: RULE },
    h: { cell: `${RULE} style:rotation-angle="90"`, text: BOLD },
  }),
  'a table below its headings, blank rows between': {
    ...TEN,
    fods: book({
      looks: { ...looks(''), n: {} },
      widths: WIDTHS,
      sheets: [[cells(HEADINGS, 'h'), ...TEN.rows.flatMap((row) => [NOTHING, cells(row)])]],
    }),
  },
};
