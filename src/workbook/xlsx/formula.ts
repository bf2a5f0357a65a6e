/** Text in quotes; a worksheet function of ours; a function younger than the file format. */
const RENAMED =
  /"[^"]*"|\bARCH\.([A-Z]+)|\b(MINIFS|MAXIFS|IFS|SWITCH|TEXTJOIN|CONCAT|IFNA|XOR|ISFORMULA|FORMULATEXT|NUMBERVALUE|UNICHAR|UNICODE)\(/g;

/**
 * A formula as a stored .xlsx holds it: worksheet functions of an add-in are `_xldudf_ARCH_RADIUS(…)`, and functions younger
 * than the file format have a prefix, without which Excel shows #NAME?.
 */
export function storedFormula(formula: string): string {
  return formula.replace(RENAMED, (all: string, own?: string, later?: string) =>
    own !== undefined ? storedName(own) : later !== undefined ? `_xlfn.${later}(` : all,
  );
}

/** `RADIUS` → `_xldudf_ARCH_RADIUS`. */
export function storedName(own: string): string {
  return `_xldudf_ARCH_${own}`;
}

/** The worksheet functions of ours that a formula calls: `["RADIUS"]`; text in quotes is none. */
export function calls(formula: string): string[] {
  if (!formula.includes('ARCH.')) return [];
  return [...formula.matchAll(RENAMED)].flatMap(([, own]) => own ?? []);
}

/** Text in quotes, and the prefixes of a stored formula. */
const STORED = /"[^"]*"|_xldudf_ARCH_|(?:_xlfn\.|_xlws\.|_xlpm\.)+/gi;

/** The formula that a stored one stands for: `_xldudf_ARCH_RADIUS(…)` → `ARCH.RADIUS(…)`, `_xlfn.CONCAT(…)` → `CONCAT(…)`. */
export function enteredFormula(stored: string): string {
  return stored.replace(STORED, (part) => (part.startsWith('"') ? part : /^_xldudf/i.test(part) ? 'ARCH.' : ''));
}
