import { leftEnd } from '../head/arcEnds';
import type { Arc, Ends, Head } from '../head/head';
import { ok, type Result } from '../result';
import { roundSteps } from './roundSteps';
import { arc, line, polyline, type Layer, type Point, type Shape, type Step } from './scene';

/** A line of straight and round steps. */
export interface Curve {
  readonly start: Point;
  readonly steps: readonly Step[];
}

/** The curve over an opening at one offset, left to right, with the constant-radius pieces it has, or is run as. */
export interface HeadCurve extends Curve {
  readonly arcs: readonly Arc[];
}

/** Straight pieces a half ellipse is drawn in: at 6 ft span each leaves the curve by less than 0.002 in. */
const ELLIPSE_PIECES = 240;

/** The parallel curve at `offset` from the opening's edge; true also for an ellipse, whose parallel curve is no ellipse. */
export function headCurve(head: Head, offset: number, ends: Ends): Result<HeadCurve> {
  const found = head.arcs(offset, ends);
  if (!found.ok) return found;
  const arcs = found.value;
  if (head.shape === 'elliptical') return ok({ ...ellipse(head.span / 2, head.rise, offset), arcs });
  const [first] = arcs;
  if (first) return ok({ start: leftEnd(first), steps: arcs.flatMap(arcSteps), arcs });
  // Straight.
  const half = head.span / 2 + (ends === 'legs' ? offset : 0);
  return ok({ start: { x: -half, y: offset }, steps: [{ to: { x: half, y: offset } }], arcs });
}

function ellipse(half: number, rise: number, offset: number): Curve {
  const at = (piece: number): Point => {
    // Exact ends: cos and sin of a half turn are off by rounding.
    if (piece === 0) return { x: -half - offset, y: 0 };
    if (piece === ELLIPSE_PIECES) return { x: half + offset, y: 0 };
    const angle = Math.PI * (1 - piece / ELLIPSE_PIECES);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const normal = Math.hypot(rise * cos, half * sin);
    return { x: half * cos + (offset * rise * cos) / normal, y: rise * sin + (offset * half * sin) / normal };
  };
  return { start: at(0), steps: Array.from({ length: ELLIPSE_PIECES }, (_, piece) => ({ to: at(piece + 1) })) };
}

function arcSteps({ center, radius, start, degrees }: Arc): Step[] {
  return roundSteps(center, radius, start, start - degrees);
}

export function endOf(curve: Curve): Point {
  return curve.steps.at(-1)?.to ?? curve.start;
}

/** The same curve from right to left. */
export function reversed(curve: Curve): Curve {
  const corners = [curve.start, ...curve.steps.map((step) => step.to)];
  return {
    start: endOf(curve),
    steps: curve.steps
      .map((step, index): Step => {
        const to = corners[index] ?? curve.start;
        return step.round ? { to, round: { center: step.round.center, clockwise: !step.round.clockwise } } : { to };
      })
      .reverse(),
  };
}

/** A curve as an open line: arcs where it has them, else one polyline. */
export function curveShapes(layer: Layer, head: Head, curve: HeadCurve): Shape[] {
  if (head.shape === 'elliptical') return [polyline(layer, [curve.start, ...curve.steps.map((step) => step.to)])];
  if (head.shape === 'straight') return [line(layer, curve.start, endOf(curve))];
  return arcShapes(layer, curve);
}

export function arcShapes(layer: Layer, { arcs }: HeadCurve): Shape[] {
  return arcs.map(({ center, radius, start, degrees }) => arc(layer, center, radius, start - degrees, start));
}
