import { cutText, plainLength } from './cuttext';
import type { StockPlan } from './plan';

/** One sentence: what buying less than the plan would need. */
export function buyingLess(plan: StockPlan, lengthText: (length: number) => string = plainLength): string {
  const emptiest = [...plan.plan].sort((a, b) => filled(a.cuts) / a.stock - filled(b.cuts) / b.stock)[0]!;
  const without = `one board of ${lengthText(emptiest.stock)} less would leave out ${cutText(emptiest.cuts, lengthText)}`;
  if (plan.proven)
    return `nothing that ${plan.measure === 'boards' ? 'is fewer' : 'costs less'} holds all the pieces; ${without}`;
  const gap =
    plan.measure === 'boards'
      ? `${plan.gap} ${plan.gap === 1 ? 'board' : 'boards'}`
      : plan.gap.toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: false });
  return `no plan takes more than ${gap} less than this one; ${without}`;
}

function filled(cuts: readonly (readonly [length: number, count: number])[]): number {
  return cuts.reduce((sum, [length, count]) => sum + length * count, 0);
}
