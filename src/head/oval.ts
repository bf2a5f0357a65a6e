// A quarter of an ellipse beside a chain of tangent arcs. Both are convex and turn from upright at the spring point (a, 0)
// to level at the crown (0, b), so each is known by its support: how far, in the direction of every outward normal, its
// tangent lies from the origin. The greatest distance between two convex curves is the greatest difference of their
// supports (R. Schneider, Convex Bodies, section 1.8), reached where one line is normal to both; and a parallel curve
// adds the offset to both supports, so that the difference is the same at every offset.

/** Half axes: `a` along the spring line, `b` upright. */
export interface Ellipse {
  readonly a: number;
  readonly b: number;
}

/** Tangent arcs from the spring point to the crown, with the ellipse's parameter t where each gives way to the next. */
export interface Oval {
  readonly breaks: readonly number[];
  readonly pieces: readonly { readonly radius: number; readonly x: number; readonly y: number }[];
}

/** Outward unit normal of the ellipse at parameter t, the point (a·cos t, b·sin t), and its support there. */
export function normalAt({ a, b }: Ellipse, t: number): { x: number; y: number; support: number } {
  const x = b * Math.cos(t);
  const y = a * Math.sin(t);
  const size = Math.hypot(x, y);
  return { x: x / size, y: y / size, support: (a * b) / size };
}

/**
 * The one chain with these breaks and these radii between the first and the last: those two follow from beginning upright
 * at the spring point and ending level at the crown. Their radii may come out below 0: then there is no such oval.
 */
export function ovalThrough(ellipse: Ellipse, breaks: readonly number[], innerRadii: readonly number[]): Oval {
  const normals = breaks.map((t) => normalAt(ellipse, t));
  const first = normals[0]!;
  const last = normals[normals.length - 1]!;
  // Each break moves the center by (radius before − radius after)·normal; from (a − first radius, 0) to (0, b − last radius).
  let x = ellipse.a;
  let y = -ellipse.b;
  normals.forEach((normal, at) => {
    const change = (at === 0 ? 0 : innerRadii[at - 1]!) - (at === normals.length - 1 ? 0 : innerRadii[at]!);
    x += change * normal.x;
    y += change * normal.y;
  });
  // Two equations in the two radii; 1 − cos and 1 − sin written so that short arcs keep their digits.
  const firstX = (first.y * first.y) / (1 + first.x);
  const lastY = (last.x * last.x) / (1 + last.y);
  const determinant = last.x * first.y - firstX * lastY;
  const firstRadius = -(x * lastY + y * last.x) / determinant;
  const lastRadius = (y * firstX + x * first.y) / determinant;

  const radii = [firstRadius, ...innerRadii, lastRadius];
  const pieces = [{ radius: firstRadius, x: ellipse.a - firstRadius, y: 0 }];
  for (let at = 1; at < radii.length - 1; at++) {
    const before = pieces[at - 1]!;
    const change = before.radius - radii[at]!;
    const normal = normals[at - 1]!;
    pieces.push({ radius: radii[at]!, x: before.x + change * normal.x, y: before.y + change * normal.y });
  }
  pieces.push({ radius: lastRadius, x: 0, y: ellipse.b - lastRadius });
  return { breaks, pieces };
}

/** Distance of the oval's piece outside the ellipse, along the normal at t (exact where the normals coincide). */
export function gapAt(ellipse: Ellipse, piece: Oval['pieces'][number], t: number): number {
  const normal = normalAt(ellipse, t);
  return piece.radius + piece.x * normal.x + piece.y * normal.y - normal.support;
}

/** An extreme of the gap: which piece it is on, and at which t. */
export interface Extreme {
  readonly piece: number;
  readonly t: number;
}

/** Looked for in this many steps on each piece: a piece has two extremes at most, well apart. */
const STEPS = 24;

/** Where the gap is greatest or least, in order, both ends of the quarter (where it is 0) left out. */
export function extremes(ellipse: Ellipse, oval: Oval): Extreme[] {
  const found: Extreme[] = [];
  oval.pieces.forEach((piece, at) => {
    const from = at === 0 ? 0 : oval.breaks[at - 1]!;
    const to = at === oval.breaks.length ? Math.PI / 2 : oval.breaks[at]!;
    // At the spring point and the crown the gap is level as well as 0: step just clear of them.
    const clear = (to - from) * 1e-6;
    let t = at === 0 ? from + clear : from;
    let slope = gapSlope(ellipse, piece, t);
    for (let step = 1; step <= STEPS; step++) {
      const next = at === oval.breaks.length && step === STEPS ? to - clear : from + ((to - from) * step) / STEPS;
      const nextSlope = gapSlope(ellipse, piece, next);
      if (slope * nextSlope < 0) found.push({ piece: at, t: levelPoint(ellipse, piece, t, next) });
      t = next;
      slope = nextSlope;
    }
  });
  return found;
}

/** Has the sign of the gap's slope: 0 where the ellipse's normal at t passes through the piece's center. */
function gapSlope({ a, b }: Ellipse, piece: Oval['pieces'][number], t: number): number {
  const sine = Math.sin(t);
  const cosine = Math.cos(t);
  return b * piece.y * cosine - a * piece.x * sine + (a - b) * (a + b) * sine * cosine;
}

function levelPoint(ellipse: Ellipse, piece: Oval['pieces'][number], from: number, to: number): number {
  const rising = gapSlope(ellipse, piece, from) < 0;
  let low = from;
  let high = to;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (gapSlope(ellipse, piece, middle) < 0 === rising) low = middle;
    else high = middle;
  }
}

/**
 * Half the perimeter of an ellipse with half axes `a` and `b`, exact to rounding: the arithmetic-geometric mean of a and b
 * carries along the sum that turns it into the elliptic integral (DLMF 19.8.6, there for E(k); the perimeter is 4·a·E).
 *
 * Example: half axes 36 and 24: 95.1926375357435.
 */
export function halfEllipseLength(a: number, b: number): number {
  let mean = Math.max(a, b);
  let geometric = Math.min(a, b);
  // Half of a² + b², less 2ⁿ⁻¹·cₙ² for n = 1, 2, …; c₀² = a² − b² is already taken off, so that nothing large cancels.
  let sum = (a * a + b * b) / 2;
  for (let weight = 1; ; weight *= 2) {
    const half = (mean - geometric) / 2;
    if (half <= 1e-17 * mean) break;
    const next = (mean + geometric) / 2;
    geometric = Math.sqrt(mean * geometric);
    mean = next;
    sum -= weight * half * half;
    // c shrinks quadratically: below this the next one is lost in rounding.
    if (half <= 1e-9 * mean) break;
  }
  return (Math.PI * sum) / mean;
}
