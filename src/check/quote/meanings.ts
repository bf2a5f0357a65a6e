import { meaningOf, type MeaningKey } from '../../schedule/meanings';

/** What a quote's columns can mean. */
export type QuoteKey =
  | 'mark'
  | 'description'
  | 'quantity'
  | 'size'
  | 'span'
  | 'radius'
  | 'outsideRadius'
  | 'openingRadius'
  | 'length'
  | 'insideLength'
  | 'centerLength'
  | 'totalLength'
  | 'measure'
  | 'unitPrice'
  | 'footPrice'
  | 'extension';

/** A schedule's names for the same thing. */
const scheduled = (key: MeaningKey) => meaningOf(key).names;

const LENGTH = '(?:length|lengths|len|lgth|lg)';
const FEET = '(?:lf|lin ft|linear (?:feet|foot|ft)|lineal (?:feet|foot|ft))';
const MONEY = '(?:price|cost|rate|amount|amt)';

/**
 * Headings that mean a thing, best first: regular expressions over the whole heading after `normalHeading`. Earlier keys win:
 * "Each" is a price in a quote, not a count.
 */
const NAMES: readonly (readonly [QuoteKey, readonly string[]])[] = [
  ['insideLength', [`(?:inside|ins|short point|inner) ${LENGTH}|${LENGTH} (?:inside|short point)`]],
  ['centerLength', [`(?:center|centerline|ctr) ${LENGTH}|${LENGTH} (?:at |of )?center(?:line)?`]],
  ['totalLength', [`total (?:${LENGTH}|${FEET}|ft|feet)|${LENGTH} total`, FEET]],
  [
    'length',
    [
      `(?:(?:arc|arch|arched|piece|cut|head|casing|molding|outside|long point|lp|curve|finished) )*${LENGTH}(?: (?:each|ea|per piece|of arc|long point|outside|lp))?`,
      'long point|lp|arc',
    ],
  ],
  ['outsideRadius', ['(?:outside|outer|os) (?:radius|rad)|(?:radius|rad) (?:outside|outer)']],
  ['openingRadius', ['(?:opening|jamb|frame) (?:radius|rad)|(?:radius|rad) (?:of|at) (?:opening|jamb)']],
  [
    'radius',
    [
      '(?:arc |arch )?(?:casing|inside|is) (?:radius|rad)|(?:radius|rad) (?:inside|of casing)',
      '(?:(?:arc|arch|casing|head) )*(?:radius|rad)|r|radii',
    ],
  ],
  [
    'extension',
    [
      `(?:ext|extension|extended|ext d)(?: (?:${MONEY}|total))?`,
      `(?:line |item )?total(?: ${MONEY})?|line ${MONEY}|${MONEY} total|lump sum|lump`,
      'amount|amt|net(?: amount| price)?|value|sum',
    ],
  ],
  [
    'footPrice',
    [`(?:unit )?${MONEY} (?:per )?(?:foot|ft|${FEET})|(?:foot|ft|${FEET}) ${MONEY}|per (?:foot|ft|${FEET})`],
  ],
  [
    'unitPrice',
    [
      `(?:unit|piece|pc|per unit|per piece) ${MONEY}|${MONEY} (?:each|ea|per (?:unit|piece|pc|ea|each)|unit)`,
      'each|ea|per piece|per unit|unit',
      'price|quote|quoted|bid',
      'cost|rate',
    ],
  ],
  ['measure', ['(?:uom|u m|um|unit of measure|units)']],
  ['quantity', scheduled('quantity').filter((name) => name !== 'each|ea')],
  ['size', scheduled('size')],
  ['span', scheduled('width')],
  [
    'description',
    [
      '(?:item |line |product )?(?:description|desc|descr|details?|particulars)',
      'product|scope|work|name|remarks?|notes?|comments?',
    ],
  ],
  ['mark', scheduled('mark')],
];

const PATTERNS = NAMES.flatMap(([key, names]) =>
  names.map((name, rank) => ({ key, rank, pattern: new RegExp(`^(?:${name})$`) })),
);

/** What a normalized heading of a quote means and how good a name for it that is (0 best), or null. */
export function matchQuoteHeading(normal: string): { readonly key: QuoteKey; readonly rank: number } | null {
  return PATTERNS.find(({ pattern }) => pattern.test(normal)) ?? null;
}

/** Whether a heading of lengths counts in feet by its name alone: `LF`, `total feet`. */
export function namesFeet(normal: string): boolean {
  return new RegExp(`${FEET}|ft|feet`).test(normal);
}
