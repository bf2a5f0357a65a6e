import { polar } from '../angle';
import type { Arc } from '../head/head';
import { lengthText } from '../lengthText';
import { bounds, type Bounds } from './bounds';
import { explode } from './dimension';
import type { Elevation } from './elevationFigures';
import { leader, type Leader, type Point, type Shape } from './scene';

/** Along a piece, from its left end: where an arrow may point, the best place first. */
const PARTS = [0.32, 0.68, 0.24, 0.76, 0.4, 0.6, 0.14, 0.86];
/** Letters from the curve to the words, and below the spring line where there is no room above it. */
const LENGTHS = [3.2, 1.8, 4.6, 6.2];
const DROPS = [0.75, 2, 3.4, 4.8];

/** One leader for each different radius, pointing at the opening's edge from inside, its words clear of all others. */
export function radiusLeaders(drawn: Elevation, others: readonly Shape[]): Leader[] {
  const { opening, figures } = drawn;
  const taken = wordsOf(others).concat(riseLine(others));
  const placed: Leader[] = [];
  for (const piece of opening.arcs) {
    if (placed.some(({ value }) => Math.abs(value - piece.radius) < 1e-6 * value)) continue;
    const value = piece.radius;
    const text = (piece.deviation > 0 ? 'arc R ' : 'R ') + lengthText(value, figures.unit);
    const choices = places(drawn, piece).map(({ tip, tail }) =>
      leader(tip, tail, { value, text, height: drawn.letters }),
    );
    const clear = choices.find((choice) => isClear(choice, taken, figures.head.span / 2)) ?? choices[0];
    if (!clear) continue;
    placed.push(clear);
    taken.push(...wordsOf([clear]));
  }
  return placed;
}

/** Towards the center from the curve; then, the flatter the arch the sooner, down to below the spring line. */
function places({ figures: { head }, letters }: Elevation, piece: Arc): { tip: Point; tail: Point }[] {
  const tips = PARTS.map((part) => polar(piece.center, piece.radius, piece.start - piece.degrees * part));
  const inward = LENGTHS.flatMap((length) =>
    tips.map((tip) => {
      const room = Math.min(length * letters, 0.8 * piece.radius) / piece.radius;
      return {
        tip,
        tail: { x: tip.x + (piece.center.x - tip.x) * room, y: tip.y + (piece.center.y - tip.y) * room },
      };
    }),
  );
  const below = DROPS.flatMap((drop) =>
    tips.map((tip) => {
      const aside = piece.center.x === 0 ? (-tip.x / piece.radius) * 3 : -Math.sign(tip.x) * 2.4;
      return { tip, tail: { x: tip.x + aside * letters, y: -drop * letters } };
    }),
  );
  return head.rise < 7 * letters ? [...below, ...inward] : [...inward, ...below];
}

function isClear(choice: Leader, taken: readonly Bounds[], half: number): boolean {
  return wordsOf([choice]).every(
    (box) => box.left > -half && box.right < half && taken.every((other) => apart(box, other)),
  );
}

function apart(one: Bounds, other: Bounds): boolean {
  return one.right < other.left || other.right < one.left || one.top < other.bottom || other.top < one.bottom;
}

function wordsOf(shapes: readonly Shape[]): Bounds[] {
  return explode(shapes).flatMap((shape) => (shape.kind === 'text' ? [bounds([shape])] : []));
}

/** The rise's dimension line is not to be written across. */
function riseLine(shapes: readonly Shape[]): Bounds[] {
  return shapes.flatMap((shape) =>
    shape.kind === 'dimension' && shape.along === 'y' && shape.beside !== 'left'
      ? [{ left: shape.line, right: shape.line, bottom: shape.from.y, top: shape.to.y }]
      : [],
  );
}
