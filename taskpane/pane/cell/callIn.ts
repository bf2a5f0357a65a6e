/** An ARCH call found in a formula: its name and its arguments as written. */
export interface WrittenCall {
  readonly name: string;
  readonly args: readonly string[];
}

/**
 * The ARCH calls of a formula, the innermost last, each with its arguments split at the commas of its own level. Text in
 * quotes and quoted sheet names are passed over. A formula that never closes a parenthesis has the arguments up to its end.
 */
export function callsIn(formula: string): readonly WrittenCall[] {
  const calls: WrittenCall[] = [];
  const name = /(?:_xldudf_ARCH_|ARCH\.)([A-Z0-9]+)\s*\(/giy;
  for (let at = 0; at < formula.length; at += 1) {
    const character = formula[at];
    if (character === '"' || character === "'") {
      at = closingQuote(formula, at);
      continue;
    }
    name.lastIndex = at;
    const found = name.exec(formula);
    if (!found) continue;
    calls.push({ name: (found[1] ?? '').toUpperCase(), args: argumentsFrom(formula, at + found[0].length) });
    at += found[0].length - 1;
  }
  return calls;
}

function argumentsFrom(formula: string, start: number): readonly string[] {
  const args: string[] = [];
  let depth = 0;
  let from = start;
  for (let at = start; at < formula.length; at += 1) {
    const character = formula[at] ?? '';
    if (character === '"' || character === "'") at = closingQuote(formula, at);
    else if ('({['.includes(character)) depth += 1;
    else if (')}]'.includes(character)) {
      if (depth === 0) return done(args, formula.slice(from, at));
      depth -= 1;
    } else if (character === ',' && depth === 0) {
      args.push(formula.slice(from, at).trim());
      from = at + 1;
    }
  }
  return done(args, formula.slice(from));
}

function done(args: readonly string[], last: string): readonly string[] {
  return args.length === 0 && last.trim() === '' ? [] : [...args, last.trim()];
}

/** Where the quoted part that opens at `at` closes; a doubled quote stands for itself. */
function closingQuote(formula: string, at: number): number {
  const quote = formula[at];
  for (let next = at + 1; next < formula.length; next += 1) {
    if (formula[next] !== quote) continue;
    if (formula[next + 1] !== quote) return next;
    next += 1;
  }
  return formula.length;
}
