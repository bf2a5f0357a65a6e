import type { CellStyle } from '../../src/workbook/sheet';

/** Takes the format of a range or of many: both have what a look needs. */
type Format = Excel.RangeFormat;

const INK = '#1C2833';
const SOFT_INK = '#4B5A67';
const ATTENTION = '#8A1C12';

/** How each style is drawn in Excel. Border, weight or slant tell the styles apart as well as color does. */
const LOOKS: Readonly<Record<CellStyle, ((format: Format) => void) | null>> = {
  title: (format) => {
    format.font.bold = true;
    format.font.size = 15;
  },
  heading: (format) => {
    format.font.bold = true;
    format.fill.color = '#E4E9ED';
    line(format, 'EdgeBottom', 'Medium', SOFT_INK);
  },
  unit: (format) => {
    format.font.italic = true;
    format.font.color = SOFT_INK;
    format.fill.color = '#F2F4F6';
  },
  group: (format) => {
    format.font.bold = true;
    format.fill.color = '#D3DBE1';
  },
  input: (format) => {
    format.fill.color = '#FFF7DB';
    box(format, 'Continuous', '#B08D2E');
    format.protection.locked = false;
  },
  figure: null,
  fixed: (format) => {
    format.font.italic = true;
    format.fill.color = '#F2F4F6';
    box(format, 'Dot', '#8794A0');
  },
  total: (format) => {
    format.font.bold = true;
    line(format, 'EdgeTop', 'Medium', INK);
  },
  attention: (format) => {
    format.font.bold = true;
    format.font.color = ATTENTION;
    format.fill.color = '#FDEEEA';
    line(format, 'EdgeLeft', 'Medium', ATTENTION);
  },
  text: null,
  note: (format) => {
    format.font.italic = true;
    format.font.size = 9;
    format.font.color = SOFT_INK;
  },
};

export function applyLook(style: CellStyle, format: Format): void {
  LOOKS[style]?.(format);
}

function line(format: Format, edge: 'EdgeTop' | 'EdgeBottom' | 'EdgeLeft', weight: 'Thin' | 'Medium', color: string) {
  const border = format.borders.getItem(edge);
  border.style = 'Continuous';
  border.weight = weight;
  border.color = color;
}

const BOX = ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight', 'InsideHorizontal', 'InsideVertical'] as const;

function box(format: Format, style: 'Continuous' | 'Dot', color: string): void {
  for (const side of BOX) {
    const border = format.borders.getItem(side);
    border.style = style;
    border.color = color;
  }
}
