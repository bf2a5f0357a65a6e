import { ok, type Result } from '../../result';
import { walkXml } from '../../schedule/xml';
import { isTrue, unescapeText } from '../../schedule/xlsxParts';
import { BORDER_SIDES, type BorderSide, type Cell, type OwnLook } from '../sheet';
import { BUILT_IN, styleNamed } from './looks';

/** What a cell's number in the file (`s`) says of its look. */
export type ReadLook = Pick<Cell, 'style' | 'format' | 'wrap' | 'align' | 'own'>;

type Attributes = Readonly<Record<string, string>>;

interface Font {
  bold: boolean;
  italic: boolean;
  underline: boolean;
  strike: boolean;
  size: number | undefined;
  font: string | undefined;
  color: string | undefined;
}

type Borders = Partial<Record<BorderSide, { line: string; color: string }>>;

/** One `xf`: places in the lists of fonts, fills and borders, and how the cell is aligned. */
interface Xf {
  readonly format: number;
  readonly font: number;
  readonly fill: number;
  readonly border: number;
  readonly style: number;
  horizontal: string | undefined;
  vertical: string | undefined;
  indent: number;
  wrap: boolean;
  locked: boolean;
}

/** More built-in formats than we write (ECMA-376 part 1, 18.8.30), for files that other programs have saved. */
const MORE_BUILT_IN: Readonly<Record<number, string>> = {
  3: '#,##0',
  9: '0%',
  10: '0.00%',
  11: '0.00E+00',
  12: '# ?/?',
  14: 'm/d/yyyy',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm AM/PM',
  19: 'h:mm:ss AM/PM',
  20: 'h:mm',
  21: 'h:mm:ss',
  22: 'm/d/yyyy h:mm',
  37: '#,##0_);(#,##0)',
  39: '#,##0.00_);(#,##0.00)',
};
const BY_NUMBER = new Map<number, string>([
  ...Object.entries(MORE_BUILT_IN).map(([number, code]) => [Number(number), code] as const),
  ...Object.entries(BUILT_IN).map(([code, number]) => [number, code] as const),
]);

/** The looks of a file's cells by their number; those that a named style of ours stands behind under its name. */
export function readLooks(xml: string): Result<ReadLook[]> {
  const reader = new LooksReader();
  return walkXml(xml, 'styles', reader) ?? ok(reader.looks());
}

class LooksReader {
  private readonly formats = new Map<number, string>();
  private readonly fonts: Font[] = [];
  private readonly fills: string[] = [];
  private readonly borders: Borders[] = [];
  private readonly styles: Xf[] = [];
  private readonly cells: Xf[] = [];
  private readonly names = new Map<number, string>();
  /** Which list is being read: other lists hold fonts and fills, too, for tables and conditions. */
  private list = '';
  private side: BorderSide | null = null;

  open(name: string, attributes: () => Attributes): void {
    if (LISTS.includes(name)) this.list = name;
    else if (name === 'numFmt' && this.list === 'numFmts') {
      const { numFmtId, formatCode = '' } = attributes();
      this.formats.set(Number(numFmtId), unescapeText(formatCode));
    } else if (this.list === 'fonts') this.openFont(name, attributes());
    else if (this.list === 'fills') this.openFill(name, attributes());
    else if (this.list === 'borders') this.openBorder(name, attributes());
    else if (this.list === 'cellStyleXfs') this.openXf(this.styles, name, attributes());
    else if (this.list === 'cellXfs') this.openXf(this.cells, name, attributes());
    else if (name === 'cellStyle') {
      const { name: title = '', xfId } = attributes();
      this.names.set(Number(xfId), title);
    }
  }

  close(name: string): void {
    if (name === this.list) this.list = '';
    if (name === this.side) this.side = null;
  }

  private openFont(name: string, attributes: Attributes): void {
    if (name === 'font') {
      const none = { size: undefined, font: undefined, color: undefined };
      this.fonts.push({ bold: false, italic: false, underline: false, strike: false, ...none });
    }
    const font = this.fonts.at(-1);
    if (!font) return;
    const on = attributes['val'] === undefined || isTrue(attributes['val']);
    if (name === 'b') font.bold = on;
    else if (name === 'i') font.italic = on;
    else if (name === 'strike') font.strike = on;
    else if (name === 'u') font.underline = attributes['val'] !== 'none';
    else if (name === 'sz') font.size = Number(attributes['val']);
    else if (name === 'name') font.font = unescapeText(attributes['val'] ?? '');
    else if (name === 'color') font.color = colorOf(attributes);
  }

  private openFill(name: string, attributes: Attributes): void {
    if (name === 'fill') this.fills.push('none');
    else if (name === 'fgColor') this.fills[this.fills.length - 1] = colorOf(attributes) ?? 'none';
  }

  private openBorder(name: string, attributes: Attributes): void {
    if (name === 'border') this.borders.push({});
    const border = this.borders.at(-1);
    if (!border) return;
    const side = BORDER_SIDES.find((one) => one === name);
    if (side !== undefined) {
      this.side = side;
      const { style } = attributes;
      if (style !== undefined && style !== 'none') border[side] = { line: style, color: '#000000' };
    } else if (name === 'color' && this.side !== null) {
      const line = border[this.side];
      if (line) line.color = colorOf(attributes) ?? '#000000';
    }
  }

  private openXf(list: Xf[], name: string, attributes: Attributes): void {
    if (name === 'xf') {
      const number = (key: string) => Number(attributes[key] ?? 0);
      list.push({
        format: number('numFmtId'),
        font: number('fontId'),
        fill: number('fillId'),
        border: number('borderId'),
        style: number('xfId'),
        horizontal: undefined,
        vertical: undefined,
        indent: 0,
        wrap: false,
        locked: true,
      });
    }
    const xf = list.at(-1);
    if (!xf) return;
    if (name === 'alignment') {
      xf.horizontal = attributes['horizontal'];
      xf.vertical = attributes['vertical'];
      xf.indent = Number(attributes['indent'] ?? 0);
      xf.wrap = isTrue(attributes['wrapText']);
    } else if (name === 'protection') xf.locked = attributes['locked'] === undefined || isTrue(attributes['locked']);
  }

  looks(): ReadLook[] {
    return this.cells.map((xf) => this.look(xf));
  }

  private look(xf: Xf): ReadLook {
    const named = this.styles[xf.style];
    // A cell that is not locked is an input, also in a file from before styles had names.
    const style = styleNamed(this.names.get(xf.style) ?? '') ?? (xf.locked ? undefined : 'input');
    const own =
      named && (style !== 'input' || styleNamed(this.names.get(xf.style) ?? '')) ? this.changes(xf, named) : {};
    const format = this.formats.get(xf.format) ?? BY_NUMBER.get(xf.format) ?? 'General';
    const align = xf.horizontal === 'right' ? 'right' : undefined;
    return {
      ...(style === undefined ? {} : { style }),
      ...(format === 'General' ? {} : { format }),
      ...(xf.wrap ? { wrap: true } : {}),
      ...(align ? { align } : {}),
      ...(Object.keys(own).length > 0 ? { own } : {}),
    };
  }

  /** What the cell has otherwise than its style. */
  private changes(xf: Xf, named: Xf): OwnLook {
    const font = this.fonts[xf.font];
    const base = this.fonts[named.font];
    const own: Record<string, unknown> = {};
    if (font && base && font !== base) {
      for (const key of ['bold', 'italic', 'underline', 'strike', 'size', 'font', 'color'] as const)
        if (font[key] !== base[key] && font[key] !== undefined) own[key] = font[key];
    }
    const fill = this.fills[xf.fill] ?? 'none';
    if (fill !== (this.fills[named.fill] ?? 'none')) own['fill'] = fill;
    const borders = changedSides(this.borders[xf.border] ?? {}, this.borders[named.border] ?? {});
    if (Object.keys(borders).length > 0) own['borders'] = borders;
    if (xf.horizontal === 'center' || (xf.horizontal === 'left' && xf.indent === 0)) own['horizontal'] = xf.horizontal;
    const vertical = xf.vertical ?? 'bottom';
    // Ours stand at the top unless their style says otherwise, and other programs' at the bottom.
    if (vertical !== (named.vertical ?? 'bottom') && vertical !== 'top' && ['center', 'bottom'].includes(vertical))
      own['vertical'] = vertical;
    return own as OwnLook;
  }
}

const LISTS = [
  'numFmts',
  'fonts',
  'fills',
  'borders',
  'cellStyleXfs',
  'cellXfs',
  'cellStyles',
  'dxfs',
  'tableStyles',
  'colors',
];

function changedSides(now: Borders, before: Borders): Borders {
  const changed: Borders = {};
  for (const side of BORDER_SIDES) {
    const line = now[side];
    if (line?.line === before[side]?.line && line?.color === before[side]?.color) continue;
    changed[side] = line ?? { line: 'none', color: '#000000' };
  }
  return changed;
}

/** `#rrggbb`; a color of the program's theme or palette is not looked up, and counts as none. */
function colorOf({ rgb }: Attributes): string | undefined {
  return rgb !== undefined && /^[0-9a-f]{8}$/i.test(rgb) ? `#${rgb.slice(2).toUpperCase()}` : undefined;
}
