import { ownName } from './calls';
import { partsOf, textOf } from './lexer';

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
