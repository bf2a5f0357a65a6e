import type { IBorderData, IBorderStyleData, IStyleData, Nullable } from '@univerjs/core';
import type { BorderSide, Cell, CellStyle, OwnLook } from '../../src/workbook/sheet';

// Each look differs from the others by border, weight or slant as well as by color.
const THIN = 1;
const DOTTED = 3;
const MEDIUM = 8;
const LEFT = 1;
const CENTER = 2;
const RIGHT = 3;
const MIDDLE = 2;
const BOTTOM = 3;
const WRAP = 3;

/** The kinds of lines as a workbook file names them, in the grid's own order. */
const LINES = [
  ...['none', 'thin', 'hair', 'dotted', 'dashed', 'dashDot', 'dashDotDot', 'double', 'medium', 'mediumDashed'],
  ...['mediumDashDot', 'mediumDashDotDot', 'slantDashDot', 'thick'],
];
const SIDES: readonly (readonly [BorderSide, 'l' | 'r' | 't' | 'b'])[] = [
  ['left', 'l'],
  ['right', 'r'],
  ['top', 't'],
  ['bottom', 'b'],
];

const PADDING = { t: 2, r: 5, b: 2, l: 5 };
const USUAL_SIZE = 11;

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
  // Letters alone, as in a file: a cell that has nothing to say looks like one.
  attention: { bl: 1, cl: { rgb: '#8a1c12' } },
  text: {},
  note: { it: 1, fs: 9, cl: { rgb: SOFT_INK } },
};

/** The grid's style for a cell, made once for each combination so that cells share it. */
export class CellStyles {
  private readonly made = new Map<string, string>();

  constructor(private readonly addStyle: (style: IStyleData) => string) {}

  of(cell: Cell): string {
    const style = cell.style ?? 'text';
    const side = sideOf(cell);
    const own = cell.own === undefined ? '' : JSON.stringify(cell.own);
    const key = `${style}|${side}|${cell.wrap ? 'wrap' : ''}|${cell.format ?? ''}|${own}`;
    const known = this.made.get(key);
    if (known !== undefined) return known;
    const id = this.addStyle({
      ...LOOKS[style],
      ht: side,
      vt: MIDDLE,
      pd: PADDING,
      ...(cell.wrap ? { tb: WRAP } : {}),
      ...(cell.format ? { n: { pattern: cell.format } } : {}),
      ...(cell.own ? ownStyle(cell.own, LOOKS[style].bd ?? {}) : {}),
    });
    this.made.set(key, id);
    return id;
  }
}

/** Numbers stand right also where a formula gives them. */
function sideOf({ value, align }: Pick<Cell, 'value' | 'align'>): number {
  return typeof value === 'number' || align === 'right' ? RIGHT : LEFT;
}

const HORIZONTAL = { left: LEFT, center: CENTER, right: RIGHT } as const;
const VERTICAL = { top: 1, center: MIDDLE, bottom: BOTTOM } as const;

function ownStyle(own: OwnLook, named: IBorderData): IStyleData {
  const flag = (on: boolean) => (on ? 1 : 0);
  return {
    ...(own.bold === undefined ? {} : { bl: flag(own.bold) }),
    ...(own.italic === undefined ? {} : { it: flag(own.italic) }),
    ...(own.underline === undefined ? {} : { ul: { s: flag(own.underline) } }),
    ...(own.strike === undefined ? {} : { st: { s: flag(own.strike) } }),
    ...(own.size === undefined ? {} : { fs: own.size }),
    ...(own.font === undefined ? {} : { ff: own.font }),
    ...(own.color === undefined ? {} : { cl: { rgb: own.color } }),
    ...(own.fill === undefined ? {} : { bg: own.fill === 'none' ? null : { rgb: own.fill } }),
    ...(own.horizontal === undefined ? {} : { ht: HORIZONTAL[own.horizontal] }),
    ...(own.vertical === undefined ? {} : { vt: VERTICAL[own.vertical] }),
    ...(own.borders === undefined ? {} : { bd: { ...named, ...ownBorders(own.borders) } }),
  };
}

function ownBorders(borders: NonNullable<OwnLook['borders']>): IBorderData {
  const sides: IBorderData = {};
  for (const [side, key] of SIDES) {
    const line = borders[side];
    if (line === undefined) continue;
    sides[key] = line.line === 'none' ? null : { s: Math.max(1, LINES.indexOf(line.line)), cl: { rgb: line.color } };
  }
  return sides;
}

type Look = Pick<Cell, 'style' | 'format' | 'wrap' | 'align' | 'own'>;

/** The look of a cell as its sheet would give it: one of our styles, and what a person changed of it. */
export function lookOfStyle(style: IStyleData, value: Cell['value'], input: boolean): Look {
  const name = input ? 'input' : styleLike(style);
  const own = changesOf(style, LOOKS[name], value);
  const format = style.n?.pattern;
  const right = style.ht === RIGHT && typeof value !== 'number';
  return {
    ...(name === 'text' ? {} : { style: name }),
    ...(format === undefined || format === 'General' ? {} : { format }),
    ...(style.tb === WRAP ? { wrap: true } : {}),
    ...(right ? { align: 'right' } : {}),
    ...(Object.keys(own).length > 0 ? { own } : {}),
  };
}

const SIGNS = ['bl', 'it', 'fs', 'bg', 'cl', 'bd'] as const;

/** The style of ours that has the most in common with a cell's, all of it; text where none has. */
function styleLike(style: IStyleData): CellStyle {
  let best: CellStyle = 'text';
  let most = 0;
  for (const [name, look] of Object.entries(LOOKS) as [CellStyle, IStyleData][]) {
    const signs = SIGNS.filter((sign) => look[sign] !== undefined);
    if (signs.length <= most || !signs.every((sign) => same(style[sign], look[sign]))) continue;
    best = name;
    most = signs.length;
  }
  return best;
}

function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function changesOf(style: IStyleData, named: IStyleData, value: Cell['value']): OwnLook {
  const own: Record<string, unknown> = {};
  const flags = { bold: 'bl', italic: 'it' } as const;
  for (const [name, key] of Object.entries(flags) as [string, 'bl' | 'it'][])
    if ((style[key] === 1) !== (named[key] === 1)) own[name] = style[key] === 1;
  if (style.ul?.s === 1) own['underline'] = true;
  if (style.st?.s === 1) own['strike'] = true;
  if (style.fs !== undefined && style.fs !== (named.fs ?? USUAL_SIZE)) own['size'] = style.fs;
  if (style.ff != null && style.ff !== named.ff) own['font'] = style.ff;
  const color = colorOf(style.cl?.rgb);
  if (color !== undefined && color !== colorOf(named.cl?.rgb)) own['color'] = color;
  const fill = colorOf(style.bg?.rgb);
  if (fill !== colorOf(named.bg?.rgb)) own['fill'] = fill ?? 'none';
  if (style.ht === CENTER) own['horizontal'] = 'center';
  else if (style.ht === LEFT && typeof value === 'number') own['horizontal'] = 'left';
  if (style.vt === BOTTOM) own['vertical'] = 'bottom';
  const borders = changedBorders(style.bd ?? {}, named.bd ?? {});
  if (Object.keys(borders).length > 0) own['borders'] = borders;
  return own as OwnLook;
}

function changedBorders(now: IBorderData, named: IBorderData): NonNullable<OwnLook['borders']> {
  const changed: Partial<Record<BorderSide, { line: string; color: string }>> = {};
  const lineOf = (side: Nullable<IBorderStyleData>) => ({
    line: LINES[(side as IBorderStyleData | null)?.s ?? 0] ?? 'thin',
    color: colorOf(side?.cl.rgb) ?? '#000000',
  });
  for (const [side, key] of SIDES) {
    if (!same(lineOf(now[key]), lineOf(named[key]))) changed[side] = lineOf(now[key]);
  }
  return changed;
}

/** `#RRGGBB` of the ways in which the grid notes a color. */
function colorOf(color: Nullable<string>): string | undefined {
  if (color == null) return undefined;
  const hex = /^#?([0-9a-f]{6})$/i.exec(color)?.[1];
  if (hex !== undefined) return `#${hex.toUpperCase()}`;
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(color);
  if (short) return `#${short[1]}${short[1]}${short[2]}${short[2]}${short[3]}${short[3]}`.toUpperCase();
  const parts = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(color);
  if (!parts) return undefined;
  return `#${parts
    .slice(1)
    .map((part) => Number(part).toString(16).padStart(2, '0'))
    .join('')
    .toUpperCase()}`;
}
