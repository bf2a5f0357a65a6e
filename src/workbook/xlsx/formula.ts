/** Text in quotes; a worksheet function of ours; a function younger than the file format. */
const RENAMED = /"[^"]*"|\bARCH\.([A-Z]+)|\b(MINIFS|MAXIFS|IFS|TEXTJOIN|CONCAT)\(/g;

/**
 * A formula as a stored .xlsx holds it: worksheet functions of an add-in are `_xldudf_ARCH_RADIUS(…)`, and functions younger
 * than the file format have a prefix, without which Excel shows #NAME?.
 */
export function storedFormula(formula: string): string {
  return formula.replace(RENAMED, (all: string, own?: string, later?: string) =>
    own !== undefined ? `_xldudf_ARCH_${own}` : later !== undefined ? `_xlfn.${later}(` : all,
  );
}
