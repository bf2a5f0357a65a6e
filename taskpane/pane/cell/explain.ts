import { call } from '../../../functions/call';
import { findFunction } from '../../../functions/registry';
import type { CellValue } from '../../../src/schedule/opening';
import { cellsOf, readArgument } from './argument';
import { callsIn, type WrittenCall } from '../../../src/workbook/formulas/calls';

/** What one argument of a worksheet function was. */
export interface SeenArgument {
  readonly name: string;
  readonly about: string;
  /** As it stands in the formula; '' where it was left out. */
  readonly written: string;
  /** What was in the cell or range, as text; null: worked out inside the formula. */
  readonly saw: string | null;
}

export interface Explanation {
  readonly name: string;
  readonly about: string;
  /** Why there is no figure; null where these arguments give one. */
  readonly sentence: string | null;
  readonly args: readonly SeenArgument[];
}

/** Reads the used cells of a sheet; null where there is none of that name. `null` as a name: the formula's own sheet. */
export type Lookup = (
  sheet: string | null,
) => Promise<{ readonly firstRow: number; readonly rows: readonly (readonly CellValue[])[] } | null>;

/**
 * Why the ARCH functions of a formula give what they give: each with its arguments as it saw them. The sentence is the
 * host's own where it is at hand, else the function is asked again.
 */
export async function explain(
  formula: string,
  hostSentence: string | null,
  lookup: Lookup,
): Promise<readonly Explanation[]> {
  const explained: Explanation[] = [];
  for (const written of callsIn(formula)) explained.push(await explainCall(written, hostSentence, lookup));
  return explained;
}

async function explainCall(written: WrittenCall, hostSentence: string | null, lookup: Lookup): Promise<Explanation> {
  const found = findFunction(written.name);
  if (!found) {
    return {
      name: written.name,
      about: '',
      sentence: `There is no function ARCH.${written.name}. Check its spelling.`,
      args: written.args.map((text) => ({ name: '', about: '', written: text, saw: null })),
    };
  }
  const { parameters, description } = found.metadata;
  const values: unknown[] = [];
  const args: SeenArgument[] = [];
  let allSeen = true;
  for (let at = 0; at < Math.max(parameters.length, written.args.length); at += 1) {
    const text = written.args[at] ?? '';
    const seen = await see(text, lookup);
    if (!seen) allSeen = false;
    if (at < written.args.length) values.push(seen?.value ?? null);
    if (text === '' && parameters[at]?.optional) continue;
    const name = parameters[at]?.name ?? '';
    args.push({
      name,
      about: parameters[at]?.description ?? 'One argument too many.',
      written: text,
      saw: seen?.text ?? null,
    });
  }
  const answer = allSeen ? call(written.name, values) : null;
  const own = answer && 'error' in answer ? answer.message : null;
  return { name: written.name, about: description, sentence: own ?? (answer ? null : hostSentence), args };
}

async function see(text: string, lookup: Lookup): Promise<{ readonly value: unknown; readonly text: string } | null> {
  const argument = readArgument(text);
  if (argument.kind === 'expression') return null;
  if (argument.kind === 'value') return { value: argument.value, text: shown(argument.value) };
  const sheet = await lookup(argument.sheet);
  const cells = sheet && cellsOf(argument.range, sheet.rows, sheet.firstRow);
  if (!cells) return null;
  const flat = cells.flat();
  if (argument.single) return { value: flat[0] ?? null, text: shown(flat[0] ?? null) };
  const filled = flat.filter((cell) => cell !== null && cell !== '');
  const some = filled.slice(0, 4).map(shown).join(', ');
  const more = filled.length > 4 ? `, … (${filled.length} filled cells)` : '';
  return { value: cells, text: filled.length === 0 ? 'nothing: the cells are blank' : some + more };
}

function shown(value: CellValue): string {
  if (value === null || value === '') return 'nothing: blank';
  if (typeof value === 'string') return `“${value}”`;
  return value instanceof Date ? value.toLocaleDateString() : String(value);
}
