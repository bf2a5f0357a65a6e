import { insideOffset } from '../insideOffset';
import { ok, type Result } from '../result';
import { ellipseSizes, halfEllipse, moved, parallelPoint, parallelPoints } from './ellipses';
import type { Arc, ArcEnds, Head, HeadEnd } from './head';
import { arcPiece, headOfPieces, UPRIGHT } from './pieces';
import type { Ellipse } from './oval';
import { riseMissing, sameLength, type Shape } from './shape';

/**
 * The left half of half an ellipse: from the spring point, where it stands upright, to its crown over the right jamb. Length
 * a quarter of the perimeter + offset·π/2. The high side stops plumb at the jamb line, and with legs the parallel curve runs
 * on to its own leg, by integration.
 *
 * Example: span 36, rise 18: 43.5980; 3-11/16 outside 49.3903, with legs 3.6890 more.
 */
function quarterEllipseHead(span: number, rise: number): Result<Head> {
  const refusal = ellipseSizes(span, rise);
  if (refusal) return refusal;
  const half = halfEllipse({ a: span, b: rise });
  const { ellipse } = half;
  const jamb = span / 2;
  /** The angle past the crown at which the parallel curve stands at the leg. */
  const past = (offset: number, ends: ArcEnds): Result<number> =>
    ends === 'legs'
      ? (insideOffset(offset, reachInside(ellipse), 'where the high leg passes the curve') ??
        ok(angleAtLeg(ellipse, offset)))
      : ok(0);
  return ok(
    headOfPieces(
      { shape: 'quarter ellipse', span, rise, radius: null, springs: [UPRIGHT, null] },
      (offset, ends, { arcs }) => {
        const whole = half.arcs(offset, arcs);
        if (!whole.ok) return whole;
        const angle = past(offset, ends);
        if (!angle.ok) return angle;
        const left = whole.value.slice(0, (whole.value.length - 1) / 2);
        const crown = whole.value[left.length]!;
        const own = crown.radius - offset;
        const on = ends === 'legs' ? Math.atan2(offset, Math.sqrt(own * (own + 2 * offset))) : 0;
        const turn = ((crown.start - 90) * Math.PI) / 180 + on;
        const last: Arc = arcPiece(crown.radius, turn, crown.center, (crown.start * Math.PI) / 180, crown.deviation);
        return ok([...left, last].map((arc) => moved(arc, jamb, 0)));
      },
      {
        length: (offset, ends) => {
          const whole = half.length(offset);
          if (!whole.ok) return whole;
          const angle = past(offset, ends);
          return angle.ok ? ok(whole.value / 2 + lengthPast(ellipse, offset, angle.value)) : angle;
        },
        ends: (offset, ends): Result<readonly [HeadEnd, HeadEnd]> => {
          const angle = past(offset, ends);
          if (!angle.ok) return angle;
          const sine = Math.sin(angle.value);
          const cosine = Math.cos(angle.value);
          const normal = Math.hypot(rise * sine, span * cosine);
          const { y } = parallelPoint(ellipse, offset, Math.PI / 2 - angle.value);
          return ok([
            { x: -jamb - offset, y: 0, normal: { x: -1, y: 0 } },
            {
              x: jamb + (ends === 'legs' ? offset : 0),
              y,
              normal: { x: (rise * sine) / normal, y: (span * cosine) / normal },
            },
          ]);
        },
        points: (offset, ends) => {
          const angle = past(offset, ends);
          const to = Math.PI / 2 - (angle.ok ? angle.value : 0);
          const points = parallelPoints(ellipse, offset, Math.PI, to).map(({ x, y }) => ({ x: x + jamb, y }));
          return [{ x: -jamb - offset, y: 0 }, ...points.slice(1)];
        },
      },
    ),
  );
}

/** Inside, the leg can be followed up to half the crown's radius, as under a circle. */
function reachInside({ a, b }: Ellipse): number {
  return Math.min((a * a) / b, (b * b) / a) / 2;
}

/** u, where a·sin u + d·b·sin u/√(b²·sin²u + a²·cos²u) = d, from the crown: the left side rises with u. */
export function angleAtLeg({ a, b }: Ellipse, offset: number): number {
  if (offset === 0) return 0;
  const beyond = (u: number) => {
    const [sine, cosine] = [Math.sin(u), Math.cos(u)];
    return a * sine + (offset * b * sine) / Math.hypot(b * sine, a * cosine) - offset;
  };
  let [low, high] = offset > 0 ? [0, Math.PI / 2] : [-Math.PI / 2, 0];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (beyond(middle) < 0) low = middle;
    else high = middle;
  }
}

/** Gauss–Legendre points and weights on [−1, 1], both signs of each point, 10 of them: exact to rounding on the short, smooth pieces taken here. */
export const GAUSS = [
  [0.1488743389816312, 0.2955242247147529],
  [0.4333953941292472, 0.2692667193099963],
  [0.6794095682990244, 0.219086362515982],
  [0.8650633666889845, 0.1494513491505806],
  [0.9739065285171717, 0.0666713443086881],
] as const;
const PARTS = 16;

/** Length of the parallel curve from the crown to the ellipse's angle u past it: ∫√(a²·cos² + b²·sin²) + offset·turn. */
function lengthPast({ a, b }: Ellipse, offset: number, u: number): number {
  if (u === 0) return 0;
  const part = u / PARTS / 2;
  let sum = 0;
  for (let at = 0; at < PARTS; at++) {
    const middle = (2 * at + 1) * part;
    for (const [point, weight] of GAUSS) {
      for (const t of [middle - point * part, middle + point * part]) {
        sum += weight * part * Math.hypot(a * Math.cos(t), b * Math.sin(t));
      }
    }
  }
  return sum + offset * Math.atan2(b * Math.sin(u), a * Math.cos(u));
}

export const QUARTER_ELLIPSE: Shape = {
  name: 'quarter ellipse',
  rings: 'fitted',
  spellings:
    'quarterellipse quarterelliptical quarterellip qtrellipse qtrelliptical 1/4ellipse 1/4elliptical 1/4ellip quarteroval rakedellipse',
  rise: {
    means: 'height of the high end above the spring line',
    needs: 'Needs a rise: more than 0, and not the span, which is a quarter round.',
    fits: (span, rise) => rise > 0 && !sameLength(rise, span),
    ofSpan: null,
    misfit: (span, rise, _tolerance, say) =>
      rise > 3 * span ? `A rise of ${say(rise)} over a width of ${say(span)} can't be right.` : null,
  },
  haunch: null,
  closed: false,
  highSide: true,
  plumb: true,
  words: {
    length: 'A quarter of the ellipse and a quarter of a circle of the distance from it',
    radius: (say, _span, _rise, radius) =>
      `The arc that, with its neighbors, strays least from the true ellipse: ${say(radius)}.`,
    angle: 'From one end of the piece to the other, seen from its center.',
  },
  make: (span, rise) => (rise === null ? riseMissing('quarter ellipse') : quarterEllipseHead(span, rise)),
  example: { span: 30, rise: 16, ends: 'legs', leg: 12, segments: [2, 2] },
};
