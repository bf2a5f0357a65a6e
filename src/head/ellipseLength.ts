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
