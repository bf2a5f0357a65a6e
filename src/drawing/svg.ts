import { polar } from '../angle';
import { perInch } from '../unit';
import { bounds, type Bounds } from './bounds';
import { explode } from './dimension';
import { LAYERS, type LayerLook } from './layers';
import { arcOfStep } from './roundSteps';
import type { Outline, Point, Primitive, Scene, Text } from './scene';

export interface SvgOptions {
  /**
   * `screen` (default): fills the width it is given, line weights in pixels. `true size`: width, height and coordinates in
   * millimeters of the real thing, to be printed without scaling. A number: true size times that number.
   */
  readonly size?: 'screen' | 'true size' | number;
  /** Brings its own light and dark ink, for a picture that stands alone. Without it the lines take the page's text color. */
  readonly ownColors?: boolean;
  /** Room round the drawing as a fraction of its larger side; default 0.02. */
  readonly border?: number;
  /** The part of the scene to show, in its own unit, instead of everything with a border: a sheet of paper. */
  readonly page?: Bounds;
}

/** Capital height of ordinary sans-serif faces, in font sizes. */
const CAPITAL = 0.72;
const FACE = "'Segoe UI', 'Helvetica Neue', Arial, 'Liberation Sans', sans-serif";
const OWN_COLORS =
  '<style>.drawing{color:#1d2530}@media(prefers-color-scheme:dark){.drawing{color:#e8ebf0}}@media print{.drawing{color:#000}}</style>';

/**
 * A scene as one `<svg>` element. Every layer is a group with its name as class, drawn in `currentColor`, so that a page's
 * light, dark and forced colors reach it. All text is escaped; characters XML does not allow become U+FFFD.
 */
export function toSvg(scene: Scene, options: SvgOptions = {}): string {
  const size = options.size ?? 'screen';
  const shapes = explode(scene.shapes);
  const box = options.page ?? bounds(shapes);
  const border = options.page ? 0 : (options.border ?? 0.02) * Math.max(box.right - box.left, box.top - box.bottom);
  const millimeters = perInch('mm') / perInch(scene.unit);
  const scale = size === 'screen' ? 1 : size === 'true size' ? millimeters : millimeters * size;
  const page = new Page(scale, box.left - border, box.top + border);
  const width = number((box.right - box.left + 2 * border) * scale);
  const height = number((box.top - box.bottom + 2 * border) * scale);
  const onPaper = size !== 'screen';
  const groups = LAYERS.map((look) => group(look, shapes, page, onPaper)).filter((part) => part !== '');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" role="img" aria-label="${escapeXml(scene.title)}"` +
      ` viewBox="0 0 ${width} ${height}"` +
      (onPaper ? ` width="${width}mm" height="${height}mm"` : '') +
      ` fill="none" stroke-linecap="round" stroke-linejoin="round" font-family="${FACE}">`,
    `<title>${escapeXml(scene.title)}</title>`,
    `<desc>${escapeXml(scene.description)}</desc>`,
    ...(options.ownColors ? [OWN_COLORS] : []),
    ...groups,
    '</svg>',
  ].join('\n');
}

/** Text for an XML element or attribute. */
export function escapeXml(words: string): string {
  return words
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '\uFFFD')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

function group(look: LayerLook, shapes: readonly Primitive[], page: Page, onPaper: boolean): string {
  const own = shapes.filter((shape) => shape.layer === look.layer);
  if (own.length === 0) return '';
  const weight = onPaper ? look.weight * 0.2 : look.weight;
  const dash = look.dash
    ? ` stroke-dasharray="${look.dash.map((part) => number(onPaper ? part * 0.3 : part)).join(' ')}"`
    : '';
  const strength = look.strength < 1 ? ` stroke-opacity="${look.strength}"` : '';
  const drawn = own.map((shape) => element(shape, look, page, onPaper)).join('\n');
  return `<g class="layer-${look.layer}" stroke="currentColor" stroke-width="${number(weight)}"${strength}${dash}>\n${drawn}\n</g>`;
}

function element(shape: Primitive, look: LayerLook, page: Page, onPaper: boolean): string {
  if (shape.kind === 'text') return textElement(shape, page);
  const steady = onPaper ? '' : ' vector-effect="non-scaling-stroke"';
  switch (shape.kind) {
    case 'line':
      return `<path d="M${page.at(shape.from)}L${page.at(shape.to)}"${steady}/>`;
    case 'circle':
      return `<circle cx="${page.x(shape.center)}" cy="${page.y(shape.center)}" r="${page.length(shape.radius)}"${steady}/>`;
    case 'arc':
      return `<path d="${arcPath(shape, page)}"${steady}/>`;
    case 'polyline':
      return `<path d="M${shape.points.map((point) => page.at(point)).join('L')}${shape.closed ? 'Z' : ''}"${steady}/>`;
    case 'outline': {
      const tint = shape.filled && look.tint ? ` fill="${look.tint.color}" fill-opacity="${look.tint.strength}"` : '';
      return `<path d="${outlinePath(shape, page)}"${tint}${steady}/>`;
    }
  }
}

/** In parts of at most a third of a turn: SVG draws nothing from a point to itself. */
function arcPath({ center, radius, start, end }: Primitive & { kind: 'arc' }, page: Page): string {
  const parts = Math.max(1, Math.ceil((end - start) / 120));
  const point = (part: number) => polar(center, radius, start + ((end - start) * part) / parts);
  const steps = Array.from({ length: parts }, (_, part) => page.arcTo(radius, false, false, point(part + 1)));
  return `M${page.at(point(0))}${steps.join('')}`;
}

function outlinePath(shape: Outline, page: Page): string {
  let from = shape.start;
  const steps = shape.steps.map(({ to, round }) => {
    const start = from;
    from = to;
    if (!round) return `L${page.at(to)}`;
    const { radius, start: first, end } = arcOfStep(start, to, round);
    return page.arcTo(radius, end - first > 180, round.clockwise, to);
  });
  return `M${page.at(shape.start)}${steps.join('')}Z`;
}

function textElement({ at, text, height, anchor, turned: degrees }: Text, page: Page): string {
  const turn = degrees === 0 ? '' : ` transform="rotate(${number(-degrees)} ${page.x(at)} ${page.y(at)})"`;
  const align = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  const size = page.length(height / CAPITAL);
  return `<text x="${page.x(at)}" y="${page.y(at)}" font-size="${size}"${align}${turn} fill="currentColor" stroke="none">${escapeXml(text)}</text>`;
}

/** Scene coordinates to the page: y down, scaled, from the upper left corner. */
class Page {
  constructor(
    private readonly scale: number,
    private readonly left: number,
    private readonly top: number,
  ) {}

  x(point: Point): string {
    return number((point.x - this.left) * this.scale);
  }
  y(point: Point): string {
    return number((this.top - point.y) * this.scale);
  }
  at(point: Point): string {
    return `${this.x(point)} ${this.y(point)}`;
  }
  length(value: number): string {
    return number(value * this.scale);
  }
  arcTo(radius: number, large: boolean, clockwise: boolean, to: Point): string {
    const r = this.length(radius);
    return `A${r} ${r} 0 ${large ? 1 : 0} ${clockwise ? 1 : 0} ${this.at(to)}`;
  }
}

/** To a ten-thousandth, without a negative zero or an exponent. */
function number(value: number): string {
  const rounded = Math.round(value * 1e4) / 1e4;
  return rounded === 0 ? '0' : String(rounded);
}
