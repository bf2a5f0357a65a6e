import type { Cell, CellStyle } from '../sheet';
import { escapeText, MAIN, XML_HEAD } from './xml';

interface Look {
  readonly font?: string;
  readonly fill?: string;
  readonly border?: string;
  readonly vertical?: 'bottom';
  readonly wrap?: boolean;
}

const SOFT = 'FF8A8F98';
const font = (inside: string, size = 11) =>
  `<font>${inside}<sz val="${size}"/><name val="Calibri"/><family val="2"/></font>`;
const color = (argb: string) => `<color rgb="${argb}"/>`;
const solid = (argb: string) =>
  `<fill><patternFill patternType="solid"><fgColor rgb="${argb}"/><bgColor indexed="64"/></patternFill></fill>`;

type Side = 'left' | 'right' | 'top' | 'bottom';
function border(lines: Partial<Record<Side, string>>, argb = SOFT): string {
  const sides = (['left', 'right', 'top', 'bottom'] as const).map((side) =>
    lines[side] === undefined ? `<${side}/>` : `<${side} style="${lines[side]}">${color(argb)}</${side}>`,
  );
  return `<border>${sides.join('')}<diagonal/></border>`;
}

/** Color is never the only sign: inputs are boxed, what needs attention is bold, totals stand over a double line. */
const LOOKS: Readonly<Record<CellStyle, Look>> = {
  title: { font: font('<b/>', 16) },
  heading: {
    font: font('<b/>'),
    fill: solid('FFE9ECEF'),
    border: border({ bottom: 'thin' }),
    vertical: 'bottom',
    wrap: true,
  },
  unit: { font: font(`<i/>${color('FF555B63')}`), border: border({ bottom: 'thin' }) },
  group: { font: font(`<b/>${color('FF1F4E5F')}`), border: border({ bottom: 'thin' }, 'FF1F4E5F') },
  input: {
    fill: solid('FFFFF8E1'),
    border: border({ top: 'hair', bottom: 'hair', left: 'hair', right: 'hair' }),
  },
  figure: {},
  fixed: { font: font('<i/>') },
  total: { font: font('<b/>'), border: border({ top: 'double' }) },
  attention: { font: font(`<b/>${color('FF8A3B00')}`) },
  text: {},
  note: { font: font(color('FF555B63')) },
};

/** Formats that every spreadsheet knows by number; others count from 164 (ECMA-376 part 1, 18.8.30). */
const BUILT_IN: Readonly<Record<string, number>> = {
  General: 0,
  '0': 1,
  '0.00': 2,
  '#,##0.00': 4,
  '# ??/??': 13,
  '@': 49,
};
const FIRST_OWN_FORMAT = 164;

/** Parts of a style sheet, each once, with its place. */
class Parts {
  private readonly places = new Map<string, number>();

  constructor(...first: readonly string[]) {
    for (const part of first) this.place(part);
  }

  place(part: string): number {
    const known = this.places.get(part);
    if (known !== undefined) return known;
    this.places.set(part, this.places.size);
    return this.places.size - 1;
  }

  list(tag: string): string {
    return `<${tag} count="${this.places.size}">${[...this.places.keys()].join('')}</${tag}>`;
  }
}

/** The looks of all cells of a workbook, each written once and named by number. */
export class Looks {
  private readonly fonts = new Parts(font(''));
  private readonly fills = new Parts(
    '<fill><patternFill patternType="none"/></fill>',
    '<fill><patternFill patternType="gray125"/></fill>',
  );
  private readonly borders = new Parts(border({}));
  private readonly formats = new Map<string, number>();
  private readonly cells = new Parts('<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>');
  private readonly known = new Map<string, number>();

  /** The number of a cell's look. `inset`: text that keeps a little clear of the figure to its left. */
  of(cell: Cell, inset: boolean): number {
    const key = `${cell.style ?? 'text'}|${cell.wrap ? 1 : 0}${inset ? 1 : 0}${cell.align ?? ''}|${cell.format ?? ''}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const place = this.cells.place(this.xf(cell, inset));
    this.known.set(key, place);
    return place;
  }

  private xf(cell: Cell, inset: boolean): string {
    const look = LOOKS[cell.style ?? 'text'];
    const format = this.format(cell.format ?? 'General');
    const fontId = this.fonts.place(look.font ?? font(''));
    const fillId = look.fill === undefined ? 0 : this.fills.place(look.fill);
    const borderId = look.border === undefined ? 0 : this.borders.place(look.border);
    const alignment =
      (cell.align ? ` horizontal="${cell.align}"` : inset ? ' horizontal="left" indent="1"' : '') +
      ` vertical="${look.vertical ?? 'top'}"` +
      ((cell.wrap ?? look.wrap) ? ' wrapText="1"' : '');
    return (
      `<xf numFmtId="${format}" fontId="${fontId}" fillId="${fillId}" borderId="${borderId}" xfId="0"` +
      ' applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1" applyProtection="1">' +
      `<alignment${alignment}/><protection locked="${cell.style === 'input' ? 0 : 1}"/></xf>`
    );
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
    return (
      `${XML_HEAD}<styleSheet xmlns="${MAIN}">` +
      (formats.length > 0 ? `<numFmts count="${formats.length}">${formats.join('')}</numFmts>` : '') +
      this.fonts.list('fonts') +
      this.fills.list('fills') +
      this.borders.list('borders') +
      '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
      this.cells.list('cellXfs') +
      '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>' +
      '</styleSheet>'
    );
  }
}
