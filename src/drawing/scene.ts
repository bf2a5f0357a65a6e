import type { Unit } from '../unit';

/** A drawing as plain values: what is where, on which layer. Writers turn it into SVG and DXF. x to the right, y up. */
export interface Scene {
  readonly title: string;
  /** What the picture shows, for someone who can't see it. */
  readonly description: string;
  /** The unit of every coordinate; one drawing unit is one inch or one millimeter of the real thing. */
  readonly unit: Unit;
  readonly shapes: readonly Shape[];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What a line stands for; each writer maps the names to its own colors, weights and dashes. */
export type Layer =
  | 'opening' // edge of the jamb
  | 'casing' // finished molding
  | 'leg'
  | 'joint' // between segments, and between head and leg
  | 'grain'
  | 'blank' // glued ring before molding
  | 'board' // stock the blanks are cut from
  | 'guide'
  | 'screw'
  | 'center'
  | 'bed'
  | 'spring' // spring line
  | 'fit' // constant-radius arcs that stand for another curve
  | 'dimension'
  | 'label';

export interface Line {
  readonly kind: 'line';
  readonly layer: Layer;
  readonly from: Point;
  readonly to: Point;
}

/** Runs counterclockwise from `start` to `end`, degrees counterclockwise from +x; end > start, at most 360 apart. */
export interface CircleArc {
  readonly kind: 'arc';
  readonly layer: Layer;
  readonly center: Point;
  readonly radius: number;
  readonly start: number;
  readonly end: number;
}

export interface Circle {
  readonly kind: 'circle';
  readonly layer: Layer;
  readonly center: Point;
  readonly radius: number;
}

export interface Polyline {
  readonly kind: 'polyline';
  readonly layer: Layer;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** One step of an outline: straight to `to`, or round `center` (at most a half turn, so that the ends say which way). */
export interface Step {
  readonly to: Point;
  readonly round?: { readonly center: Point; readonly clockwise: boolean };
}

/** A closed outline of straight and round steps: the face of a board, a segment, a guide. */
export interface Outline {
  readonly kind: 'outline';
  readonly layer: Layer;
  readonly start: Point;
  readonly steps: readonly Step[];
  /** Tinted where the writer can. */
  readonly filled: boolean;
}

export interface Text {
  readonly kind: 'text';
  readonly layer: Layer;
  /** Where the base line meets the anchor. */
  readonly at: Point;
  readonly text: string;
  /** Height of a capital letter. */
  readonly height: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees counterclockwise. */
  readonly turned: number;
}

/** A figure as it stands in a drawing. */
export interface Figure {
  /** What the core gave; `text` is how it is written. */
  readonly value: number;
  readonly text: string;
  readonly height: number;
}

/** A dimension between two points, measured along x, along y or straight between them. */
export interface Dimension extends Figure {
  readonly kind: 'dimension';
  readonly layer: 'dimension';
  readonly along: 'x' | 'y' | 'points';
  readonly from: Point;
  readonly to: Point;
  /** Where the dimension line runs: its y (along x), its x (along y), or its distance to the left of from→to. */
  readonly line: number;
  /** Along y: the side of the dimension line the words stand on; default right. */
  readonly beside?: 'left' | 'right';
}

/** An arrow on a curve with its radius (or a note) at the tail. */
export interface Leader extends Figure {
  readonly kind: 'leader';
  readonly layer: 'dimension';
  readonly tip: Point;
  readonly tail: Point;
}

export type Primitive = Line | CircleArc | Circle | Polyline | Outline | Text;
export type Shape = Primitive | Dimension | Leader;

export function line(layer: Layer, from: Point, to: Point): Line {
  return { kind: 'line', layer, from, to };
}

export function arc(layer: Layer, center: Point, radius: number, start: number, end: number): CircleArc {
  return { kind: 'arc', layer, center, radius, start, end };
}

export function circle(layer: Layer, center: Point, radius: number): Circle {
  return { kind: 'circle', layer, center, radius };
}

export function polyline(layer: Layer, points: readonly Point[], closed = false): Polyline {
  return { kind: 'polyline', layer, points, closed };
}

export function outline(layer: Layer, start: Point, steps: readonly Step[], filled = true): Outline {
  return { kind: 'outline', layer, start, steps, filled };
}

/** A closed outline of straight edges. */
export function polygon(layer: Layer, points: readonly Point[], filled = true): Outline {
  const [start = { x: 0, y: 0 }, ...rest] = points;
  return outline(
    layer,
    start,
    [...rest, start].map((to) => ({ to })),
    filled,
  );
}

export function text(
  at: Point,
  words: string,
  height: number,
  anchor: Text['anchor'] = 'middle',
  turned = 0,
  layer: Layer = 'label',
): Text {
  return { kind: 'text', layer, at, text: words, height, anchor, turned };
}

export function dimension(
  along: Dimension['along'],
  from: Point,
  to: Point,
  at: number,
  figure: Figure,
  beside?: Dimension['beside'],
): Dimension {
  return { kind: 'dimension', layer: 'dimension', along, from, to, line: at, ...figure, ...(beside && { beside }) };
}

export function leader(tip: Point, tail: Point, figure: Figure): Leader {
  return { kind: 'leader', layer: 'dimension', tip, tail, ...figure };
}
