import type { Random } from '../../random';

/** What a column of a made quote holds. */
export type Column =
  | 'line number'
  | 'mark'
  | 'quantity'
  | 'unit of measure'
  | 'description'
  | 'head'
  | 'span'
  | 'rise'
  | 'radius'
  | 'casing width'
  | 'thickness'
  | 'length each'
  | 'length of all'
  | 'leg'
  | 'list price'
  | 'discount of the line'
  | 'rate per foot'
  | 'unit price'
  | 'extension'
  | 'remarks';

/** How lengths are written. */
export type Written = 'fraction' | 'dash' | 'inch mark' | 'decimal' | 'feet' | 'feet-inches' | 'mm' | 'cm';
/** What a description says. */
type Says = 'casing' | 'size' | 'length' | 'mark' | 'radius' | 'legs';

export interface Layout {
  readonly name: string;
  readonly columns: readonly Column[];
  readonly written: readonly Written[];
  readonly says?: readonly Says[];
  /** A note above the headings. */
  readonly note?: string;
  readonly extra?: 'floors' | 'ranges' | 'pairs' | 'alternates' | 'two rows' | 'no headings' | 'shuffled' | 'legs';
}

const INCHES = ['fraction', 'dash', 'inch mark', 'decimal'] as const;
const PRICED = ['unit price', 'extension'] as const;

export const LAYOUTS: readonly Layout[] = [
  {
    name: 'sizes in columns',
    columns: ['mark', 'quantity', 'head', 'span', 'rise', 'length each', ...PRICED],
    written: INCHES,
  },
  {
    name: 'line numbers',
    columns: ['line number', 'mark', 'description', 'quantity', 'length each', ...PRICED],
    written: INCHES,
    says: ['casing'],
  },
  {
    name: 'size in the description',
    columns: ['mark', 'quantity', 'description', 'length each', ...PRICED],
    written: INCHES,
    says: ['size'],
  },
  {
    name: 'length in the description',
    columns: ['mark', 'quantity', 'description', ...PRICED],
    written: ['fraction', 'dash'],
    says: ['length'],
  },
  {
    name: 'mark in the description',
    columns: ['quantity', 'description', 'length each', ...PRICED],
    written: INCHES,
    says: ['mark'],
  },
  {
    name: 'radius in the description',
    columns: ['mark', 'quantity', 'description', 'length each', ...PRICED],
    written: INCHES,
    says: ['radius'],
  },
  {
    name: 'rate, length each and of all',
    columns: ['mark', 'quantity', 'length each', 'length of all', 'rate per foot', 'extension'],
    written: ['feet', 'inch mark'],
  },
  {
    name: 'rate, length each',
    columns: ['mark', 'quantity', 'length each', 'rate per foot', 'extension'],
    written: ['feet'],
  },
  {
    name: 'rate, length of all',
    columns: ['mark', 'quantity', 'length of all', 'rate per foot', 'extension'],
    written: ['feet'],
  },
  {
    name: 'length each and of all, unit price',
    columns: ['mark', 'quantity', 'length each', 'length of all', ...PRICED],
    written: ['feet', 'fraction'],
  },
  {
    name: 'millimeters, noted',
    columns: ['mark', 'quantity', 'span', 'rise', 'casing width', 'length each', ...PRICED],
    written: ['mm'],
    note: 'All dimensions in mm',
  },
  {
    name: 'millimeters, not noted',
    columns: ['mark', 'quantity', 'span', 'rise', 'length each', ...PRICED],
    written: ['mm'],
  },
  {
    name: 'centimeters, noted',
    columns: ['mark', 'quantity', 'span', 'length each', ...PRICED],
    written: ['cm'],
    note: 'Sizes in centimeters',
  },
  {
    name: 'feet and inches',
    columns: ['mark', 'quantity', 'description', 'length each', ...PRICED],
    written: ['feet-inches'],
    says: ['casing'],
  },
  {
    name: 'list price and discount',
    columns: ['mark', 'quantity', 'length each', 'list price', 'discount of the line', ...PRICED],
    written: INCHES,
  },
  {
    name: 'radius and casing width',
    columns: ['mark', 'quantity', 'head', 'radius', 'span', 'casing width', 'length each', ...PRICED],
    written: INCHES,
  },
  {
    name: 'thickness and casing width',
    columns: ['mark', 'quantity', 'casing width', 'thickness', 'length each', ...PRICED, 'remarks'],
    written: INCHES,
  },
  {
    name: 'priced by the pair',
    columns: ['mark', 'quantity', 'unit of measure', 'description', ...PRICED],
    written: ['fraction'],
    says: ['length'],
    extra: 'pairs',
  },
  {
    name: 'by floors',
    columns: ['mark', 'quantity', 'description', 'length each', ...PRICED],
    written: INCHES,
    says: ['casing'],
    extra: 'floors',
  },
  {
    name: 'headings of two rows',
    columns: ['mark', 'quantity', 'span', 'rise', 'casing width', 'length each', ...PRICED],
    written: INCHES,
    extra: 'two rows',
  },
  {
    name: 'columns in any order',
    columns: ['mark', 'quantity', 'span', 'rise', 'length each', ...PRICED],
    written: INCHES,
    extra: 'shuffled',
  },
  {
    name: 'several marks on a line',
    columns: ['mark', 'quantity', 'description', 'length each', ...PRICED],
    written: INCHES,
    says: ['size'],
    extra: 'ranges',
  },
  {
    name: 'alternates',
    columns: ['mark', 'quantity', 'description', 'length each', ...PRICED],
    written: INCHES,
    says: ['size'],
    extra: 'alternates',
  },
  {
    name: 'no headings',
    columns: ['mark', 'quantity', 'description', 'length each', ...PRICED],
    written: ['fraction', 'inch mark'],
    says: ['casing'],
    extra: 'no headings',
  },
  {
    name: 'head and legs',
    columns: ['mark', 'quantity', 'description', 'length each', 'leg', ...PRICED],
    written: INCHES,
    says: ['legs'],
    extra: 'legs',
  },
];

const SIXTEENTHS = 16;

/** 43 3/8 of 43.36 */
export function fraction(inches: number, between: string): string {
  const all = Math.round(inches * SIXTEENTHS);
  const whole = Math.floor(all / SIXTEENTHS);
  let [above, below] = [all % SIXTEENTHS, SIXTEENTHS];
  if (above === 0) return String(whole);
  while (above % 2 === 0) [above, below] = [above / 2, below / 2];
  return whole === 0 ? `${above}/${below}` : `${whole}${between}${above}/${below}`;
}

/** A length as the quote writes it, and the figure in inches that stands there. */
export function write(inches: number, written: Written): { readonly cell: string | number; readonly inches: number } {
  const sixteenths = Math.round(inches * SIXTEENTHS) / SIXTEENTHS;
  switch (written) {
    case 'fraction':
      return { cell: fraction(inches, ' '), inches: sixteenths };
    case 'dash':
      return { cell: fraction(inches, '-'), inches: sixteenths };
    case 'inch mark':
      return { cell: `${fraction(inches, ' ')}"`, inches: sixteenths };
    case 'decimal':
      return { cell: inches.toFixed(2), inches: Number(inches.toFixed(2)) };
    case 'feet':
      return { cell: (inches / 12).toFixed(2), inches: 12 * Number((inches / 12).toFixed(2)) };
    case 'feet-inches': {
      const feet = Math.floor(sixteenths / 12);
      return { cell: `${feet}'-${fraction(sixteenths - 12 * feet, ' ')}"`, inches: sixteenths };
    }
    case 'mm':
      return { cell: Math.round(inches * 25.4), inches: Math.round(inches * 25.4) / 25.4 };
    case 'cm':
      return { cell: (inches * 2.54).toFixed(1), inches: Number((inches * 2.54).toFixed(1)) / 2.54 };
  }
}

/** A heading that names a unit stands only over figures in it. */
export function headingFits(column: Column, written: Written, shown: string): boolean {
  if (/\(in\)/.test(shown)) return !['mm', 'cm', 'feet', 'feet-inches'].includes(written);
  if (column === 'length each' && /feet/i.test(shown)) return written === 'feet';
  if (column === 'length of all') return (written === 'feet') === !/^total length$/i.test(shown);
  return true;
}

export function pickWritten({ written }: Layout, random: Random): Written {
  return random.pick(written);
}
