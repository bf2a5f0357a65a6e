import { tokenize } from '@borgar/fx';

/** What one part of a formula is, in its order; the parts joined are the formula again. */
export interface Part {
  readonly kind: Kind;
  readonly text: string;
}

/**
 * - call: a function's name before its parenthesis
 * - name: a defined name
 * - cells: `B12`, `$B:C` or `3:4`, without its sheet; each corner of `B1:C4` is a part of its own
 * - sheet: a sheet's name before its `!`
 * - text: in its quotes
 */
export type Kind = 'call' | 'name' | 'cells' | 'sheet' | 'text' | 'number' | 'logical' | 'operator' | 'other';

/** The library's kinds by ours. */
const KINDS: Readonly<Record<string, Kind>> = {
  func: 'call',
  range_named: 'name',
  range: 'cells',
  range_beam: 'cells',
  range_ternary: 'cells',
  context: 'sheet',
  context_quote: 'sheet',
  string: 'text',
  number: 'number',
  bool: 'logical',
  operator: 'operator',
};

/** The parts of a formula, with or without its `=`. Example: `A1*2` is the cells `A1`, the operator `*` and the number 2. */
export function partsOf(formula: string): Part[] {
  const tokens = tokenize(formula, { mergeRefs: false, withLocation: false });
  return tokens.map(({ type, value }) => ({ kind: KINDS[type] ?? 'other', text: value }));
}

export function textOf(parts: readonly Part[]): string {
  return parts.map(({ text }) => text).join('');
}

/** What stands in the parentheses that open at `open`, split at the commas of their own level, and where they close: the end, where they never do. */
export function argumentsAt(parts: readonly Part[], open: number): { args: (readonly Part[])[]; close: number } {
  const args: (readonly Part[])[] = [];
  let depth = 0;
  let from = open + 1;
  for (let at = from; at < parts.length; at++) {
    const { kind, text } = parts[at]!;
    if (kind !== 'operator') continue;
    if (depth === 0 && (text === ',' || text === ')')) {
      args.push(parts.slice(from, at));
      from = at + 1;
    }
    if (text === '(' || text === '{') depth++;
    if (text === ')' || text === '}') depth--;
    if (depth < 0) return { args, close: at };
  }
  return { args: [...args, parts.slice(from)], close: parts.length };
}
