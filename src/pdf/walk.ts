import { readable, UNKNOWN } from './characters';
import { boxOf, Drawn, within } from './drawn';
import { BlankWidths } from './blanks';
import { matrixOf, moved, times, type Box, type Letter, type Matrix, type PageMarks } from './marks';
import { chains } from './rules';
import { firstState, type PageFacts, type State } from './walkState';

/** A page's drawing as the PDF library gives it: what is done, and with which figures. */
export interface Operators {
  readonly fnArray: ArrayLike<number>;
  readonly argsArray: ArrayLike<unknown>;
}

interface Glyph {
  readonly unicode: string;
  readonly width: number;
  readonly isSpace: boolean;
}

/** A skew larger than this, in radians, is no careless printing: 0.3°. */
const MOST_SKEW = (0.3 * Math.PI) / 180;
const WHITE = /^#?(?:f{3}|f{6})$/i;
/** A page with more is no schedule: none of it is read. */
export const MOST_LETTERS = 400_000;

/** One walk over what a page draws: its letters, rules and bands. */
export function walk(operators: Operators, page: PageFacts): PageMarks {
  return new Walk(page).run(operators);
}

class Walk {
  private readonly letters: Letter[] = [];
  /** White letters, and their middles: on a dark band they are read, on the white page nobody sees them. */
  private readonly white: { letter: Letter; x: number; y: number }[] = [];
  private readonly drawn = new Drawn();
  private readonly blanks = new BlankWidths();
  private readonly seen = { invisible: 0, skewed: 0, unknown: 0, pictures: 0 };
  private readonly saved: State[] = [];
  private readonly layers: boolean[] = [];
  private hidden = 0;
  private clips = false;
  private textMatrix: Matrix = [1, 0, 0, 1, 0, 0];
  private x = 0;
  private y = 0;
  private lineX = 0;
  private lineY = 0;
  private state: State;
  private readonly deeds: (((args: unknown[]) => void) | undefined)[] = [];

  constructor(private readonly page: PageFacts) {
    this.state = firstState(page);
    for (const [name, deed] of Object.entries(this.byName())) {
      const number = page.names[name];
      if (number !== undefined) this.deeds[number] = deed;
    }
  }

  run({ fnArray, argsArray }: Operators): PageMarks {
    for (let index = 0; index < fnArray.length; index += 1) {
      this.deeds[fnArray[index]!]?.((argsArray[index] ?? []) as unknown[]);
      if (this.letters.length + this.white.length > MOST_LETTERS) return this.none();
    }
    const { width, height } = this.page;
    const { rules, bands, dots, curves } = this.drawn;
    for (const { letter, x, y } of this.white) {
      const onBand = bands.some((band) => x > band.left && x < band.right && y > band.top && y < band.bottom);
      if (onBand || this.seen.pictures > 0) this.letters.push(letter);
      else this.seen.invisible += 1;
    }
    return {
      width,
      height,
      letters: this.blanks.applied(this.letters),
      rules: [...rules, ...chains(dots)],
      bands,
      seen: { ...this.seen, curves, crowded: false },
    };
  }

  private none(): PageMarks {
    const { width, height } = this.page;
    const seen = { ...this.seen, curves: this.drawn.curves, crowded: true };
    return { width, height, letters: [], rules: [], bands: [], seen };
  }

  private byName(): Record<string, (args: unknown[]) => void> {
    const number = (value: unknown) => Number(value);
    return {
      save: () => void this.saved.push({ ...this.state }),
      restore: () => void (this.state = this.saved.pop() ?? this.state),
      transform: (args) => void (this.state.matrix = times(this.state.matrix, matrixOf(args))),
      paintFormXObjectBegin: ([matrix, box]) => {
        this.saved.push({ ...this.state });
        if (matrix) this.state.matrix = times(this.state.matrix, matrixOf(matrix as ArrayLike<number>));
        if (box) this.clipTo(box as ArrayLike<number>);
      },
      paintFormXObjectEnd: () => void (this.state = this.saved.pop() ?? this.state),
      beginGroup: ([group]) => {
        this.saved.push({ ...this.state });
        const { matrix } = (group ?? {}) as { matrix?: ArrayLike<number> };
        if (matrix) this.state.matrix = times(this.state.matrix, matrixOf(matrix));
        // A mask is no part of the picture.
        if ((group as { smask?: unknown } | null)?.smask) this.hidden += 1;
        this.layers.push(!(group as { smask?: unknown } | null)?.smask);
      },
      endGroup: () => {
        this.state = this.saved.pop() ?? this.state;
        if (this.layers.pop() === false) this.hidden -= 1;
      },
      beginMarkedContent: () => void this.layers.push(true),
      beginMarkedContentProps: ([tag, properties]) => {
        const visible = tag !== 'OC' || this.page.layer(properties);
        if (!visible) this.hidden += 1;
        this.layers.push(visible);
      },
      endMarkedContent: () => {
        if (this.layers.pop() === false) this.hidden -= 1;
      },
      setGState: ([pairs]) => {
        for (const [key, value] of (pairs ?? []) as [string, unknown][]) {
          if (key === 'LW') this.state.lineWidth = number(value);
          if (key === 'Font') this.setFont((value as unknown[])[0], (value as unknown[])[1]);
        }
      },
      setLineWidth: ([width]) => void (this.state.lineWidth = number(width)),
      setFillRGBColor: ([color]) => void (this.state.fill = String(color)),
      setStrokeRGBColor: ([color]) => void (this.state.stroke = String(color)),
      setFillColorN: () => void (this.state.fill = 'pattern'),
      setStrokeColorN: () => void (this.state.stroke = 'pattern'),
      clip: () => void (this.clips = true),
      eoClip: () => void (this.clips = true),
      constructPath: ([deed, data, bounds]) => this.path(number(deed), data, bounds),
      paintImageXObject: () => this.picture(),
      paintInlineImageXObject: () => this.picture(),
      paintImageXObjectRepeat: () => this.picture(),
      paintInlineImageXObjectGroup: () => this.picture(),
      paintImageMaskXObject: () => this.picture(),
      paintImageMaskXObjectGroup: () => this.picture(),
      paintImageMaskXObjectRepeat: () => this.picture(),
      paintSolidColorImageMask: () => {
        if (this.hidden > 0 || WHITE.test(this.state.fill)) return;
        this.drawn.box(this.unitSquare(), this.state.fill, this.state.shown);
      },
      beginText: () => {
        this.textMatrix = [1, 0, 0, 1, 0, 0];
        this.x = this.y = this.lineX = this.lineY = 0;
      },
      setCharSpacing: ([spacing]) => void (this.state.charSpacing = number(spacing)),
      setWordSpacing: ([spacing]) => void (this.state.wordSpacing = number(spacing)),
      setHScale: ([percent]) => void (this.state.stretch = number(percent) / 100),
      setLeading: ([leading]) => void (this.state.leading = -number(leading)),
      setTextRise: ([raise]) => void (this.state.raise = number(raise)),
      setTextRenderingMode: ([mode]) => void (this.state.mode = number(mode)),
      setFont: ([id, size]) => this.setFont(id, size),
      setTextMatrix: ([matrix]) => {
        this.textMatrix = matrixOf(matrix as ArrayLike<number>);
        this.x = this.y = this.lineX = this.lineY = 0;
      },
      moveText: ([x, y]) => this.moveText(number(x), number(y)),
      setLeadingMoveText: ([x, y]) => {
        this.state.leading = number(y);
        this.moveText(number(x), number(y));
      },
      nextLine: () => this.moveText(0, this.state.leading),
      showText: ([glyphs]) => this.show(glyphs as readonly (Glyph | number)[]),
    };
  }

  private setFont(id: unknown, size: unknown): void {
    this.state.font = this.page.font(String(id));
    this.state.size = Number(size);
  }

  private moveText(x: number, y: number): void {
    this.x = this.lineX += x;
    this.y = this.lineY += y;
  }

  private show(glyphs: readonly (Glyph | number)[]): void {
    const { font, charSpacing, wordSpacing, stretch, raise } = this.state;
    const direction = this.state.size < 0 ? -1 : 1;
    const size = Math.abs(this.state.size);
    if (size === 0) return;
    const unit = size * (font?.fontMatrix?.[0] ?? 0.001);
    const scale = stretch * direction;
    const whole = times(this.state.matrix, this.textMatrix);
    let x = 0;
    for (const glyph of glyphs) {
      if (typeof glyph === 'number') {
        x -= (glyph * size) / 1000;
        continue;
      }
      const advance = glyph.width * unit;
      this.letter(glyph, whole, { x: this.x + x * scale, y: this.y + raise, advance: advance * scale, size });
      x += advance + ((glyph.isSpace ? wordSpacing : 0) + charSpacing) * direction;
    }
    if (font?.vertical) this.y -= x;
    else this.x += x * scale;
  }

  private letter(glyph: Glyph, whole: Matrix, at: { x: number; y: number; advance: number; size: number }): void {
    if (this.hidden > 0) return;
    const text = readable(glyph.unicode);
    if (text === '') return;
    const { mode, fill, shown } = this.state;
    const [a, b, c, d] = whole;
    const size = at.size * Math.hypot(c, d);
    // Modes 3 and 7 draw nothing.
    if (mode === 3 || mode === 7) return void (this.seen.invisible += 1);
    if (size < 0.5) return void (this.seen.invisible += 1);
    const angle = Math.atan2(b * Math.sign(at.advance || 1), a * Math.sign(at.advance || 1));
    const turns = angle / (Math.PI / 2);
    const turn = Math.round(turns);
    if (Math.abs(turns - turn) * (Math.PI / 2) > MOST_SKEW) return void (this.seen.skewed += 1);
    const [x, y] = moved(whole, at.x, at.y);
    const width = Math.abs(at.advance) * Math.hypot(a, b);
    const along = ((turn % 4) + 4) % 4;
    const [dx, dy] = ALONG[along]!;
    const [middleX, middleY] = [x + (dx * width) / 2 + (dy * size) / 3, y + (dy * width) / 2 - (dx * size) / 3];
    const page = this.page;
    if (middleX < 0 || middleY < 0 || middleX > page.width || middleY > page.height) return;
    const clipped = middleX < shown.left || middleX > shown.right || middleY < shown.top || middleY > shown.bottom;
    if (text === UNKNOWN) this.seen.unknown += 1;
    const letter = { text, x, y, width, size, turn: along, clipped, blank: 0 };
    this.blanks.note(letter, this.state.font);
    if (WHITE.test(fill)) this.white.push({ letter, x: middleX, y: middleY });
    else this.letters.push(letter);
  }

  private path(deed: number, data: unknown, bounds: unknown): void {
    const { names } = this.page;
    const [path] = (data ?? []) as [ArrayLike<number> | null | undefined];
    const clips = this.clips;
    this.clips = false;
    const stroke = deed === names['stroke'] || deed === names['closeStroke'];
    const fill = deed === names['fill'] || deed === names['eoFill'];
    const both = !stroke && !fill && deed !== names['endPath'];
    const { state } = this;
    const strokes = (stroke || both) && !WHITE.test(state.stroke);
    const fills = (fill || both) && !WHITE.test(state.fill);
    if (path && this.hidden === 0 && (strokes || fills))
      this.drawn.path(path, state.matrix, { stroke: strokes, fill: fills, color: state.fill }, state.shown);
    if (clips && bounds) this.clipTo(bounds as ArrayLike<number>);
  }

  private clipTo(box: ArrayLike<number>): void {
    const [x0, y0, x1, y1] = [box[0]!, box[1]!, box[2]!, box[3]!];
    const { matrix, shown } = this.state;
    const clip = boxOf([moved(matrix, x0, y0), moved(matrix, x1, y0), moved(matrix, x0, y1), moved(matrix, x1, y1)]);
    this.state.shown = within(clip, shown) ?? { left: -1, top: -1, right: -1, bottom: -1 };
  }

  private picture(): void {
    if (this.hidden === 0) this.seen.pictures += 1;
  }

  private unitSquare(): Box {
    const { matrix } = this.state;
    return boxOf([moved(matrix, 0, 0), moved(matrix, 1, 0), moved(matrix, 0, 1), moved(matrix, 1, 1)]);
  }
}

/** Along the baseline, for each quarter turn. */
const ALONG: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];
