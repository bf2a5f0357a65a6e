import { CellError, type Scalar } from './value';

/** Thrown where a value needs a rule that is not kept here: the library calculates the formula then. */
export const BEYOND = Symbol('beyond the rules kept here');

/** A value as a number in arithmetic. */
export function asNumber(value: Scalar): number | CellError {
  if (typeof value === 'number') return value;
  if (value === null) return 0;
  if (typeof value === 'boolean') return value ? 1 : 0;
  if (value instanceof CellError) return value;
  // Dates, percentages and amounts of money in text are read in many ways.
  if (/\d/.test(value)) throw BEYOND;
  return new CellError('#VALUE!');
}

/** A value as text joined to other text: figures with 15 digits, as a spreadsheet shows them. */
export function asText(value: Scalar): string | CellError {
  if (typeof value === 'string' || value instanceof CellError) return value;
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  const size = Math.abs(value);
  if (size !== 0 && (size >= 1e15 || size < 1e-5)) throw BEYOND;
  return String(Number(value.toPrecision(15)));
}

/** A value as a condition. */
export function asTruth(value: Scalar): boolean | CellError {
  if (typeof value === 'boolean' || value instanceof CellError) return value;
  if (typeof value === 'string') {
    const word = value.toUpperCase();
    return word === 'TRUE' || (word === 'FALSE' ? false : new CellError('#VALUE!'));
  }
  return asNumber(value) !== 0;
}

function finite(value: number): Scalar {
  return Number.isFinite(value) ? value : new CellError('#NUM!');
}

/** Whether two figures are one to the 15 digits that a spreadsheet holds: 0.1 + 0.2 is 0.3. */
function alike(one: number, other: number): boolean {
  if (one === other) return true;
  if (!(Math.abs(one - other) <= 1e-14 * Math.abs(one))) return false;
  return one.toPrecision(15) === other.toPrecision(15);
}

const ARITHMETIC: Readonly<Record<string, (one: number, other: number) => Scalar>> = {
  '+': (one, other) => (alike(one, -other) ? 0 : finite(one + other)),
  '-': (one, other) => (alike(one, other) ? 0 : finite(one - other)),
  '*': (one, other) => finite(one * other),
  '/': (one, other) => (other === 0 ? new CellError('#DIV/0!') : finite(one / other)),
};

const COMPARED: Readonly<Record<string, (order: number) => boolean>> = {
  '=': (order) => order === 0,
  '<>': (order) => order !== 0,
  '<': (order) => order < 0,
  '>': (order) => order > 0,
  '<=': (order) => order <= 0,
  '>=': (order) => order >= 0,
};

/** The rule of an operator between two values; null for one that is not kept here. */
export function operatorOf(sign: string): ((one: Scalar, other: Scalar) => Scalar) | null {
  const arithmetic = ARITHMETIC[sign];
  if (arithmetic)
    return (one, other) => {
      const left = asNumber(one);
      if (left instanceof CellError) return left;
      const right = asNumber(other);
      return right instanceof CellError ? right : arithmetic(left, right);
    };
  if (sign === '&')
    return (one, other) => {
      const left = asText(one);
      if (left instanceof CellError) return left;
      const right = asText(other);
      return right instanceof CellError ? right : left + right;
    };
  const compared = COMPARED[sign];
  if (!compared) return null;
  const equality = sign === '=' || sign === '<>';
  return (one, other) => {
    if (one instanceof CellError) return one;
    if (other instanceof CellError) return other;
    return compared(order(one, other, equality));
  };
}

/** Numbers come before text, and text before truth values; a blank is the 0, the empty text or the false of the other. */
function order(one: Exclude<Scalar, CellError>, other: Exclude<Scalar, CellError>, equality: boolean): number {
  const left = one ?? blankLike(other);
  const right = other ?? blankLike(one);
  const [leftRank, rightRank] = [rank(left), rank(right)];
  if (leftRank !== rightRank) return leftRank - rightRank;
  if (typeof left !== 'string') return alike(Number(left), Number(right)) ? 0 : Number(left) - Number(right);
  const [leftText, rightText] = [left.toLowerCase(), (right as string).toLowerCase()];
  if (leftText === rightText) return 0;
  // Which text comes first hangs on the language.
  if (!equality) throw BEYOND;
  return 1;
}

function blankLike(other: number | string | boolean | null): number | string | boolean {
  return typeof other === 'string' ? '' : typeof other === 'boolean' ? false : 0;
}

function rank(value: number | string | boolean): number {
  return typeof value === 'number' ? 0 : typeof value === 'string' ? 1 : 2;
}
