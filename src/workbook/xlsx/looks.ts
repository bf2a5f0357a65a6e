import { TYPED_OVER_LOOK } from '../sharedFormulas';
import { BORDER_SIDES, type Cell, type CellStyle, type OwnLook } from '../sheet';
import { escapeText, MAIN, XML_HEAD } from './xml';

/** A look in full: of a style, or of a cell with what a person changed. */
type Look = OwnLook & { readonly wrap?: boolean };

const USUAL_FONT = 'Calibri';
const USUAL_SIZE = 11;
const SOFT = '#8A8F98';
const QUIET = '#555B63';
const TEAL = '#1F4E5F';
const thin = { line: 'thin', color: SOFT };
const hair = { line: 'hair', color: SOFT };

/** Color is never the only sign: inputs are boxed, what needs attention is bold, totals stand over a double line. */
const LOOKS: Readonly<Record<CellStyle, Look>> = {
  title: { bold: true, size: 16 },
  heading: { bold: true, fill: '#E9ECEF', borders: { bottom: thin }, vertical: 'bottom', wrap: true },
  unit: { italic: true, color: QUIET, borders: { bottom: thin } },
  group: { bold: true, color: TEAL, borders: { bottom: { line: 'thin', color: TEAL } } },
  input: { fill: '#FFF8E1', borders: { top: hair, bottom: hair, left: hair, right: hair } },
  figure: {},
  fixed: { italic: true },
  total: { bold: true, borders: { top: { line: 'double', color: SOFT } } },
  attention: { bold: true, color: '#8A3B00' },
  text: {},
  note: { color: QUIET },
};

/** The name of a style in the file, by which it is known again after other programs have saved it. */
const STYLE_NAME = 'Archwright ';

/** The style that a named style of a file stands for; undefined for one of another name. */
export function styleNamed(name: string): CellStyle | undefined {
  const own = name.startsWith(STYLE_NAME) ? name.slice(STYLE_NAME.length) : '';
  return Object.hasOwn(LOOKS, own) ? (own as CellStyle) : undefined;
}

function fontXml({ bold, italic, strike, underline, size = USUAL_SIZE, color, font = USUAL_FONT }: Look): string {
  return (
    `<font>${bold ? '<b/>' : ''}${italic ? '<i/>' : ''}${strike ? '<strike/>' : ''}${underline ? '<u/>' : ''}` +
    `<sz val="${size}"/>${color === undefined ? '' : colorXml(color)}<name val="${escapeText(font)}"/><family val="2"/></font>`
  );
}

function fillXml({ fill = 'none' }: Look): string {
  return fill === 'none'
    ? '<fill><patternFill patternType="none"/></fill>'
    : `<fill><patternFill patternType="solid"><fgColor rgb="${argb(fill)}"/><bgColor indexed="64"/></patternFill></fill>`;
}

function borderXml({ borders = {} }: Look): string {
  const sides = BORDER_SIDES.map((side) => {
    const line = borders[side];
    return line === undefined || line.line === 'none'
      ? `<${side}/>`
      : `<${side} style="${line.line}">${colorXml(line.color)}</${side}>`;
  });
  return `<border>${sides.join('')}<diagonal/></border>`;
}

function colorXml(rgb: string): string {
  return `<color rgb="${argb(rgb)}"/>`;
}

function argb(rgb: string): string {
  return `FF${rgb.replace('#', '').toUpperCase()}`;
}

/** Formats that every spreadsheet knows by number; others count from 164 (ECMA-376 part 1, 18.8.30). */
export const BUILT_IN: Readonly<Record<string, number>> = {
  General: 0,
  '0': 1,
  '0.00': 2,
  '#,##0.00': 4,
  '# ??/??': 13,
  '@': 49,
};
const FIRST_OWN_FORMAT = 164;

/** Parts of a style sheet, each with its place. */
class Parts {
  private readonly places = new Map<string, number>();
  private readonly parts: string[] = [];

  constructor(...first: readonly string[]) {
    for (const part of first) this.place(part);
  }

  place(part: string): number {
    const known = this.places.get(part);
    if (known !== undefined) return known;
    const place = this.add(part);
    this.places.set(part, place);
    return place;
  }

  /** A part that keeps a place of its own even where it is like another. */
  add(part: string): number {
    return this.parts.push(part) - 1;
  }

  list(tag: string): string {
    return `<${tag} count="${this.parts.length}">${this.parts.join('')}</${tag}>`;
  }
}

/** The looks of all cells of a workbook, each written once and named by number. */
export class Looks {
  private readonly fonts = new Parts(fontXml({}));
  private readonly fills = new Parts(fillXml({}), '<fill><patternFill patternType="gray125"/></fill>');
  private readonly borders = new Parts(borderXml({}));
  private readonly formats = new Map<string, number>();
  private readonly styles = new Map<CellStyle, number>();
  private readonly styleXfs = new Parts('<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>');
  private readonly cells = new Parts('<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>');
  private readonly known = new Map<string, number>();

  /** The number of a cell's look. `inset`: text that keeps a little clear of the figure to its left. */
  of(cell: Cell, inset: boolean): number {
    const own = cell.own === undefined ? '' : JSON.stringify(cell.own);
    const key = `${cell.style ?? 'text'}|${cell.wrap ? 1 : 0}${inset ? 1 : 0}${cell.align ?? ''}|${cell.format ?? ''}|${own}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const place = this.cells.place(this.xf(cell, inset));
    this.known.set(key, place);
    return place;
  }

  private xf(cell: Cell, inset: boolean): string {
    const named = LOOKS[cell.style ?? 'text'];
    const { own = {} } = cell;
    const look: Look = { ...named, ...own, borders: { ...named.borders, ...own.borders } };
    const horizontal = own.horizontal ?? cell.align;
    const sideways = horizontal ? ` horizontal="${horizontal}"` : inset ? ' horizontal="left" indent="1"' : '';
    const wrap = (cell.wrap ?? look.wrap) ? ' wrapText="1"' : '';
    return (
      `<xf numFmtId="${this.format(cell.format ?? 'General')}" ${this.ids(look)} xfId="${this.styleOf(cell.style)}"` +
      ' applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1" applyProtection="1">' +
      `<alignment${sideways} vertical="${look.vertical ?? 'top'}"${wrap}/>${protection(cell.style)}</xf>`
    );
  }

  private ids(look: Look): string {
    const font = this.fonts.place(fontXml(look));
    const fill = this.fills.place(fillXml(look));
    return `fontId="${font}" fillId="${fill}" borderId="${this.borders.place(borderXml(look))}"`;
  }

  /** The place of a style under its name: other programs keep it, and a workbook opened again knows its inputs by it. */
  private styleOf(style: CellStyle = 'text'): number {
    if (style === 'text') return 0;
    const known = this.styles.get(style);
    if (known !== undefined) return known;
    const look = LOOKS[style];
    const wrap = look.wrap ? ' wrapText="1"' : '';
    const alignment = `<alignment vertical="${look.vertical ?? 'top'}"${wrap}/>`;
    // Two styles may look alike, and have each a place of its own.
    const place = this.styleXfs.add(`<xf numFmtId="0" ${this.ids(look)}>${alignment}${protection(style)}</xf>`);
    this.styles.set(style, place);
    return place;
  }

  private format(code: string): number {
    const known = BUILT_IN[code] ?? this.formats.get(code);
    if (known !== undefined) return known;
    const id = FIRST_OWN_FORMAT + this.formats.size;
    this.formats.set(code, id);
    return id;
  }

  /** The style sheet, once all cells have been seen. */
  xml(): string {
    const formats = [...this.formats].map(
      ([code, id]) => `<numFmt numFmtId="${id}" formatCode="${escapeText(code)}"/>`,
    );
    const styles = [...this.styles].map(([style, xf]) => `<cellStyle name="${STYLE_NAME}${style}" xfId="${xf}"/>`);
    return (
      `${XML_HEAD}<styleSheet xmlns="${MAIN}">` +
      (formats.length > 0 ? `<numFmts count="${formats.length}">${formats.join('')}</numFmts>` : '') +
      this.fonts.list('fonts') +
      this.fills.list('fills') +
      this.borders.list('borders') +
      this.styleXfs.list('cellStyleXfs') +
      this.cells.list('cellXfs') +
      `<cellStyles count="${styles.length + 1}"><cellStyle name="Normal" xfId="0" builtinId="0"/>${styles.join('')}</cellStyles>` +
      TYPED_OVER +
      '</styleSheet>'
    );
  }
}

const rgb = (color: string) => `rgb="FF${color.slice(1)}"`;
const TYPED_OVER = `<dxfs count="1"><dxf><font><color ${rgb(TYPED_OVER_LOOK.ink)}/></font><fill><patternFill><bgColor ${rgb(TYPED_OVER_LOOK.fill)}/></patternFill></fill></dxf></dxfs>`;

function protection(style: CellStyle | undefined): string {
  return `<protection locked="${style === 'input' ? 0 : 1}"/>`;
}
