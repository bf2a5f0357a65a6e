import { extremes, gapAt, ovalThrough, type Ellipse, type Extreme, type Oval } from './oval';

export interface NearestOval {
  readonly oval: Oval;
  /** The greatest distance between oval and ellipse. */
  readonly deviation: number;
}

/** Newton's method settles in 3 to 8 rounds; more means that it won't. */
const ROUNDS = 60;
/** Step of the differences that stand for derivatives, in parts of a figure. */
const NUDGE = 1e-4;

/** The flattest ellipse, low beside wide or narrow beside tall, that arcs are looked for. */
const FLATTEST = 1e-4;
/** Down to here the start is near enough. */
const START_HOLDS = 1 / 20;

/**
 * The chain of `pieces` tangent arcs over a quarter of the ellipse, through spring point and crown, whose greatest distance
 * from the ellipse is least. As with any best approximation of this kind the gap then swings between equal extremes of
 * alternating sign, one more of them than there are figures to choose (breaks and inner radii): those equations are solved
 * by Newton's method. Null where it does not settle, and for ellipses flatter than 1 : 10,000.
 */
export function nearestOval(ellipse: Ellipse, pieces: number): NearestOval | null {
  const proportion = Math.min(ellipse.a, ellipse.b) / Math.max(ellipse.a, ellipse.b);
  if (proportion < FLATTEST) return null;
  if (proportion < START_HOLDS) return flatOval(ellipse, proportion, pieces);
  const start = startingOval(ellipse, pieces);
  return start && settle(ellipse, start);
}

/** A flat ellipse's oval is reached from a rounder one's in steps, each begun where the two before it point to. */
function flatOval({ a, b }: Ellipse, proportion: number, pieces: number): NearestOval | null {
  const ellipseOf = (logarithm: number): Ellipse =>
    a > b ? { a, b: a * Math.exp(logarithm) } : { a: b * Math.exp(logarithm), b };
  const target = Math.log(proportion);
  let at = Math.log(START_HOLDS);
  const start = startingOval(ellipseOf(at), pieces);
  let now = start && settle(ellipseOf(at), start);
  let before: { readonly at: number; readonly figures: readonly number[] } | null = null;
  let stride = 0.1;
  while (now && at > target) {
    const next = Math.max(target, at - stride);
    const figures = figuresOf(now.oval);
    const ahead = before ? (next - at) / (at - before.at) : 0;
    const aimed = figures.map((value, index) => value + ahead * (value - (before?.figures[index] ?? value)));
    const reached = settle(ellipseOf(next), ovalOf(ellipseOf(next), aimed, pieces));
    if (reached) {
      before = { at, figures };
      now = reached;
      at = next;
      stride = Math.min(0.5, 2 * stride);
    } else if (stride > 1e-3) stride /= 2;
    else return null;
  }
  return now;
}

function settle(ellipse: Ellipse, start: Oval): NearestOval | null {
  let now = judge(ellipse, start);
  for (let round = 0; now && round < ROUNDS; round++) {
    if (now.uneven <= 1e-10 * now.deviation + 1e-15 * (ellipse.a + ellipse.b)) return now;
    const better: Judged | null = improve(ellipse, now);
    // The last digits are noise: when no step helps any more an even result is the answer.
    if (!better) return now.uneven <= 1e-6 * now.deviation + 1e-13 * (ellipse.a + ellipse.b) ? now : null;
    now = better;
  }
  return null;
}

/** The figures to choose: logarithms of the breaks and of the inner radii, all of which must stay above 0. */
function figuresOf({ breaks, pieces }: Oval): number[] {
  return [...breaks, ...pieces.slice(1, -1).map((piece) => piece.radius)].map(Math.log);
}

function ovalOf(ellipse: Ellipse, figures: readonly number[], pieces: number): Oval {
  const values = figures.map(Math.exp);
  return ovalThrough(ellipse, values.slice(0, pieces - 1), values.slice(pieces - 1));
}

interface Judged extends NearestOval {
  readonly extremes: readonly Extreme[];
  readonly gaps: readonly number[];
  /** Between the greatest and the least of the extremes. */
  readonly uneven: number;
}

/** Null for what is no oval, or one whose gap does not swing as often as the best one's. */
function judge(ellipse: Ellipse, oval: Oval): Judged | null {
  const ends = [0, ...oval.breaks, Math.PI / 2];
  if (ends.some((end, at) => at > 0 && !(end > ends[at - 1]!))) return null;
  if (oval.pieces.some((piece) => !(piece.radius > 0))) return null;
  const found = extremes(ellipse, oval);
  if (found.length !== 2 * oval.breaks.length) return null;
  const gaps = found.map(({ piece, t }) => gapAt(ellipse, oval.pieces[piece]!, t));
  const sizes = gaps.map(Math.abs);
  const deviation = Math.max(...sizes);
  return { oval, extremes: found, gaps, deviation, uneven: deviation - Math.min(...sizes) };
}

function improve(ellipse: Ellipse, from: Judged): Judged | null {
  const figures = figuresOf(from.oval);
  const pieces = from.oval.pieces.length;
  const gapsOf = (oval: Oval) => from.extremes.map(({ piece, t }) => gapAt(ellipse, oval.pieces[piece]!, t));

  // An extreme's size changes with a figure as the gap does at that place: its own shift is of second order.
  const effects = figures.map((_, at) => {
    const nudged = (by: number) =>
      gapsOf(
        ovalOf(
          ellipse,
          figures.map((value, index) => (index === at ? value + by : value)),
          pieces,
        ),
      );
    const after = nudged(NUDGE);
    return nudged(-NUDGE).map((before, extreme) => (after[extreme]! - before) / (2 * NUDGE));
  });
  const equations = from.gaps.map((gap, extreme) => [
    ...effects.map((effect) => effect[extreme]! * Math.sign(gap)),
    -1, // every size is to equal the common one
  ]);
  const step = solveLinear(
    equations,
    from.gaps.map((gap) => -Math.abs(gap)),
  );
  if (!step) return null;
  for (let part = 1; part > 1e-4; part /= 2) {
    const tried = judge(
      ellipse,
      ovalOf(
        ellipse,
        figures.map((value, at) => value + part * step[at]!),
        pieces,
      ),
    );
    if (tried && tried.uneven < from.uneven) return tried;
  }
  return null;
}

/** Samples over the quarter: a start need not be exact. */
const SAMPLES = 96;

/**
 * Where the search for the nearest oval begins. Over a short arc the gap grows with the arc's turn cubed times how fast the
 * ellipse's radius changes, so the arcs share out the integral of the cube root of that change; the first and the last,
 * half of a symmetric arc each, did best with 0.7 of a share in trials over all proportions. The radii between are those
 * of least squares. Three arcs start from the bisector construction, whose break is at t = 45°.
 */
function startingOval(ellipse: Ellipse, pieces: number): Oval | null {
  if (pieces === 2) return ovalThrough(ellipse, [Math.PI / 4], []);
  const shares = pieces - 2 + 2 * 0.7;
  const breaks = Array.from({ length: pieces - 1 }, (_, at) => (at + 0.7) / shares);
  return leastSquares(ellipse, atShares(ellipse, breaks));
}

/** The parameters t up to which the given fractions of the integral have accrued. */
function atShares({ a, b }: Ellipse, fractions: readonly number[]): number[] {
  const step = Math.PI / 2 / SAMPLES;
  const sums = [0];
  for (let at = 0; at < SAMPLES; at++) {
    const t = (at + 0.5) * step;
    const size = Math.hypot(b * Math.cos(t), a * Math.sin(t));
    // Radius size³/ab changes by 3·size·(a² − b²)·sin t·cos t/ab for each dt, while the curve turns by ab/size².
    const turn = (a * b) / (size * size);
    const change = (3 * size * Math.abs(a * a - b * b) * Math.sin(t) * Math.cos(t)) / (a * b);
    sums.push(sums[at]! + Math.cbrt(change / turn) * turn);
  }
  const whole = sums[SAMPLES]!;
  return fractions.map((fraction) => {
    const wanted = fraction * whole;
    const at = sums.findIndex((sum) => sum > wanted) - 1;
    return (at + (wanted - sums[at]!) / (sums[at + 1]! - sums[at]!)) * step;
  });
}

/** The gap is linear in the inner radii, so that its least squares over the quarter are a small linear system. */
function leastSquares(ellipse: Ellipse, breaks: readonly number[]): Oval | null {
  const count = breaks.length - 1;
  const none = ovalThrough(ellipse, breaks, new Array<number>(count).fill(0));
  const units = Array.from({ length: count }, (_, unit) =>
    ovalThrough(
      ellipse,
      breaks,
      Array.from({ length: count }, (_, at) => (at === unit ? 1 : 0)),
    ),
  );
  const matrix = units.map(() => new Array<number>(count).fill(0));
  const right = new Array<number>(count).fill(0);
  for (let sample = 0; sample < SAMPLES; sample++) {
    const t = ((sample + 0.5) * Math.PI) / 2 / SAMPLES;
    const piece = breaks.filter((end) => end < t).length;
    const gap = gapAt(ellipse, none.pieces[piece]!, t);
    const effects = units.map((unit) => gapAt(ellipse, unit.pieces[piece]!, t) - gap);
    effects.forEach((effect, row) => {
      right[row]! -= effect * gap;
      effects.forEach((other, column) => (matrix[row]![column]! += effect * other));
    });
  }
  const radii = solveLinear(matrix, right);
  return radii && ovalThrough(ellipse, breaks, radii);
}

/** Solves a small square system by elimination with row exchange; null where it has no single answer. */
function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const rows = matrix.map((row, at) => [...row, right[at]!]);
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    }
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    const top = rows[column]!;
    if (!top[column]) return null;
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const factor = rows[row]![column]! / top[column]!;
      for (let at = column; at <= size; at++) rows[row]![at]! -= factor * top[at]!;
    }
  }
  return rows.map((row, at) => row[size]! / row[at]!);
}
