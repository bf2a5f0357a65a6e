import { random, type Random } from '../random';

/** A list as its author had it, and how it is to be set on the page. */
export interface Layout {
  readonly headings: readonly string[];
  /** A group over two columns: its text and the first of them. */
  readonly group: { readonly text: string; readonly column: number } | null;
  readonly rows: readonly (readonly string[])[];
  readonly rules: Rules;
  readonly font: 'Helvetica' | 'Times-Roman' | 'Courier';
  readonly size: number;
  /** Lines of a cell, as a part of the size. */
  readonly leading: number;
  /** Between the text of two rows, in ems. */
  readonly rowGap: number;
  readonly padding: number;
  readonly stand: 'top' | 'middle' | 'bottom';
  readonly aligns: readonly ('left' | 'right' | 'center')[];
  readonly widths: readonly number[];
  /** How the letters are put into the file. */
  readonly drawn: 'lines' | 'words' | 'letters';
  readonly shuffled: boolean;
  readonly fractions: 'plain' | 'characters' | 'stacked' | 'beside';
  readonly turn: 0 | 1 | 2 | 3;
  /** The page itself is turned, its text lies. */
  readonly rotate: 0 | 90 | 270;
  readonly rowsOnPage: number;
  readonly repeatsHeadings: boolean;
  readonly boldTwice: boolean;
  readonly title: boolean;
  readonly notes: 'none' | 'below' | 'beside';
}

export const RULES = ['ruled', 'boxes', 'dotted', 'rows', 'bands', 'none', 'white', 'columns', 'no sides'] as const;
export type Rules = (typeof RULES)[number];
/** Tables whose cells are closed by rules. */
export const RULED: ReadonlySet<Rules> = new Set<Rules>(['ruled', 'boxes', 'dotted', 'no sides']);

/** Layouts that the reader was not built with, so that the first meeting with them says something. */
export const KEPT_APART = {
  rules: ['columns', 'no sides', 'white'],
  font: 'Courier',
  turn: 3,
  drawn: 'letters',
} as const;

const HEADS = ['Segmental', 'Half round', 'Elliptical', 'Straight', 'Segmental', 'Half Round'];
const SPECIES = ['Poplar', 'White oak', 'Maple', 'Cherry', 'Red oak', 'Paint grade poplar'];
const REMARKS = [
  '',
  '',
  '',
  'verify in field',
  'see elevation 4',
  'match the existing casing at the stair',
  'north wall',
  'paint grade, two coats',
];

/** One layout of those that a seed stands for. `apart` draws from those kept apart, too. */
export function layoutOf(seed: number, apart = false): Layout {
  const from = random(seed * 7919 + 13);
  const chance = (part: number) => from.between(0, 1) < part;
  const columns = columnsOf(from, chance);
  const size = from.pick([5.5, 6, 7, 8, 8, 9, 10, 11]);
  const fractions = from.pick(['plain', 'plain', 'characters', 'stacked', 'beside'] as const);
  const count = from.whole(3, 24);
  const font = apart && chance(0.4) ? KEPT_APART.font : from.pick(['Helvetica', 'Times-Roman'] as const);
  const rows = Array.from({ length: count }, (_, row) => columns.map((column) => column.cell(from, row, fractions)));
  const wraps = chance(0.6);
  const padding = size * from.between(0.3, 0.8);
  const lengthOf = (text: string) => size * [...text].reduce((sum, letter) => sum + widthOf(letter, font), 0);
  const widths = columns.map((column, index) => {
    const texts = rows.map((row) => row[index]!);
    const full = Math.max(...texts.map(lengthOf), wraps ? 0 : lengthOf(column.heading)) + 2 * padding;
    const words = [...texts, column.heading].flatMap((text) => text.split(' '));
    const least = Math.max(...words.map(lengthOf)) + 2 * padding;
    return wraps && (column.wraps || chance(0.15))
      ? Math.max(least, full * from.between(0.35, 0.8))
      : Math.max(full, least);
  });
  const kept: readonly string[] = KEPT_APART.rules;
  const usual = RULES.filter((each) => !kept.includes(each));
  const rules = apart && chance(0.5) ? from.pick(RULES.filter((each) => kept.includes(each))) : from.pick(usual);
  const gap =
    rules === 'none' || rules === 'white' || rules === 'columns' ? from.between(0.3, 1.2) : from.between(0.2, 1);
  const grouped = columns.findIndex((column, index) => column.group && columns[index + 1]?.group);
  return {
    headings: columns.map(({ heading }) => heading),
    group: grouped >= 0 && chance(0.35) ? { text: 'OPENING', column: grouped } : null,
    rows,
    rules,
    font,
    size,
    leading: from.between(1.05, 1.3),
    rowGap: gap,
    padding,
    stand: from.pick(['top', 'middle', 'bottom'] as const),
    aligns: columns.map((column) =>
      column.figures ? from.pick(['left', 'right', 'center'] as const) : from.pick(['left', 'left', 'center'] as const),
    ),
    widths,
    drawn: apart && chance(0.3) ? 'letters' : from.pick(['lines', 'lines', 'words'] as const),
    shuffled: chance(0.3),
    fractions,
    turn: apart && chance(0.15) ? 3 : chance(0.08) ? 1 : 0,
    rotate: chance(0.06) ? from.pick([90, 270] as const) : 0,
    rowsOnPage: chance(0.15) ? Math.max(3, Math.ceil(count / 2)) : 1000,
    repeatsHeadings: chance(0.6),
    boldTwice: chance(0.1),
    title: chance(0.5),
    notes: from.pick(['none', 'none', 'below', 'beside'] as const),
  };
}

/** Never less than the letter's own width, in ems. */
function widthOf(letter: string, font: Layout['font']): number {
  if (font === 'Courier') return 0.6;
  if (/[MW@½¼¾]/.test(letter)) return 0.95;
  if (/[A-Zmw]/.test(letter)) return 0.79;
  return /[ .,'/il]/.test(letter) ? 0.36 : 0.56;
}

interface ColumnKind {
  readonly heading: string;
  readonly figures: boolean;
  readonly wraps: boolean;
  readonly group?: boolean;
  readonly cell: (from: Random, row: number, fractions: Layout['fractions']) => string;
}

function columnsOf(from: Random, chance: (part: number) => boolean): ColumnKind[] {
  const upper = chance(0.5);
  const heading = (...texts: string[]) => {
    const text = from.pick(texts);
    return upper ? text.toUpperCase() : text;
  };
  const prefix = from.pick(['W', 'A', 'W-', 'A-', '']);
  const start = from.pick([1, 1, 101, 201]);
  const mark: ColumnKind = {
    heading: heading('Mark', 'Tag', 'Window no.', 'Item'),
    figures: false,
    wraps: false,
    cell: (_, row) => `${prefix}${start + row}`,
  };
  const quantity: ColumnKind = {
    heading: heading('Qty', 'Quantity', 'Count'),
    figures: true,
    wraps: false,
    cell: (each) => String(each.whole(1, 12)),
  };
  const head: ColumnKind = {
    heading: heading('Head', 'Head type', 'Head shape', 'Shape'),
    figures: false,
    wraps: true,
    cell: (each) => each.pick(HEADS),
  };
  const feet = chance(0.2);
  const length = (low: number, high: number) => (each: Random, _row: number, style: Layout['fractions']) =>
    lengthText(each, low, high, style, feet);
  const width: ColumnKind = {
    heading: heading('Width', 'Opening width', 'Span'),
    figures: true,
    wraps: chance(0.3),
    group: true,
    cell: length(20, 72),
  };
  const rise: ColumnKind = {
    heading: heading('Rise', 'Arch rise'),
    figures: true,
    wraps: chance(0.3),
    group: true,
    cell: length(6, 9),
  };
  const face: ColumnKind = {
    heading: heading('Casing face', 'Casing width', 'Face'),
    figures: true,
    wraps: false,
    cell: (each) => each.pick(['3 1/2', '4 1/4', '5', '2 1/2']),
  };
  const species: ColumnKind = {
    heading: heading('Species', 'Wood'),
    figures: false,
    wraps: true,
    cell: (each) => each.pick(SPECIES),
  };
  const remarks: ColumnKind = {
    heading: heading('Remarks', 'Notes', 'Comments'),
    figures: false,
    wraps: true,
    cell: (each) => each.pick(REMARKS),
  };
  const optional = [face, species, remarks].filter(() => chance(0.6));
  return [mark, ...(chance(0.5) ? [quantity, head] : [head, quantity]), width, rise, ...optional];
}

const CHARACTERS: Readonly<Record<string, string>> = { '1/2': '½', '1/4': '¼', '3/4': '¾' };

function lengthText(from: Random, low: number, high: number, style: Layout['fractions'], feet: boolean): string {
  const whole = from.whole(low, high);
  const part =
    style === 'characters'
      ? from.pick(['', '1/2', '1/4', '3/4'])
      : from.pick(['', '', '1/2', '1/4', '3/8', '5/8', '7/16']);
  if (feet && whole >= 12) {
    const inches = `${whole % 12}${part === '' ? '' : ` ${part}`}`;
    return `${Math.floor(whole / 12)}'-${inches}"`;
  }
  const set = style === 'characters' && part !== '' ? CHARACTERS[part]! : part === '' ? '' : ` ${part}`;
  return `${whole}${set}`;
}
