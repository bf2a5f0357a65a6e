/** Text in quotes, or an `@` in front of a function or a name of ours. */
const OURS = /"(?:[^"]|"")*"|@(?=ARCH\.|_xldudf_ARCH_|(?:Shop(?:_\w+)?|Wood|OnHand|Shares)\b)/g;

/**
 * A formula without the `@` that Excel shows where a workbook came from a program that knows no arrays: `=@ARCH.RADIUS(…)` gives
 * what `=ARCH.RADIUS(…)` gives, and counts as unchanged. The user's own `@` stays.
 */
export function withoutIntersection(formula: string): string {
  return formula.includes('@') ? formula.replace(OURS, (part) => (part === '@' ? '' : part)) : formula;
}
