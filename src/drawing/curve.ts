import type { Arc, Ends, Head, HeadOptions, Piece } from '../head/head';
import { isArc, leftEnd } from '../head/pieces';
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
  readonly pieces: readonly Piece[];
  readonly arcs: readonly Arc[];
  /** The pieces only stand for the curve, which is drawn through points. */
  readonly fitted: boolean;
}

/** The parallel curve at `offset` from the opening's edge; true also for an ellipse, whose parallel curve is no ellipse. */
export function headCurve(head: Head, offset: number, ends: Ends, options: HeadOptions = {}): Result<HeadCurve> {
  const found = head.pieces(offset, ends, options);
  if (!found.ok) return found;
  const pieces = found.value;
  const arcs = pieces.filter(isArc);
  const points = head.points(offset, ends);
  if (!points.ok) return points;
  if (points.value !== null) {
    const [start, ...steps] = points.value.map((to) => ({ to }));
    return ok({ start: start!.to, steps, pieces, arcs, fitted: true });
  }
  return ok({ start: leftEnd(pieces[0]!), steps: pieces.flatMap(pieceSteps), pieces, arcs, fitted: false });
}

function pieceSteps(piece: Piece): Step[] {
  if (piece.kind === 'straight') return [{ to: piece.to }];
  return roundSteps(piece.center, piece.radius, piece.start, piece.start - piece.degrees);
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

/** A curve as an open line: its pieces where they are the curve, else one polyline. */
export function curveShapes(layer: Layer, curve: HeadCurve): Shape[] {
  if (curve.fitted) return [polyline(layer, [curve.start, ...curve.steps.map((step) => step.to)])];
  return pieceShapes(layer, curve);
}

export function pieceShapes(layer: Layer, { pieces }: HeadCurve): Shape[] {
  return pieces.map((piece) => {
    if (piece.kind === 'straight') return line(layer, piece.from, piece.to);
    const { center, radius, start, degrees } = piece;
    return arc(layer, center, radius, start - degrees, start);
  });
}
