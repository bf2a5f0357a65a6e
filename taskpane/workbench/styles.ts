import type { IBorderData, IStyleData } from '@univerjs/core';
import type { Cell, CellStyle } from '../../src/workbook/sheet';

// Each look differs from the others by border, weight or slant as well as by color.
const THIN = 1;
const DOTTED = 3;
const MEDIUM = 8;
const LEFT = 1;
const RIGHT = 3;
const MIDDLE = 2;
const WRAP = 3;

const PADDING = { t: 2, r: 5, b: 2, l: 5 };

const INK = '#1c2833';
const SOFT_INK = '#4b5a67';

function box(style: number, color: string): IBorderData {
  const side = { s: style, cl: { rgb: color } };
  return { t: side, r: side, b: side, l: side };
}

const LOOKS: Readonly<Record<CellStyle, IStyleData>> = {
  title: { bl: 1, fs: 15, cl: { rgb: INK } },
  heading: { bl: 1, bg: { rgb: '#e4e9ed' }, cl: { rgb: INK }, bd: { b: { s: MEDIUM, cl: { rgb: SOFT_INK } } } },
  unit: { it: 1, fs: 9, bg: { rgb: '#f2f4f6' }, cl: { rgb: SOFT_INK } },
  group: { bl: 1, bg: { rgb: '#d3dbe1' }, cl: { rgb: INK }, bd: { t: { s: THIN, cl: { rgb: SOFT_INK } } } },
  input: { bg: { rgb: '#fff7db' }, bd: box(THIN, '#b08d2e') },
  figure: {},
  fixed: { it: 1, bg: { rgb: '#f2f4f6' }, bd: box(DOTTED, '#8794a0') },
  total: { bl: 1, bd: { t: { s: MEDIUM, cl: { rgb: INK } } } },
  attention: {
    bl: 1,
    bg: { rgb: '#fdeeea' },
    cl: { rgb: '#8a1c12' },
    bd: { l: { s: MEDIUM, cl: { rgb: '#8a1c12' } } },
  },
  text: {},
  note: { it: 1, fs: 9, cl: { rgb: SOFT_INK } },
};

/** The grid's style for a cell, made once for each combination so that cells share it. */
export class CellStyles {
  private readonly made = new Map<string, string>();

  constructor(private readonly addStyle: (style: IStyleData) => string) {}

  of(cell: Cell): string {
    const style = cell.style ?? 'text';
    // Numbers stand right also where a formula gives them.
    const side = typeof cell.value === 'number' || cell.align === 'right' ? RIGHT : LEFT;
    const key = `${style}|${side}|${cell.wrap ? 'wrap' : ''}|${cell.format ?? ''}`;
    const known = this.made.get(key);
    if (known !== undefined) return known;
    const id = this.addStyle({
      ...LOOKS[style],
      ht: side,
      vt: MIDDLE,
      pd: PADDING,
      ...(cell.wrap ? { tb: WRAP } : {}),
      ...(cell.format ? { n: { pattern: cell.format } } : {}),
    });
    this.made.set(key, id);
    return id;
  }
}
