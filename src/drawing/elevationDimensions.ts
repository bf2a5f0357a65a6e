import { SHAPES } from '../head/shapes';
import { lengthText } from '../lengthText';
import { endOf } from './curve';
import type { Elevation } from './elevationFigures';
import { radiusLeaders } from './radiusLeaders';
import { dimension, line, text, type Dimension, type Point, type Shape } from './scene';

/** Span, rise, radii, casing width, leg, spring line, and one line of words below. */
export function elevationDimensions(drawn: Elevation): Shape[] {
  const { figures, letters, foot, legShown } = drawn;
  const { head } = figures;
  const row = foot - 3 * letters;
  const half = head.span / 2;
  const { closed } = SHAPES[head.shape];
  const bow = !closed && head.shape !== 'straight';
  // Across the middle of what goes all round; below everything else.
  const middle = head.top / 2;
  const [edge, at, words] = closed ? [middle, middle, foot - 2 * letters] : [foot, row, row - 2.4 * letters];
  const shapes = [
    ...(bow ? [...springLine(drawn), riseDimension(drawn)] : []),
    measure(drawn, 'x', { x: -half, y: edge }, { x: half, y: edge }, at, head.span, 'span '),
    ...faceDimension(drawn),
    ...(legShown > 0 ? [legDimension(drawn, 'left', legShown, figures.leg ?? 0)] : []),
    ...otherLegDimension(drawn),
    ...(figures.wordless ? [] : [text({ x: 0, y: words }, inWords(drawn), letters)]),
  ];
  return [...shapes, ...radiusLeaders(drawn, shapes)];
}

function measure(
  { figures, letters }: Elevation,
  along: Dimension['along'],
  from: Point,
  to: Point,
  at: number,
  value: number,
  name = '',
  beside?: Dimension['beside'],
): Dimension {
  return dimension(
    along,
    from,
    to,
    at,
    { value, text: name + lengthText(value, figures.unit), height: letters },
    beside,
  );
}

function springLine({ figures: { head }, letters }: Elevation): Shape[] {
  const half = head.span / 2;
  return [
    line('spring', { x: -half, y: 0 }, { x: half, y: 0 }),
    text({ x: half - 0.8 * letters, y: -1.5 * letters }, 'spring line', letters, 'end'),
  ];
}

/** On the center line, or where the curve is highest: beside the high side of a head that has one. */
function riseDimension(drawn: Elevation): Shape {
  const { head } = drawn.figures;
  const { highSide } = SHAPES[head.shape];
  const x = highSide ? head.span / 2 - 8 * drawn.letters : 0;
  const top = highSide ? { x: head.span / 2, y: head.rise } : { x, y: head.rise };
  return measure(drawn, 'y', { x, y: 0 }, top, x, head.rise, 'rise ');
}

/** Width of the casing, where the drawing shows it square: below the leg or a level cut, or beside a radial cut. */
function faceDimension(drawn: Elevation): Shape[] {
  const { inside, outside, figures, letters, legShown, foot } = drawn;
  const { head, reveal, face } = figures;
  if (SHAPES[head.shape].closed) return [];
  const row = foot - 1.5 * letters;
  if (legShown > 0) {
    // Below the right leg, or the left one where the right side has none.
    const near = head.span / 2 + reveal;
    const left = drawn.legTops.some(({ side }) => side === 'right') ? near : -near - face;
    return [measure(drawn, 'x', { x: left, y: foot }, { x: left + face, y: foot }, row, face)];
  }
  const [corner, far] = [endOf(inside), endOf(outside)];
  if (Math.abs(Math.hypot(far.x - corner.x, far.y - corner.y) - face) > 1e-6 * face) return [];
  return Math.abs(far.y - corner.y) < 1e-6 * face
    ? [measure(drawn, 'x', corner, far, -1.5 * letters, face)]
    : [measure(drawn, 'points', corner, far, -1.1 * letters, face)];
}

function legDimension(drawn: Elevation, side: 'left' | 'right', shown: number, leg: number): Shape {
  const { figures, letters } = drawn;
  const out = side === 'left' ? -1 : 1;
  const outer = out * (figures.head.span / 2 + figures.reveal + figures.face);
  const x = outer + out * 1.6 * letters;
  return measure(drawn, 'y', { x: outer, y: -shown }, { x: outer, y: 0 }, x, leg, 'leg ', side);
}

/** The right leg, where it stands and is another. */
function otherLegDimension(drawn: Elevation): Shape[] {
  const { figures, otherLegShown, legTops } = drawn;
  const { leg = 0, otherLeg = leg } = figures;
  const stands = otherLegShown > 0 && otherLeg !== leg && legTops.some(({ side }) => side === 'right');
  return stands ? [legDimension(drawn, 'right', otherLegShown, otherLeg)] : [];
}

function inWords({ figures, length }: Elevation): string {
  const { unit, reveal, face } = figures;
  const segments = (figures.segments ?? []).reduce((sum, count) => sum + count, 0);
  return [
    `casing ${lengthText(face, unit)}`,
    `reveal ${lengthText(reveal, unit)}`,
    `outside length ${lengthText(length, unit)}`,
    ...(segments > 0 ? [`${segments} ${segments === 1 ? 'segment' : 'segments'}`] : []),
  ].join(', ');
}
