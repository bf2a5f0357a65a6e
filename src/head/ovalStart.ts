import { gapAt, ovalThrough, type Ellipse, type Oval } from './oval';
import { solveLinear } from './solveLinear';

/** Samples over the quarter: a start need not be exact. */
const SAMPLES = 96;

/**
 * Where the search for the nearest oval begins. Over a short arc the gap grows with the arc's turn cubed times how fast the
 * ellipse's radius changes, so the arcs share out the integral of the cube root of that change; the first and the last,
 * half of a symmetric arc each, did best with 0.7 of a share in trials over all proportions. The radii between are those
 * of least squares. Three arcs start from the bisector construction, whose break is at t = 45°.
 */
export function startingOval(ellipse: Ellipse, pieces: number): Oval | null {
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
