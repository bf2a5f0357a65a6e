import { argumentsAt, partsOf, textOf } from './lexer';

/* Calls of our functions in a formula: as they are found, as a file stores them, and as Excel shows them. */

/** An ARCH call found in a formula: its name and its arguments as written. */
export interface WrittenCall {
  readonly name: string;
  readonly args: readonly string[];
}

/** A worksheet function of ours, as entered or as a file stores it. */
const OURS = /^(?:_xldudf_ARCH_|ARCH\.)([A-Z0-9]+)$/i;

/** `ARCH.RADIUS` or `_xldudf_ARCH_RADIUS` → RADIUS; null: none of ours. */
function ownName(call: string): string | null {
  return OURS.exec(call)?.[1]?.toUpperCase() ?? null;
}

/**
 * The ARCH calls of a formula, the innermost last, each with its arguments split at the commas of its own level. A formula that
 * never closes a parenthesis has the arguments up to its end.
 */
export function callsIn(formula: string): readonly WrittenCall[] {
  const parts = partsOf(formula);
  return parts.flatMap(({ kind, text }, at): WrittenCall[] => {
    const name = kind === 'call' ? ownName(text) : null;
    if (name === null) return [];
    const open = parts.findIndex((part, place) => place > at && part.text === '(');
    const args = argumentsAt(parts, open).args.map((arg) => textOf(arg).trim());
    return [{ name, args: args.length === 1 && args[0] === '' ? [] : args }];
  });
}

/** Functions younger than the file format. */
const LATER = new Set(
  'MINIFS MAXIFS IFS SWITCH TEXTJOIN CONCAT IFNA XOR ISFORMULA FORMULATEXT NUMBERVALUE UNICHAR UNICODE'.split(' '),
);

/**
 * A formula as a stored .xlsx holds it: worksheet functions of an add-in are `_xldudf_ARCH_RADIUS(…)`, and functions younger
 * than the file format have a prefix, without which Excel shows #NAME?.
 */
export function storedFormula(formula: string): string {
  const parts = partsOf(formula).map((part) => {
    if (part.kind !== 'call') return part;
    const own = ownName(part.text);
    if (own !== null) return { ...part, text: storedName(own) };
    return LATER.has(part.text) ? { ...part, text: `_xlfn.${part.text}` } : part;
  });
  return textOf(parts);
}

/** `RADIUS` → `_xldudf_ARCH_RADIUS`. */
export function storedName(own: string): string {
  return `_xldudf_ARCH_${own}`;
}

/** The worksheet functions of ours that a formula calls: `["RADIUS"]`; text in quotes is none. */
export function calls(formula: string): string[] {
  if (!formula.includes('ARCH.')) return [];
  return partsOf(formula).flatMap(({ kind, text }) => (kind === 'call' ? (ownName(text) ?? []) : []));
}

/** The prefixes of names in a stored formula. */
const PREFIXES = /^(?:_xlfn\.|_xlws\.|_xlpm\.)+/i;

/** The formula that a stored one stands for: `_xldudf_ARCH_RADIUS(…)` → `ARCH.RADIUS(…)`, `_xlfn.CONCAT(…)` → `CONCAT(…)`. */
export function enteredFormula(stored: string): string {
  if (!stored.includes('_xl')) return stored;
  const parts = partsOf(stored).map((part) => {
    if (part.kind !== 'call' && part.kind !== 'name') return part;
    const own = ownName(part.text);
    return { ...part, text: own === null ? part.text.replace(PREFIXES, '') : `ARCH.${own}` };
  });
  return textOf(parts);
}

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
