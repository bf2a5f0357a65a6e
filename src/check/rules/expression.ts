import { cellsNamed, quote } from '../../formulaText';
import { toCents } from '../../rounding';

/**
 * What the rules of a quote's check are written in: an expression has a value for the figures of a line and a formula for the cells
 * that hold them, so that one rule judges in the text, in JSON and on the sheet. A formula names the cell of a figure by
 * its key (`formulaText.ts`); a blank cell is null here.
 */
export interface Expression<Value, Figures = unknown> {
  readonly of: (figures: Figures) => Value;
  readonly formula: string;
}

/** A cell's number; null where it is blank. */
export type Figure = number | null;
export type Value<Figures> = Expression<Figure, Figures>;
export type Text<Figures> = Expression<string, Figures>;
type Number<Figures> = Expression<Figure, Figures>;
type Truth<Figures> = Expression<boolean, Figures>;

/** A figure of the line, by the name of its cell. */
export function figure<Key extends string>(key: Key): Number<Readonly<Record<Key, Figure>>> {
  return { of: (figures) => figures[key], formula: cellsNamed<Key>().its[key] };
}

/** A setting of the shop, by the name of its cell in the Standards. */
export function setting<Key extends string>(key: Key, cell: string): Number<Readonly<Record<Key, Figure>>> {
  return { of: (figures) => figures[key], formula: cell };
}

/** What is said of a figure, by the name of its cell. */
export function said<Key extends string>(key: Key): Text<Readonly<Record<Key, string>>> {
  return { of: (figures) => figures[key], formula: cellsNamed<Key>().its[key] };
}

/** Something worked out elsewhere: its value, and a formula where a cell holds it. */
export function given<Value>(value: Value, formula = ''): Expression<Value> {
  return { of: () => value, formula };
}

export function words<Said extends string>(text: Said): Expression<Said> {
  return { of: () => text, formula: quote(text) };
}

/** In arithmetic a blank counts as 0, as in a cell. */
function arithmetic<One, Other>(
  [one, other]: readonly [Number<One>, Number<Other>],
  of: (one: number, other: number) => number,
  formula: string,
): Number<One & Other> {
  return { of: (figures) => of(one.of(figures) ?? 0, other.of(figures) ?? 0), formula };
}

export function number(value: number): Number<unknown> {
  // No exponent: not every spreadsheet's formulas have them.
  return {
    of: () => value,
    formula: String(value).includes('e') ? value.toFixed(12).replace(/0+$/, '') : String(value),
  };
}
export function plus<One, Other>(one: Number<One>, other: Number<Other>): Number<One & Other> {
  return arithmetic([one, other], (first, second) => first + second, `(${one.formula}+${other.formula})`);
}
export function minus<One, Other>(one: Number<One>, other: Number<Other>): Number<One & Other> {
  return arithmetic([one, other], (first, second) => first - second, `(${one.formula}-${other.formula})`);
}
export function times<One, Other>(one: Number<One>, other: Number<Other>): Number<One & Other> {
  return arithmetic([one, other], (first, second) => first * second, `${one.formula}*${other.formula}`);
}
/** The second is not 0. */
export function over<One, Other>(one: Number<One>, other: Number<Other>): Number<One & Other> {
  return arithmetic([one, other], (first, second) => first / second, `${one.formula}/${other.formula}`);
}
export function most<One, Other>(one: Number<One>, other: Number<Other>): Number<One & Other> {
  return arithmetic([one, other], Math.max, `MAX(${one.formula},${other.formula})`);
}
export function size<Figures>(one: Number<Figures>): Number<Figures> {
  return { of: (figures) => Math.abs(one.of(figures) ?? 0), formula: `ABS(${one.formula})` };
}

/** In whole cents. */
export function cents<Figures>(one: Number<Figures>): Number<Figures> {
  return { of: (figures) => toCents(one.of(figures) ?? 0), formula: `ROUND(${one.formula},2)` };
}
/** A blank as 0, where a formula may find text in its cell. */
export function orZero<Figures>(one: Number<Figures>): Number<Figures> {
  return { of: (figures) => one.of(figures) ?? 0, formula: `N(${one.formula})` };
}
/** Nothing. */
export const BLANK: Number<unknown> = { of: () => null, formula: '""' };

export function isGiven<Figures>(one: Number<Figures>): Truth<Figures> {
  return { of: (figures) => one.of(figures) !== null, formula: `${one.formula}<>""` };
}
export function isBlank<Figures>(one: Number<Figures>): Truth<Figures> {
  return { of: (figures) => one.of(figures) === null, formula: `${one.formula}=""` };
}
export function equal<One, Other>(one: Number<One>, other: Number<Other>): Truth<One & Other> {
  return { of: (figures) => one.of(figures) === other.of(figures), formula: `${one.formula}=${other.formula}` };
}
export function says<Figures>(text: Text<Figures>, word: string): Truth<Figures> {
  return { of: (figures) => text.of(figures) === word, formula: `${text.formula}=${quote(word)}` };
}
export function less<One, Other>(one: Number<One>, other: Number<Other>): Truth<One & Other> {
  return {
    of: (figures) => (one.of(figures) ?? 0) < (other.of(figures) ?? 0),
    formula: `${one.formula}<${other.formula}`,
  };
}
export function atMost<One, Other>(one: Number<One>, other: Number<Other>): Truth<One & Other> {
  return {
    of: (figures) => (one.of(figures) ?? 0) <= (other.of(figures) ?? 0),
    formula: `${one.formula}<=${other.formula}`,
  };
}
export function isOther<Figures>(text: Text<Figures>, word: string): Truth<Figures> {
  return { of: (figures) => text.of(figures) !== word, formula: `${text.formula}<>${quote(word)}` };
}
/** The first or the last characters of a text, as many as `part` has. */
export function start<Figures>(text: Text<Figures>, part: string): Text<Figures> {
  return { of: (figures) => text.of(figures).slice(0, part.length), formula: `LEFT(${text.formula},${part.length})` };
}
export function end<Figures>(text: Text<Figures>, part: string): Text<Figures> {
  return { of: (figures) => text.of(figures).slice(-part.length), formula: `RIGHT(${text.formula},${part.length})` };
}
/** The text without its first `count` characters. */
export function without<Figures>(text: Text<Figures>, count: number): Text<Figures> {
  return { of: (figures) => text.of(figures).slice(count), formula: `MID(${text.formula},${count + 1},2000)` };
}

export function all<Figures>(...each: readonly Truth<Figures>[]): Truth<Figures> {
  return { of: (figures) => each.every((one) => one.of(figures)), formula: `AND(${formulas(each)})` };
}
export function any<Figures>(...each: readonly Truth<Figures>[]): Truth<Figures> {
  return { of: (figures) => each.some((one) => one.of(figures)), formula: `OR(${formulas(each)})` };
}

export function when<Value, Other, Asked, One, Two>(
  condition: Truth<Asked>,
  one: Expression<Value, One>,
  other: Expression<Other, Two>,
): Expression<Value | Other, Asked & One & Two> {
  return {
    of: (figures) => (condition.of(figures) ? one.of(figures) : other.of(figures)),
    formula: `IF(${condition.formula},${one.formula},${other.formula})`,
  };
}

/** One text after another; a number as it is. */
export function join<Figures>(...parts: readonly (Text<Figures> | Number<Figures>)[]): Text<Figures> {
  return {
    of: (figures) => parts.map((part) => String(part.of(figures) ?? '')).join(''),
    formula: parts.map(({ formula }) => formula).join('&'),
  };
}

/** Those texts whose condition holds, with a separator between them; '' for none. */
export function listWhere<Figures>(
  items: readonly (readonly [Truth<Figures>, Text<Figures>])[],
  separator: string,
): Text<Figures> {
  const parts = items.map(([condition, { formula }]) => `IF(${condition.formula},"${separator}"&${formula},"")`);
  return {
    of: (figures) =>
      items.flatMap(([condition, text]) => (condition.of(figures) ? [text.of(figures)] : [])).join(separator),
    formula: `MID(${parts.join('&')},${separator.length + 1},2000)`,
  };
}

function formulas(each: readonly { readonly formula: string }[]): string {
  return each.map(({ formula }) => formula).join(',');
}
