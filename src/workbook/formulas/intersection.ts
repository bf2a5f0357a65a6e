import { ownName } from './calls';
import { partsOf, textOf } from './lexer';

/** The names of blocks of cells that formulas of ours read. */
const OUR_NAMES = /^(?:Shop(?:_\w+)?|Wood|OnHand|Shares)$/;

/**
 * A formula without the `@` that Excel shows where a workbook came from a program that knows no arrays: `=@ARCH.RADIUS(…)` gives
 * what `=ARCH.RADIUS(…)` gives, and counts as unchanged. The user's own `@` stays.
 */
export function withoutIntersection(formula: string): string {
  if (!formula.includes('@')) return formula;
  const parts = partsOf(formula);
  return textOf(
    parts.filter(({ kind, text }, at) => {
      const next = parts[at + 1];
      if (kind !== 'operator' || text !== '@' || next === undefined) return true;
      return !(next.kind === 'call' ? ownName(next.text) !== null : next.kind === 'name' && OUR_NAMES.test(next.text));
    }),
  );
}
