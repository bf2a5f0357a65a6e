import { resolve } from 'node:path';
import { parseArgs, type ParseArgsConfig } from 'node:util';
import type { TableChoice } from '../src/pdf/offer';
import { ok, refuse, type Refusal, type Result } from '../src/result';

type Options = NonNullable<ParseArgsConfig['options']>;
type Parsed<O extends Options> = ReturnType<typeof parseArgs<{ options: O; allowPositionals: true; strict: true }>>;

/** A command's options and the rest of its words; an unknown option is refused in a sentence. */
export function readOptions<O extends Options>(args: readonly string[], options: O): Result<Parsed<O>> {
  try {
    return ok(parseArgs({ args: [...args], options, allowPositionals: true, strict: true }));
  } catch (error) {
    // parseArgs explains at length how to pass such a word as a positional; its first sentence is what matters.
    const [sentence] = (error instanceof Error ? error.message : String(error)).split(/\. To specify|\n/, 1);
    return refuse(`${sentence}.`.replace(/\.\.$/, '.'));
  }
}

/** An option that is one number within limits. */
export function readNumber(name: string, text: string, min: number, max: number): Result<number> {
  const value = text.trim() === '' ? NaN : Number(text);
  return value >= min && value <= max
    ? ok(value)
    : refuse(`--${name} must be a number from ${min} to ${max}; got "${text}".`);
}

/** An option that lists numbers, such as 96,120,144; each must be more than 0. */
export function readNumbers(name: string, text: string): Result<number[]> {
  const numbers = text.split(',').map((part) => (part.trim() === '' ? NaN : Number(part)));
  return numbers.every((number) => number > 0 && Number.isFinite(number))
    ? ok(numbers)
    : refuse(`--${name} must be numbers more than 0 with commas between them, such as 96,120,144; got "${text}".`);
}

/** Why a workbook can't be written to `out`; null where it can, or where none is wanted. */
export function unfitOut(out: string | undefined, inputs: readonly string[]): Refusal | null {
  if (out === undefined) return null;
  if (!/\.xlsx$/i.test(out)) return refuse(`--out must name a file that ends in .xlsx; got "${out}".`);
  const input = inputs.find((one) => resolve(one) === resolve(out));
  return input === undefined ? null : refuse(`--out would write over "${input}".`);
}

/** Which table of a PDF is wanted: --page and --table, whole numbers from 1. */
export function readTableChoice(values: { page?: string; table?: string }): Result<TableChoice> {
  const choice: { page?: number; table?: number } = {};
  for (const name of ['page', 'table'] as const) {
    const text = values[name];
    if (text === undefined) continue;
    if (!/^[1-9]\d{0,5}$/.test(text)) return refuse(`--${name} must be a whole number from 1; got "${text}".`);
    choice[name] = Number(text);
  }
  return ok(choice);
}
