import { figure, quoted } from '../require';
import { ok, refuse, type Result } from '../result';
import { toCents } from '../rounding';
import { BLANK_JOB, JOB_FIELDS, type Job, type JobField, type JobKey, type JobValue, type PricedLine } from './fields';

/** Most characters of one field, and most lines: what is still a letter. */
const MOST_CHARACTERS = 5000;
const MOST_LINES = 200;

/**
 * A field's value from a text, a figure, or a list (as JSON has it), checked. Blank text is none: nothing, 0, the first choice.
 * Lists as text have an entry a line. Refused in a sentence: what is no such value, and text too long for a letter.
 */
export function readJobField(field: JobField, given: unknown): Result<JobValue> {
  if (isBlank(given)) return ok(BLANK_JOB[field.key as JobKey]);
  switch (field.measure) {
    case 'choice':
      return readChoice(field.label, field.choices, given);
    case 'text':
      return readText(field.label, given);
    case 'lines':
      return readLines(field.label, given);
    case 'priced':
      return readPricedLines(field.label, given);
    default:
      return readAmount(field, given);
  }
}

/** The job with some fields replaced; the first that can't be used is refused. */
export function withJob(job: Job, changes: Partial<Record<JobKey, unknown>>): Result<Job> {
  const next: Record<string, JobValue> = { ...job };
  for (const field of JOB_FIELDS as readonly JobField[]) {
    if (!(field.key in changes)) continue;
    const read = readJobField(field, changes[field.key as JobKey]);
    if (!read.ok) return read;
    next[field.key] = read.value;
  }
  return ok(next as unknown as Job);
}

/** A value as a cell or an input shows it; reads back as the same value. */
export function jobFieldText(value: JobValue): string | number {
  if (typeof value === 'string' || typeof value === 'number') return value;
  return value
    .map((line) => (typeof line === 'string' ? line : `${line.words}; ${line.quantity}; ${line.unitPrice.toFixed(2)}`))
    .join('\n');
}

function isBlank(given: unknown): boolean {
  return given === null || given === undefined || (typeof given === 'string' && given.trim() === '');
}

function readChoice(label: string, choices: readonly string[], given: unknown): Result<JobValue> {
  const word = String(given).trim().toLowerCase();
  const found = choices.find((choice) => choice.toLowerCase() === word);
  return found === undefined
    ? refuse(`${label} must be one of: ${choices.join('; ')}. Got ${quoted(String(given))}.`)
    : ok(found as JobValue);
}

function readText(label: string, given: unknown): Result<string> {
  if (typeof given !== 'string' && typeof given !== 'number') return refuse(`${label} must be text.`);
  const text = clean(String(given)).replace(/\s+/g, ' ').trim();
  return text.length > MOST_CHARACTERS ? tooLong(label) : ok(text);
}

function readLines(label: string, given: unknown): Result<readonly string[]> {
  const entries = Array.isArray(given) ? given : typeof given === 'object' ? null : [given];
  if (entries === null || entries.some((entry) => typeof entry !== 'string' && typeof entry !== 'number'))
    return refuse(`${label} must be lines of text.`);
  const lines = entries
    .flatMap((entry) => String(entry).split(/\r\n|\r|\n/))
    .map((line) => clean(line).trim())
    .filter((line) => line !== '');
  if (lines.length > MOST_LINES) return refuse(`${label} must be at most ${MOST_LINES} lines; got ${lines.length}.`);
  return lines.reduce((sum, line) => sum + line.length, 0) > MOST_CHARACTERS ? tooLong(label) : ok(lines);
}

function readPricedLines(label: string, given: unknown): Result<readonly PricedLine[]> {
  if (Array.isArray(given) && given.some((entry) => typeof entry === 'object' && entry !== null)) {
    const read: PricedLine[] = [];
    for (const entry of given as readonly unknown[]) {
      const { words, quantity, unitPrice } = (entry ?? {}) as Partial<Record<keyof PricedLine, unknown>>;
      const line = pricedLine(label, words, quantity, unitPrice);
      if (!line.ok) return line;
      read.push(line.value);
    }
    return ok(read);
  }
  const lines = readLines(label, given);
  if (!lines.ok) return lines;
  const read: PricedLine[] = [];
  for (const text of lines.value) {
    const parts = /^(.*);([^;]*);([^;]*)$/.exec(text);
    if (parts === null)
      return refuse(`${label}: a line is words; quantity; unit price, such as Blocks; 4; 12.50. Got ${quoted(text)}.`);
    const line = pricedLine(label, parts[1]!, numberIn(parts[2]!), numberIn(parts[3]!));
    if (!line.ok) return line;
    read.push(line.value);
  }
  return ok(read);
}

function numberIn(text: string): number | string {
  const plain = text
    .trim()
    .replace(/^(-?)\$/, '$1')
    .replace(/(\d),(?=\d{3}(?:\D|$))/g, '$1');
  return plain === '' || !Number.isFinite(Number(plain)) ? text.trim() : Number(plain);
}

function pricedLine(label: string, words: unknown, quantity: unknown, unitPrice: unknown): Result<PricedLine> {
  const said = readText(label, words ?? '');
  if (!said.ok) return said;
  if (said.value === '') return refuse(`${label}: a line needs words.`);
  if (typeof quantity !== 'number' || !(quantity > 0 && quantity <= 1e6))
    return refuse(
      `${label}: the quantity of ${quoted(said.value)} must be a number from more than 0 to 1000000; got ${shown(quantity)}.`,
    );
  if (typeof unitPrice !== 'number' || !(Math.abs(unitPrice) <= 1e6) || toCents(unitPrice) !== unitPrice)
    return refuse(
      `${label}: the unit price of ${quoted(said.value)} must be money in whole cents, at most 1000000; got ${shown(unitPrice)}.`,
    );
  return ok({ words: said.value, quantity, unitPrice });
}

function readAmount(field: JobField & { readonly max: number }, given: unknown): Result<number> {
  const { label, measure, max } = field;
  const asNumber = typeof given === 'string' ? readTyped(given, measure === 'percent') : given;
  if (typeof asNumber !== 'number' || !(asNumber >= 0 && asNumber <= max))
    return refuse(
      `${label} must be ${measure === 'percent' ? `from 0% to ${max * 100}%` : `a number from 0 to ${max}`}; got ${shown(given)}.`,
    );
  if (measure === 'money' && toCents(asNumber) !== asNumber)
    return refuse(`${label} must be in whole cents; got ${shown(given)}.`);
  return ok(asNumber);
}

/** `6.25%` is 0.0625; a bare figure is what it says: 0.0625. */
function readTyped(text: string, isPercent: boolean): unknown {
  const percent = isPercent && /%\s*$/.test(text);
  const value = numberIn(text.replace(/%\s*$/, ''));
  return typeof value === 'number' && percent ? Number((value / 100).toPrecision(12)) : value;
}

function tooLong(label: string) {
  return refuse(`${label} must be at most ${MOST_CHARACTERS} characters.`);
}

/** Control characters are no part of a letter, and no file may hold them. */
function clean(text: string): string {
  return text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, '');
}

function shown(given: unknown): string {
  return typeof given === 'number' ? figure(given) : quoted(String(given ?? ''));
}
