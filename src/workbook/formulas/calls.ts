import { argumentsAt, partsOf, textOf } from './lexer';

/** An ARCH call found in a formula: its name and its arguments as written. */
export interface WrittenCall {
  readonly name: string;
  readonly args: readonly string[];
}

/** A worksheet function of ours, as entered or as a file stores it. */
const OURS = /^(?:_xldudf_ARCH_|ARCH\.)([A-Z0-9]+)$/i;

/** `ARCH.RADIUS` or `_xldudf_ARCH_RADIUS` → RADIUS; null: none of ours. */
export function ownName(call: string): string | null {
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
