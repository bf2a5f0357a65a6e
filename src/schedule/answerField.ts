import { readEnds, readHead } from '../head/words';
import { ok, refuse, type Result } from '../result';
import type { Unit } from '../unit';
import { asTyped } from './asTyped';
import type { ColumnUnit } from './columnUnit';
import { FIELD_KINDS } from './fieldKinds';
import type { OpeningField, OpeningInputs } from './opening';
import { readLength } from './readLength';
import { readQuantity } from './readQuantity';

const MUST_STAND: ReadonlySet<OpeningField> = new Set<OpeningField>(['quantity', 'head', 'span']);
const MAY_BE_ZERO: ReadonlySet<OpeningField> = new Set<OpeningField>(['leg', 'otherLeg', 'reveal']);

/** A field's value as somebody typed it; a bare length is in `typedIn`, the workbook's unit where left out. Refused in a sentence that quotes what was typed. */
export function readField(
  field: OpeningField,
  typed: string,
  unit: Unit,
  typedIn: ColumnUnit = unit,
): Result<OpeningInputs[OpeningField]> {
  const text = typed.trim();
  const { label, kind } = FIELD_KINDS[field];
  if (text === '')
    return MUST_STAND.has(field) ? refuse(`${label} can't be left blank.`) : ok(field === 'mark' ? '' : null);
  switch (kind) {
    case 'head':
      return readHead(text);
    case 'ends':
      return readEnds(text);
    case 'count':
      return field === 'sides' ? readSides(text) : asTyped(readQuantity(text, label));
    case 'money':
      return readMoney(label, text);
    case 'length':
      return asTyped(readLength(text, { name: label, column: typedIn, unit, zero: MAY_BE_ZERO.has(field) }));
    case 'text':
      return ok(text);
  }
}

const SIDES: Readonly<Record<string, number>> = {
  one: 1,
  single: 1,
  interior: 1,
  exterior: 1,
  int: 1,
  ext: 1,
  two: 2,
  both: 2,
  double: 2,
};

/** How many sides of the wall are cased: `2`, `both`, `one side`, `interior`. */
export function readSides(text: string): Result<number> {
  const word = text
    .trim()
    .toLowerCase()
    .replace(/\s*sides?$|\s*only$|\.$/g, '')
    .trim();
  const sides = /^[12]$/.test(word) ? Number(word) : Object.hasOwn(SIDES, word) ? SIDES[word] : undefined;
  return sides === undefined ? refuse(`Sides cased are 1 or 2; you typed "${text}".`) : ok(sides);
}

/** An amount of money of 0 or more: `1250`, `$1,250.00`. */
export function readMoney(label: string, text: string): Result<number> {
  const figure = text
    .trim()
    .replace(/^\$\s*/, '')
    .replace(/,(?=\d{3}(?:\D|$))/g, '');
  return /^\d{1,9}(?:\.\d+)?$/.test(figure)
    ? ok(Number(figure))
    : refuse(`${label} must be an amount of 0 or more; you typed "${text}".`);
}
