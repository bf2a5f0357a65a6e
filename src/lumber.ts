import { notNegative, positive } from './require';
import { ok, type Result } from './result';
import { bare, type Inches } from './unit';

/**
 * Board feet, all sizes in inches and more than 0: thickness·width·length·quantity/144, thickness under 1 counted as 1, not
 * rounded. The quantity may be 0 and need not be whole.
 *
 * Example: 2 × 4 × 96: 5.3333.
 * Source: American Softwood Lumber Standard PS 20-20, section 2.2; the rule for thin stock is common practice.
 */
export function boardFeet(thick: Inches, wide: Inches, long: Inches, quantity = 1): Result<number> {
  const [thickness, width, length] = [bare(thick), bare(wide), bare(long)];
  const refusal =
    positive('thickness', thickness) ??
    positive('width', width) ??
    positive('length', length) ??
    notNegative('quantity', quantity);
  return refusal ?? ok((Math.max(thickness, 1) * width * length * quantity) / 144);
}
