import { readSchedule, type CellValue, type Question, type Reading } from '../src/schedule';
import { defaultStandards } from '../src/standards';

/** What lists say, and what it is read as: worked out by the reader itself, so that the page can't say anything else. */

const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise'];
const ROW: readonly CellValue[] = ['W1', 1, 'segmental', 36, 6];

interface Group {
  readonly title: string;
  /** The heading that the texts stand under; one that is not among the headings of the list is a column more. */
  readonly heading: string;
  readonly texts: readonly CellValue[];
  /** The other cells of the row, where they are not those of every list here. */
  readonly row?: Readonly<Record<string, CellValue>>;
  /** What it is read as; null: that is what is asked. */
  readonly shows: (reading: Reading) => string | null;
}

const first = ({ openings }: Reading) => openings[0];
const length = (value: number | null | undefined) => (value == null ? null : String(Number(value.toFixed(4))));

const GROUPS: readonly Group[] = [
  {
    title: 'Figures, under Width',
    heading: 'Width',
    texts: [
      '36',
      '36 1/2',
      '36½"',
      `3'-0"`,
      '3-6',
      '36 (VIF)',
      '36 nom.',
      '~36',
      'Ø36',
      '914 mm',
      '1.200 mm',
      '1 000 mm',
      '914',
      'TBD',
    ],
    row: { Rise: '6"' },
    shows: (reading) => length(first(reading)?.span),
  },
  {
    title: 'Sizes, under Size',
    heading: 'Size',
    texts: ['3/0 6/8', '3068', '3-2868', '30 x 60', '30 x 60 x 6 rise', '450 x 900 mm', 'PR 2/8 8/0'],
    row: { Width: null, Rise: '6"' },
    shows: (reading) => length(first(reading)?.span),
  },
  {
    title: 'Heads',
    heading: 'Head',
    texts: [
      '1/2R',
      'HRND',
      'H.R.',
      'half round top w/ legs',
      'Rad. top',
      'Seg.',
      'eyebrow on legs',
      '1/4 round LH',
      'Gothic',
      'ogee',
      'raked arch',
      'segmental?',
      'type 7',
    ],
    row: { Rise: null },
    shows: (reading) => first(reading)?.head ?? null,
  },
  {
    title: 'Marks',
    heading: 'Mark',
    texts: ['W1', 'W2-W5', 'W6, W7', 'W1 (3)', 'W13 x4', 'W8*', 'W5 (VOID)'],
    shows: (reading) => {
      const { mark, quantity = null } = first(reading) ?? {};
      return quantity === null ? null : `${mark}, ${quantity} of it`;
    },
  },
  {
    title: 'Quantities',
    heading: 'Qty',
    texts: ['2', '2 ea', '(2)', '1,5', '0', 'pair', null],
    shows: (reading) => length(first(reading)?.quantity),
  },
  {
    title: 'Casings, under Trim',
    heading: 'Trim',
    texts: ['3 1/2', '3/4 x 3 1/2', '4 1/4 poplar', '90', 'Colonial'],
    shows: (reading) => length(first(reading)?.face) ?? first(reading)?.profile ?? null,
  },
  {
    title: 'Remarks',
    heading: 'Remarks',
    texts: [
      'verify in field',
      'paint',
      'tempered',
      'both sides',
      '(2) req’d',
      'mulled pair',
      'existing to remain',
      'N.I.C.',
      'straight per addendum 2',
      'ALTERNATE NO. 1',
      'keystone',
      'no legs',
      '5 1/2" casing',
      'in red oak',
      'radius 30',
      'with jamb extensions',
      'curved in plan',
      'same as W9',
    ],
    shows: ({ questions }) => (questions.length > 0 ? null : 'as listed'),
  },
];

/** The page that `npm run docs` writes. */
export function asWrittenPage(): string {
  return `${[HEAD, ...GROUPS.map(section)].join('\n\n')}\n`;
}

const HEAD = `# As written, and as read

<!-- Written by npm run docs from what the reader gives; edit docs/asWrittenPage.ts. -->

One row of a list, \`W1\`, 1, segmental, 36 wide with a rise of 6, with one cell as it stands in the first column here. Lengths are in
inches. Where something is asked, the row is not priced until it is answered. See also [how a schedule is read](schedules.md).`;

function section({ title, heading, texts, row = {}, shows }: Group): string {
  const lines = texts.map((text) => {
    const isMore = !HEADINGS.includes(heading);
    const cells = HEADINGS.map((name, index) => (name === heading ? text : name in row ? row[name]! : ROW[index]!));
    const rows = [isMore ? [...HEADINGS, heading] : HEADINGS, isMore ? [...cells, text] : cells];
    const read = readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards());
    if (!read.ok) return `| ${shown(text)} | – | ${escaped(read.message)} |`;
    const { questions, openings } = read.value;
    const notes = openings.flatMap((one) => one.notes);
    const said = questions.length > 0 ? questions.map(asked).join(' ') : notes.join(' ');
    return `| ${shown(text)} | ${escaped(shows(read.value) ?? 'asked')} | ${escaped(said)} |`;
  });
  return [`## ${title}`, ['| as written | read as | said or asked |', '| --- | --- | --- |', ...lines].join('\n')].join(
    '\n\n',
  );
}

/** Longer lists of answers are shown as far as this. */
const MOST_CHOICES = 4;

function asked({ lead, text, choices }: Question): string {
  if (choices.length === 0) return lead ?? text;
  const more = choices.length > MOST_CHOICES ? ', …' : '';
  return `${lead ?? text} (${choices.slice(0, MOST_CHOICES).join(' / ')}${more})`;
}

function shown(text: CellValue): string {
  return text === null ? 'blank' : `\`${String(text)}\``;
}

function escaped(text: string): string {
  return text.replaceAll('|', '\\|');
}
