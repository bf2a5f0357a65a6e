/*
 * What formula text is made with; `workbook/formulas/lexer.ts` takes it apart. The one template of formulas: text in which cells are named
 * by typed keys, `IF(${its.span}>0,…)`, until the sheet puts their addresses in. A mistyped key doesn't compile.
 */

/** What stands around a key: characters that no text of a user's has, or of a formula. */
const [OPEN, CLOSE, ALL] = ['\uE000', '\uE001', '\uE002'];

export interface CellNames<Key extends string> {
  /** A cell of the same row. */
  readonly its: Readonly<Record<Key, string>>;
  /** The cells of a whole column: `SUM(${all.price})`. */
  readonly all: Readonly<Record<Key, string>>;
}

export function cellsNamed<Key extends string>(): CellNames<Key> {
  const names = (of: string) =>
    new Proxy({} as Readonly<Record<Key, string>>, {
      get: (_target, key) => `${OPEN}${String(key)}${of}${CLOSE}`,
    });
  return { its: names(''), all: names(ALL) };
}

/** A template taken apart: `texts` stand before, between and behind the addresses of `keys`. */
export interface Template<Key extends string> {
  readonly texts: readonly string[];
  readonly keys: readonly { readonly key: Key; readonly all: boolean }[];
}

export function takenApart<Key extends string>(template: string): Template<Key> {
  const [first = '', ...rest] = template.split(OPEN);
  const pairs = rest.map((part) => part.split(CLOSE) as [string, string]);
  return {
    texts: [first, ...pairs.map(([, text]) => text)],
    keys: pairs.map(([token]) => {
      const whole = token.endsWith(ALL);
      return { key: (whole ? token.slice(0, -ALL.length) : token) as Key, all: whole };
    }),
  };
}

/** The formula, each cell by the address that `of` gives it. */
export function withAddresses<Key extends string>(template: string, of: (key: Key, all: boolean) => string): string {
  const { texts, keys } = takenApart<Key>(template);
  return texts.map((text, at) => (at === 0 ? text : of(keys[at - 1]!.key, keys[at - 1]!.all) + text)).join('');
}

/**
 * Text as a formula writes it. A literal holds at most 255 characters, so longer text is joined from parts. Quotation marks
 * go in by code: the workbench's grid loses the names that follow a doubled one.
 */
export function quote(text: string): string {
  const parts = text
    .split('"')
    .flatMap((part, at) => [
      ...(at > 0 ? ['CHAR(34)'] : []),
      ...(part.match(/[^]{1,250}/g) ?? []).map((piece) => `"${piece}"`),
    ]);
  return parts.join('&') || '""';
}

/** A call of a worksheet function on values, with nothing for what is left out; of a spill one cell of it, by row and column from 1. */
export function callOn(
  name: string,
  values: readonly (string | number | null | undefined)[],
  cell?: readonly [row: number, column: number],
): string {
  const texts = values.map((each) => (typeof each === 'string' ? quote(each) : String(each ?? '')));
  while (texts.at(-1) === '') texts.pop();
  const call = `ARCH.${name}(${texts.join(',')})`;
  return cell === undefined ? call : `INDEX(${call},${cell.join(',')})`;
}

/** Whether what is entered in a cell is a formula. */
export function isFormula(entry: unknown): entry is string {
  return typeof entry === 'string' && entry.startsWith('=');
}
