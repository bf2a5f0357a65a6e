import { MOST_SEGMENTS } from '../blank/ring';
import { legTops, mitersLegs, type LegTop } from '../head/joints';
import { SHAPES } from '../head/shapes';
import { straightReach } from '../head/straight';
import { lengthText } from '../lengthText';
import { notNegative, positive, wholeBetween } from '../require';
import { ok, type Result } from '../result';
import { unitName } from '../unit';
import { curveShapes, endOf, headCurve, pieceShapes, reversed, type Curve } from './curve';
import { elevationDimensions } from './elevationDimensions';
import type { Elevation, ElevationFigures } from './elevationFigures';
import { segmentJoints } from './joints';
import { line, outline, polygon, polyline, type Point, type Scene, type Shape } from './scene';

/** The opening seen from the front: jamb edge, casing, legs, spring line, joints and dimensions. Any head. */
export function elevationScene(figures: ElevationFigures): Result<Scene> {
  const drawn = elevation(figures);
  if (!drawn.ok) return drawn;
  const { head, unit, mark } = figures;
  const length = (value: number) => lengthText(value, unit);
  return ok({
    title: `${mark ? `${mark}: ` : ''}${head.shape} head with casing`,
    description:
      `Front view of a ${head.shape} opening: span ${length(head.span)}${head.rise > 0 ? `, rise ${length(head.rise)}` : ''}, ` +
      `casing ${length(figures.face)} wide with a reveal of ${length(figures.reveal)}, in ${unitName(unit)}.`,
    unit,
    shapes: [
      ...legs(drawn.value),
      ...headCasing(drawn.value),
      ...openingEdge(drawn.value),
      ...segmentJoints(drawn.value),
      ...fittedArcs(drawn.value),
      ...elevationDimensions(drawn.value),
    ],
  });
}

/** Legs longer than this part of the span are drawn broken: the head is what the picture is about. */
const LONGEST_LEG_SHOWN = 0.5;
const JAMB_STUB = 0.16;

function elevation(figures: ElevationFigures): Result<Elevation> {
  const { head, reveal, face, ends, leg = 0, otherLeg = leg, segments = [], lettersAcross = 36 } = figures;
  const refusal =
    notNegative('reveal', reveal) ??
    positive('face', face) ??
    notNegative('leg', leg) ??
    notNegative('other leg', otherLeg) ??
    positive('letters across', lettersAcross) ??
    segments.map((count) => wholeBetween('segments', count, 1, MOST_SEGMENTS)).find((found) => found !== null);
  if (refusal) return refusal;
  const outer = reveal + face;
  const reach = straightReach(ends, reveal, face, figures.overhang ?? 0);
  const options = {
    ...(figures.arcs === undefined ? {} : { arcs: figures.arcs }),
    ...(reach === undefined ? {} : { reach }),
  };
  // The jamb's own edge ends on its radial lines, but where a leg runs up to the crown it does so to the jamb line.
  const opening = headCurve(head, 0, head.shape === 'straight' ? 'square' : ends, options);
  if (!opening.ok) return opening;
  const inside = headCurve(head, reveal, ends, options);
  if (!inside.ok) return inside;
  const outside = headCurve(head, outer, ends, options);
  if (!outside.ok) return outside;
  const length = head.length(outer, ends, options);
  if (!length.ok) return length;
  const tops = legTops(head, reveal, face, ends, options);
  if (!tops.ok) return tops;
  const closed = SHAPES[head.shape].closed;
  const shown = (length: number) => (closed ? 0 : Math.min(length, LONGEST_LEG_SHOWN * head.span));
  // A leg that is shorter than the other is drawn shorter, also where the longer one is broken.
  const longest = Math.max(leg, otherLeg);
  const scale = longest > 0 ? shown(longest) / longest : 0;
  const legShown = leg === otherLeg ? shown(leg) : scale * leg;
  const otherLegShown = leg === otherLeg ? legShown : scale * otherLeg;
  const width = head.span + 2 * outer;
  return ok({
    figures,
    opening: opening.value,
    inside: inside.value,
    outside: outside.value,
    length: length.value,
    legTops: tops.value,
    letters: Math.max(width, 0.75 * (head.top + outer + Math.max(legShown, otherLegShown))) / lettersAcross,
    legShown,
    otherLegShown,
    broken: shown(longest) < longest,
    foot: closed ? -outer : Math.min(-legShown, -otherLegShown, -JAMB_STUB * head.span, lowest(outside.value)),
  });
}

function lowest(curve: Curve): number {
  return Math.min(curve.start.y, endOf(curve).y);
}

function headCasing({ inside, outside }: Elevation): Shape[] {
  const back = reversed(outside);
  return [outline('casing', inside.start, [...inside.steps, { to: back.start }, ...back.steps, { to: inside.start }])];
}

function openingEdge({ figures: { head }, opening, foot }: Elevation): Shape[] {
  const edge = curveShapes('opening', opening);
  if (SHAPES[head.shape].closed) return edge;
  const [left, right] = [opening.start, endOf(opening)];
  return [
    ...edge,
    line('opening', left, { x: -head.span / 2, y: foot }),
    line('opening', right, { x: head.span / 2, y: foot }),
  ];
}

function legs(drawn: Elevation): Shape[] {
  const { figures, broken, letters } = drawn;
  return drawn.legTops.flatMap((leg): Shape[] => {
    const legShown = leg.side === 'left' ? drawn.legShown : drawn.otherLegShown;
    if (legShown === 0) return [];
    const out = leg.side === 'left' ? -1 : 1;
    const near = out * (figures.head.span / 2 + figures.reveal);
    const far = near + out * figures.face;
    const [nearTop, farTop] = topCorners(drawn, leg);
    const sides = [
      { x: near, y: -legShown },
      { x: near, y: nearTop },
      { x: far, y: farTop },
      { x: far, y: -legShown },
    ];
    if (!broken) return [polygon('leg', sides)];
    const zigzag = breakLine(far, near, -legShown, letters);
    return [polygon('leg', [...sides, ...zigzag.slice(1, -1)]), polyline('leg', zigzag)];
  });
}

/** Heights of a leg's two upper corners, jamb side first; under a slanting end that isn't mitered it is cut along with that. */
function topCorners({ figures, inside, outside }: Elevation, { side, ...top }: LegTop): [number, number] {
  const { head, ends, reveal, face } = figures;
  if (head.shape === 'straight' || mitersLegs(head, ends)) return [top.inside, top.outside];
  const [low, high] = side === 'left' ? [inside.start, outside.start] : [endOf(inside), endOf(outside)];
  const slope = (high.y - low.y) / Math.abs(high.x - low.x);
  if (!Number.isFinite(slope) || Math.abs(slope) < 1e-12) return [0, 0];
  return [slope * reveal, slope * (reveal + face)];
}

function breakLine(from: number, to: number, y: number, letters: number): Point[] {
  const step = (to - from) / 4;
  const lift = Math.min(letters * 0.5, Math.abs(step));
  return [
    { x: from, y },
    { x: from + 1.5 * step, y },
    { x: from + 1.8 * step, y: y + lift },
    { x: from + 2.2 * step, y: y - lift },
    { x: from + 2.5 * step, y },
    { x: to, y },
  ];
}

/** Where arcs only stand for the true curve, they are drawn on it with the places where they join. */
function fittedArcs({ inside, outside }: Elevation): Shape[] {
  if (!inside.arcs.some((piece) => piece.deviation > 0)) return [];
  return [...pieceShapes('fit', inside), ...pieceShapes('fit', outside)];
}
