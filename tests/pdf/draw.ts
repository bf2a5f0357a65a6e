import { degrees, PDFDocument, rgb, StandardFonts, type PDFFont, type PDFPage } from 'pdf-lib';
import { random } from '../random';
import type { Layout } from './layout';

interface Piece {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

const MARGIN = 36;

/** A layout as the bytes of a PDF. */
export async function drawLayout(layout: Layout, seed: number): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(layout.font as StandardFonts);
  const from = random(seed);
  const left = MARGIN + from.between(0, 40);
  const right = left + layout.widths.reduce((sum, width) => sum + width, 0);
  const beside = layout.notes === 'beside' ? 170 : 0;
  const width = right + MARGIN + beside;
  const pages = chunks(layout.rows, layout.rowsOnPage);
  pages.forEach((rows, index) => {
    const heads = index === 0 || layout.repeatsHeadings;
    const sheet = new Sheet(layout, font, left);
    let y = MARGIN + 20;
    if (layout.title && index === 0) {
      sheet.say('WINDOW AND CASING SCHEDULE', left + 10, y, layout.size * 1.4);
      y += layout.size * 2.2;
    }
    const top = y;
    if (heads) y = sheet.headings(y);
    rows.forEach((row, at) => {
      y = sheet.row(row, y, { shaded: at % 2 === 1, heading: false });
    });
    sheet.frame(top, y, right);
    if (layout.notes === 'below') {
      const notes = [
        'NOTES:',
        '1. All sizes are of the finished opening unless noted.',
        '2. Verify every rise before bending or gluing any blank.',
      ];
      notes.forEach((note, line) => sheet.say(note, left, y + layout.size * (4.5 + line * 1.3), layout.size));
    }
    if (layout.notes === 'beside') {
      const notes = [
        'GENERAL NOTES',
        'A. Openings are shown from outside.',
        'B. See sheet 7 for the details.',
        'C. Field measure before work.',
      ];
      notes.forEach((note, line) =>
        sheet.say(note, right + 45, MARGIN + 31 + line * layout.size * 1.7, layout.size * 0.95),
      );
    }
    const height = y + 120;
    sheet.draw(document, width, height, from.whole(1, 1e9));
  });
  return document.save({ useObjectStreams: false });
}

class Sheet {
  private readonly pieces: Piece[] = [];
  private readonly lines: { x0: number; y0: number; x1: number; y1: number }[] = [];
  private readonly bands: { x: number; y: number; width: number; height: number; gray: number }[] = [];

  constructor(
    private readonly layout: Layout,
    private readonly font: PDFFont,
    private readonly left: number,
  ) {}

  say(text: string, x: number, y: number, size: number): void {
    this.pieces.push({ text, x, y, size });
  }

  headings(y: number): number {
    const { group, headings, widths, size, leading, rules } = this.layout;
    if (group === null) return this.row(headings, y, { shaded: false, heading: true });
    const bottom = y + size * (leading + this.layout.rowGap);
    const x = this.left + sum(widths.slice(0, group.column));
    const span = widths[group.column]! + widths[group.column + 1]!;
    const width = this.font.widthOfTextAtSize(group.text, size);
    this.say(group.text, x + (span - width) / 2, y + size * (0.8 + this.layout.rowGap / 2), size);
    if (RULED_ALL.has(rules)) {
      this.lines.push(
        { x0: x, y0: bottom, x1: x + span, y1: bottom },
        { x0: this.left, y0: y, x1: this.left + sum(widths), y1: y },
      );
      let at = this.left;
      [...widths, 0].forEach((each, column) => {
        const inner = column === group.column + 1;
        const side = rules === 'no sides' && (column === 0 || column === widths.length);
        if (!inner && !side) this.lines.push({ x0: at, y0: y, x1: at, y1: bottom });
        at += each;
      });
    }
    // Beside the group the cells go on down, so their headings stand in the lower row without a rule above.
    return this.row(headings, bottom, { shaded: false, heading: true, under: group.column });
  }

  row(cells: readonly string[], y: number, how: { shaded: boolean; heading: boolean; under?: number }): number {
    const { widths, padding, size, leading, rowGap, aligns, rules } = this.layout;
    const lines = cells.map((cell, column) => this.wrapped(cell, widths[column]! - 2 * padding));
    const most = Math.max(...lines.map((each) => each.length));
    const step = size * leading;
    const bottom = y + most * step + rowGap * size;
    let x = this.left;
    cells.forEach((_cell, column) => {
      const own = lines[column]!;
      const spare = (most - own.length) * step;
      const down = how.heading
        ? spare
        : this.layout.stand === 'top'
          ? 0
          : this.layout.stand === 'middle'
            ? spare / 2
            : spare;
      own.forEach((text, line) => {
        const align = aligns[column]!;
        const room = widths[column]! - 2 * padding - this.lengthOf(text);
        const shift = align === 'left' ? 0 : align === 'right' ? room : room / 2;
        this.fractioned(text, x + padding + shift, y + down + (rowGap / 2 + 0.8) * size + line * step);
        if (how.heading && this.layout.boldTwice)
          this.fractioned(text, x + padding + shift + 0.3, y + down + (rowGap / 2 + 0.8) * size + line * step);
      });
      if (rules === 'boxes')
        this.box(
          x,
          y,
          x + widths[column]!,
          bottom,
          how.under !== undefined && column !== how.under && column !== how.under + 1,
        );
      x += widths[column]!;
    });
    if ((rules === 'bands' && how.shaded) || (rules === 'white' && true))
      this.bands.push({
        x: this.left,
        y,
        width: x - this.left,
        height: bottom - y,
        gray: how.shaded ? 0.85 : rules === 'white' ? 0.93 : 1,
      });
    if (RULED_ALL.has(rules) || rules === 'rows') {
      if (how.under === undefined || rules === 'rows') this.lines.push({ x0: this.left, y0: y, x1: x, y1: y });
      if (rules !== 'boxes') this.lines.push({ x0: this.left, y0: bottom, x1: x, y1: bottom });
    }
    if (RULED_ALL.has(rules) || rules === 'columns') {
      let at = this.left;
      [...widths, 0].forEach((each, column) => {
        const side = rules === 'no sides' && (column === 0 || column === widths.length);
        if (!side) this.lines.push({ x0: at, y0: y, x1: at, y1: bottom });
        at += each;
      });
    }
    return bottom;
  }

  private box(x0: number, y0: number, x1: number, y1: number, openTop: boolean): void {
    if (!openTop) this.lines.push({ x0, y0, x1, y1: y0 });
    this.lines.push({ x0, y0: y1, x1, y1 }, { x0, y0, x1: x0, y1 }, { x0: x1, y0, x1, y1 });
  }

  frame(top: number, bottom: number, right: number): void {
    if (this.layout.rules !== 'columns') return;
    this.lines.push(
      { x0: this.left, y0: top, x1: right, y1: top },
      { x0: this.left, y0: bottom, x1: right, y1: bottom },
    );
  }

  private wrapped(text: string, room: number): string[] {
    const lines: string[] = [];
    for (const word of text.split(' ')) {
      const last = lines.at(-1);
      if (last !== undefined && this.lengthOf(`${last} ${word}`) <= room) lines[lines.length - 1] = `${last} ${word}`;
      else lines.push(word);
    }
    return lines;
  }

  private lengthOf(text: string): number {
    const { fractions, size } = this.layout;
    if (fractions !== 'stacked' && fractions !== 'beside') return this.font.widthOfTextAtSize(text, size);
    return text.split(/(\d+\/\d+)/).reduce((length, part) => {
      const whole = /^(\d+)\/(\d+)$/.exec(part);
      if (!whole) return length + this.font.widthOfTextAtSize(part, size);
      const small = size * 0.6;
      const parts = [whole[1]!, whole[2]!].map((each) => this.font.widthOfTextAtSize(each, small));
      return (
        length +
        (fractions === 'stacked'
          ? Math.max(...parts)
          : parts[0]! + parts[1]! + this.font.widthOfTextAtSize('/', size * 0.8))
      );
    }, 0);
  }

  /** A line with its fractions set small. */
  private fractioned(text: string, x: number, y: number): void {
    const { fractions, size } = this.layout;
    if (fractions !== 'stacked' && fractions !== 'beside') return this.say(text, x, y, size);
    const small = size * 0.6;
    let at = x;
    for (const part of text.split(/(\d+\/\d+)/)) {
      const whole = /^(\d+)\/(\d+)$/.exec(part);
      if (!whole) {
        if (part.trim() !== '') this.say(part, at, y, size);
        at += this.font.widthOfTextAtSize(part, size);
        continue;
      }
      const [upper, lower] = [whole[1]!, whole[2]!];
      const [one, other] = [upper, lower].map((each) => this.font.widthOfTextAtSize(each, small)) as [number, number];
      if (fractions === 'stacked') {
        const width = Math.max(one, other);
        this.say(upper, at + (width - one) / 2, y - size * 0.42, small);
        this.say(lower, at + (width - other) / 2, y + size * 0.14, small);
        this.lines.push({ x0: at, y0: y - size * 0.36, x1: at + width, y1: y - size * 0.36 });
        at += width;
      } else {
        this.say(upper, at, y - size * 0.3, small);
        const stroke = this.font.widthOfTextAtSize('/', size * 0.8);
        this.say('/', at + one, y, size * 0.8);
        this.say(lower, at + one + stroke, y, small);
        at += one + stroke + other;
      }
    }
  }

  draw(document: PDFDocument, width: number, height: number, seed: number): void {
    const { turn, rotate, rules, drawn, shuffled } = this.layout;
    const swaps = turn === 1 || turn === 3;
    const page = document.addPage(swaps ? [height, width] : [width, height]);
    if (rotate !== 0) page.setRotation(degrees(rotate));
    const place = placing(turn, width, height);
    for (const { x, y, width: w, height: h, gray } of this.bands) {
      const [x0, y0] = place(x, y + h);
      const [x1, y1] = place(x + w, y);
      page.drawRectangle({
        x: Math.min(x0, x1),
        y: Math.min(y0, y1),
        width: Math.abs(x1 - x0),
        height: Math.abs(y1 - y0),
        color: rgb(gray, gray, gray),
      });
    }
    for (const { x0, y0, x1, y1 } of this.lines) {
      const [startX, startY] = place(x0, y0);
      const [endX, endY] = place(x1, y1);
      const dash = rules === 'dotted' ? { dashArray: [0.8, 1.2] } : {};
      page.drawLine({ start: { x: startX, y: startY }, end: { x: endX, y: endY }, thickness: 0.5, ...dash });
    }
    let pieces = this.pieces.flatMap((piece) => this.inParts(piece, drawn));
    if (shuffled) {
      const from = random(seed);
      pieces = pieces
        .map((piece) => ({ piece, key: from.between(0, 1) }))
        .sort((one, other) => one.key - other.key)
        .map(({ piece }) => piece);
    }
    for (const { text, x, y, size } of pieces) this.text(page, text, place(x, y), size, turn);
  }

  private text(page: PDFPage, text: string, [x, y]: readonly [number, number], size: number, turn: number): void {
    page.drawText(text, {
      x,
      y,
      size,
      font: this.font,
      rotate: degrees(turn === 0 ? 0 : turn === 1 ? -90 : turn === 2 ? 180 : 90),
    });
  }

  private inParts(piece: Piece, drawn: Layout['drawn']): Piece[] {
    if (drawn === 'lines') return [piece];
    const parts = drawn === 'words' ? piece.text.split(/( )/) : [...piece.text];
    let x = piece.x;
    return parts.flatMap((text) => {
      const at = x;
      x += this.font.widthOfTextAtSize(text, piece.size);
      return text.trim() === '' ? [] : [{ ...piece, text, x: at }];
    });
  }
}

const RULED_ALL: ReadonlySet<Layout['rules']> = new Set<Layout['rules']>(['ruled', 'dotted', 'no sides']);

/** From the sheet's own axes, y downward, to the PDF's. */
function placing(turn: number, width: number, height: number): (x: number, y: number) => readonly [number, number] {
  if (turn === 0) return (x, y) => [x, height - y];
  // Turned to the right: what is at the left stands on top.
  if (turn === 1) return (x, y) => [height - y, width - x];
  if (turn === 3) return (x, y) => [y, x];
  return (x, y) => [width - x, y];
}

function chunks<T>(all: readonly T[], size: number): T[][] {
  const parts: T[][] = [];
  for (let at = 0; at < all.length; at += size) parts.push(all.slice(at, at + size));
  return parts;
}

function sum(figures: readonly number[]): number {
  return figures.reduce((total, figure) => total + figure, 0);
}
