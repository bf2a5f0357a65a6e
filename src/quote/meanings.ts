import { normalHeading } from '../schedule/headingText';
import type { ColumnUnit } from '../schedule/columnUnit';
import { MEANINGS, meaningOf, type MeaningKey } from '../schedule/meanings';
import type { LengthBasis, RadiusBasis } from './quote';
import { byWords } from './headingWords';

/** What a quote's columns can mean; `aside`: known, but nothing that is compared with the takeoff. */
export type QuoteKey =
  | 'mark'
  | 'description'
  | 'head'
  | 'species'
  | 'ends'
  | 'quantity'
  | 'size'
  | 'span'
  | 'rise'
  | 'face'
  | 'thickness'
  | 'reveal'
  | 'section'
  | 'leg'
  | 'legCount'
  | 'radius'
  | 'outsideRadius'
  | 'openingRadius'
  | 'diameter'
  | 'length'
  | 'insideLength'
  | 'centerLength'
  | 'totalLength'
  | 'lengthWithLegs'
  | 'measure'
  | 'unitPrice'
  | 'footPrice'
  | 'pairPrice'
  | 'listPrice'
  | 'discount'
  | 'extension'
  | 'aside';

/** As shown in a drop-down, in its order. */
export const QUOTE_LABELS: Readonly<Record<QuoteKey, string>> = {
  mark: 'Mark',
  description: 'Description',
  head: 'Head shape',
  species: 'Species',
  ends: 'How the arc ends',
  quantity: 'Quantity',
  measure: 'Unit of measure',
  radius: 'Radius, inside of the casing',
  outsideRadius: 'Radius, outside',
  openingRadius: 'Radius of the opening',
  diameter: 'Diameter',
  length: 'Length, long point',
  insideLength: 'Length, inside',
  centerLength: 'Length, center',
  totalLength: 'Length of all pieces',
  lengthWithLegs: 'Length of head and legs',
  span: 'Width of the opening',
  rise: 'Rise',
  size: 'Size, width by height',
  face: 'Casing width',
  thickness: 'Casing thickness',
  section: 'Casing, thickness by width',
  reveal: 'Reveal',
  leg: 'Leg length',
  legCount: 'Number of legs',
  unitPrice: 'Price of a piece',
  footPrice: 'Price of a foot',
  pairPrice: 'Price of a pair',
  listPrice: 'List price',
  discount: 'Discount of the line',
  extension: 'Amount of the line',
  aside: 'Not compared',
};

/** The columns a line's length is read from: the first that isn't blank. */
export const LENGTHS: readonly (readonly [QuoteKey, LengthBasis])[] = [
  ['length', 'outside'],
  ['insideLength', 'inside'],
  ['centerLength', 'center'],
  ['lengthWithLegs', 'with legs'],
  ['totalLength', 'all pieces'],
];
/** The same of its radius. */
export const RADII: readonly (readonly [QuoteKey, RadiusBasis])[] = [
  ['radius', 'inside'],
  ['outsideRadius', 'outside'],
  ['openingRadius', 'opening'],
  ['diameter', 'inside'],
];
/** A schedule's names for the same thing. */
const scheduled = (key: MeaningKey) => meaningOf(key).names;

const LENGTH = '(?:length|lengths|len|lgth|lg|l)';
const LIN = '(?:lin|linear|lineal|running|run)';
const FEET = `(?:lf|lft|l f|${LIN} (?:feet|foot|ft)|footage)`;
const INCHES = `${LIN} (?:inches|inch|in)`;
const LONG_POINT = '(?:long (?:point|pt)|lp|tip to tip)';
const SHORT_POINT = '(?:short (?:point|pt)|sp)';
const RADIUS = '(?:radius|rad|radii|r)';
const MONEY = '(?:price|cost|rate|amount|amt)';
/** Whose length or radius it is, or how it is taken: the piece's own, as sold. */
const OF_PIECE =
  '(?:arc|arch|arched|piece|pc|part|cut|trim|head|casing|molding|outside|overall|oa|o a|full|developed|net|curve|curved|finished|run)';

/**
 * Headings that mean a thing, best first: regular expressions over the whole heading after `normalHeading`. Earlier keys win:
 * "Each" is a price in a quote, not a count.
 */
const NAMES: readonly (readonly [QuoteKey, readonly string[]])[] = [
  [
    'insideLength',
    [
      `(?:inside|ins|is|inner|${SHORT_POINT}) ${LENGTH}|(?:${LENGTH}|run) (?:inside|${SHORT_POINT})`,
      SHORT_POINT.replace('|sp', ''),
    ],
  ],
  ['centerLength', [`(?:center|centerline|ctr) ${LENGTH}|${LENGTH} (?:at |of )?center(?:line)?`]],
  [
    'totalLength',
    [`(?:total )?${FEET}(?: total)?|total (?:${LENGTH}|ft|feet)|${LENGTH} total`, `(?:total )?${INCHES}(?: total)?`],
  ],
  [
    'length',
    [
      `(?:(?:${OF_PIECE}|${LONG_POINT}) )*${LENGTH}(?: (?:each|ea|per piece|of arc|of piece|overall|outside|${LONG_POINT}))?`,
      `(?:run |arc )?${LONG_POINT}|arc|run`,
    ],
  ],
  ['outsideRadius', [`(?:outside|outer|os) ${RADIUS}|${RADIUS} (?:outside|outer)`]],
  ['openingRadius', [`(?:opening|jamb|frame) ${RADIUS}|${RADIUS} (?:of|at) (?:opening|jamb)`]],
  [
    'radius',
    [
      `(?:arc |arch )?(?:casing|inside|ins|is|inner) ${RADIUS}|${RADIUS} (?:inside|of casing)`,
      `(?:(?:arc|arch|casing|head) )*${RADIUS}`,
    ],
  ],
  ['diameter', [`(?:(?:arc|arch|casing|head|inside|outside|opening) )*(?:dia|diam|diameter)(?: of opening)?`]],
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
  ['measure', ['(?:uom|u m|u o m|um|u of m|unit of measure|unit of meas|units)']],
  ['quantity', scheduled('quantity').filter((name) => name !== 'each|ea')],
  ['size', scheduled('size')],
  ['span', scheduled('width').filter((name) => !name.includes('dia|diameter'))],
  ['rise', scheduled('rise')],
  ['face', scheduled('face').map((name) => name.replace(/\|\(\?:casing.*$/, ''))],
  ['thickness', scheduled('thickness')],
  ['section', scheduled('casingSize')],
  ['reveal', scheduled('reveal')],
  ['leg', scheduled('leg')],
  [
    'description',
    [
      '(?:item |line |product )?(?:description|desc|descr|details?|particulars)',
      'product|scope|work|name|remarks?|notes?|comments?',
      'materials?(?: and)? (?:workmanship|work)',
    ],
  ],
  ['mark', scheduled('mark')],
  ['head', scheduled('head')],
  ['species', scheduled('species')],
  ['ends', scheduled('ends')],
  [
    'aside',
    [
      // Words of these are read with the description.
      ...MEANINGS.filter(({ kind }) => kind === 'text' || kind === 'head' || kind === 'ends').flatMap(
        ({ names }) => names,
      ),
      ...['roughSize', 'roughWidth', 'height', 'headHeight', 'roughHeight', 'springHeight'].flatMap((key) =>
        scheduled(key as MeaningKey),
      ),
      '(?:seq|sequence|pos|position|sku|part|catalog|cat|product|code|order|po|job|die|drawing|dwg|detail|sheet|page)(?: (?:no|number|code|id))?',
      '(?:source |quote )?row|(?:total |unit )?(?:weight|wt|lbs?)|(?:total )?(?:bd|board) (?:ft|feet|foot)|bf|bdft|(?:arc |blank )?(?:angle|degrees?|deg)',
      '(?:ship(?:ping)? |due |delivery )?date|lead time|days|weeks|eta|location|floor|level|room|area|phase|finish|color|stain|grain',
      // Figures of how a piece is made, those of our own Takeoff sheet among them.
      '(?:.* )?(?:haunch|blank|board|boards|stock|segments?|straight|knife|guide|set ups?|labor|material|minutes|hours|passes|joints?|share|cuts?|feed|grade|quarters|missing|filled|counted|miter|wood|plies|look at|needs)(?: .*)?',
    ],
  ],
];

const PATTERNS = NAMES.flatMap(([key, names]) =>
  names.map((name, rank) => ({ key, rank, pattern: new RegExp(`^(?:${name})$`) })),
);

/** A heading known only by some of its words says less than one that is known as a whole. */
const BY_WORDS = 6;

/** What a normalized heading of a quote means and how good a name for it that is (0 best), or null. */
export function matchQuoteHeading(normal: string): { readonly key: QuoteKey; readonly rank: number } | null {
  const whole = PATTERNS.find(({ pattern }) => pattern.test(normal)) ?? null;
  if (whole !== null) return whole;
  const key = byWords(normal);
  return key === null ? null : { key, rank: BY_WORDS };
}

/** The unit that a heading of lengths names by itself: feet in `LF` and `Footage`, inches in `Lineal inches`. */
export function unitNamed(heading: string): ColumnUnit | null {
  const normal = normalHeading(heading);
  if (new RegExp(`\\b${INCHES}\\b`).test(normal)) return 'in';
  return new RegExp(`\\b(?:${FEET}|ft|feet)\\b`).test(normal) ? 'ft' : null;
}
