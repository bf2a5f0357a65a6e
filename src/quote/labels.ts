import type { ChargeKind } from './quote';

/** What a row's words make it, where it is not a line: a charge of its own or a sum of what stands above. */
export type Label =
  | { readonly kind: 'charge'; readonly charge: ChargeKind; readonly text: string; readonly rate: number | null }
  | { readonly kind: 'sum'; readonly sum: 'subtotal' | 'total'; readonly text: string };

const SUBTOTAL =
  /^(?:sub[- ]?total|page total|section total|group total|sum|merchandise total|materials? total|total (?:materials?|merchandise|moldings?))\b/i;
/** "Total with tax", "total before freight". */
const WITH =
  '(?: (?:w/o|w/|with|without|incl(?:\\.|uding)?|excl(?:\\.|uding)?|before|after|plus|less) ?(?:[a-z]+ ){0,2}[a-z]+)?';
const TOTAL = new RegExp(
  '^(?:(?:grand|quote|quotation|order|job|project|overall|net|bid|estimated|final|total) )?(?:total|amount due|balance due)' +
    `(?: (?:due|amount|price|quote|bid|cost|usd|for (?:the )?(?:above|job|project|order)))?${WITH}` +
    '\\s*(?:\\([^)]*\\))?\\s*[:=$]*\\s*$',
  'i',
);

/** Words that may stand before the name of a charge: "Estimated inbound freight", "State sales tax 7%". */
const BEFORE =
  '(?:(?:est(?:imated|\\.)?|inbound|outbound|ground|local|state|county|city|sales|use|trade|cash|early|volume|quantity|contractor|builder|plus|add|less|job ?site|site|flat|standard|prepaid|your|our|special|combined|packing,?|crating|and|&|\\d+(?:\\.\\d+)? ?%)[:,]? )*';
const charge = (words: string) => new RegExp(`^${BEFORE}(?:${words})(?![\\w-])`, 'i');
const CHARGES: readonly (readonly [ChargeKind, RegExp])[] = [
  ['discount', charge('discount|rebate|deduct(?:ion)?|less|credit')],
  ['deposit', charge('deposit|down payment|retainer')],
  ['freight', charge('freight|shipping|delivery|cartage|crating|packing|packaging|s ?& ?h|handling|postage')],
  ['tax', charge('tax|taxes|vat|gst|hst')],
  ['other charge', charge('priming|painting|staining|finishing|(?:priming or )?finish|minimum charge')],
  ['other charge', /^(?:[\w-]+ ){0,3}(?:surcharge|charge|fee)s?$/i],
];
const MOST_WORDS = 9;

/** Reads a row's words cell by cell; null where they name neither a charge nor a sum for certain. */
export function readLabel(cells: readonly string[]): Label | null {
  const texts = cells.filter((text) => /\p{L}/u.test(text)).map(plain);
  for (const text of texts) {
    if (SUBTOTAL.test(text)) return { kind: 'sum', sum: 'subtotal', text };
    if (TOTAL.test(text)) return { kind: 'sum', sum: 'total', text };
  }
  for (const text of texts) {
    if (text.split(' ').length > MOST_WORDS) continue;
    for (const [kind, pattern] of CHARGES)
      if (pattern.test(text)) {
        const charge = kind === 'other charge' ? chargeKind(text, null) : kind;
        return { kind: 'charge', charge, text, rate: rateIn(cells) };
      }
  }
  return null;
}

function plain(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

/** "7%", "(8.25 %)" in a row's words, as a fraction. */
export function rateIn(cells: readonly string[]): number | null {
  for (const text of cells) {
    const [, whole, above, below, decimal] =
      /(?:(\d+)[ -])?(?:(\d)\/(\d)|(\d+(?:\.\d+)?)) ?(?:%|percent\b|pct\b)/i.exec(text) ?? [];
    if (decimal !== undefined) return Number(decimal) / 100;
    if (above !== undefined) return (Number(whole ?? 0) + Number(above) / Number(below)) / 100;
  }
  return null;
}

const OF_SUM =
  /\b(?:sub-?totals?|totals?|ttl|tot|sum|merchandise|amount due|balance due|net due|carried forward|brought forward|bottom line|all in|turnkey|grand|net amount|please pay|pay this|goods|product net|materials only|contract (?:price|amount|sum)|quote(?:d)? (?:price|amount)|bid (?:price|amount)|delivered (?:price|total|cost)|(?:our )?price to you|lump sum(?: price)?|price for the above|invoice amount|extended net)\b/i;
const OF_ALL =
  /\b(?:grand|total due|amount due|balance due|bottom line|all in|turnkey|please pay|pay this|job total|quote total|project total|contract|bid price|bid amount|total quote|total bid|quote(?:d)? (?:price|amount)|delivered (?:price|total|cost)|price to you|lump sum)\b/i;
const KINDS: readonly (readonly [ChargeKind, RegExp])[] = [
  ['deposit', /\b(?:deposit|down payment|retainer|paid to date|payments? received|prepayment|payment)\b/i],
  ['tax', /\b(?:tax(?:es)?|vat|gst|hst|pst|s\/t|state (?:and|&) local)(?!\w)/i],
  [
    'freight',
    /\b(?:freight|shipping|ship|deliver(?:y|ed)|cartage|haul(?:ing|age)?|truck(?:ing)?|ltl|courier|crat(?:e|es|ing)|pallets?|skids?|packag(?:e|ing)|packing|handling|postage|fuel|liftgate|lift gate|drop|fob|f\.o\.b)\b/i,
  ],
  ['discount', /\b(?:discount|disc|rebate|deduct(?:ion)?|credit|less|off|courtesy|concession|savings?|adjustment)\b/i],
];

/** A sum by some of its words: "First floor total", "Net merchandise". */
export function namesSum(words: string): boolean {
  return OF_SUM.test(words);
}

/** What is named after a part of the building, of the paper or of the work is a sum of it: "Material & workmanship". */
export function namesPart(words: string): boolean {
  return /\b(?:materials?,? (?:and|&|\+) (?:workmanship|labou?r)|page|floors?|stor(?:y|ey)|level|wing|section|phase|building|elevation|sheet|group)\b/i.test(
    words,
  );
}

/** It is said to be of everything. */
export function namesTotal(words: string): boolean {
  return OF_ALL.test(words);
}

/** "Mult. 0.65", "0.65 multiplier": the goods are sold at this share of the amounts above; null where none is named. */
export function multiplierIn(words: string): number | null {
  const [, behind, before] =
    /\bmult(?:iplier|\.)? ?(?:of|at|by|[x×:@=])? ?(0?\.\d+)(?!\d)|(?<![\d.])(0?\.\d+) ?(?:net )?mult(?:iplier)?\b/i.exec(
      words,
    ) ?? [];
  const figure = Number(behind ?? before);
  return figure > 0 ? figure : null;
}

/** A charge for an order that is small, which no freight is: "Small order handling". */
const SMALL_ORDER = /\b(?:small|short|minimum)[- ](?:order|lot|run|quantity)\b/i;

/** What kind of charge a row's words name; money below 0 that they don't explain is a discount. */
export function chargeKind(words: string, amount: number | null): ChargeKind {
  if (SMALL_ORDER.test(words) && !(amount !== null && amount < 0)) return 'other charge';
  const kind = KINDS.find(([, pattern]) => pattern.test(words))?.[0];
  return kind ?? (amount !== null && amount < 0 ? 'discount' : 'other charge');
}

export function namesCharge(words: string): boolean {
  return (
    KINDS.some(([, pattern]) => pattern.test(words)) ||
    /\b(?:charges?|fees?|surcharge|set-?up|grind\w*|kni(?:fe|ves)|tooling|allowance|templates?|engineering|(?:shop )?drawings?|minimum|rush|expedite|samples?|install\w*|labor|trip|storage|insurance|contingency|overtime|admin\w*|bond|escalat\w*)\b/i.test(
      words,
    )
  );
}

const ALTERNATE =
  /^\W*(?:(?:deduct(?:ive)?|add(?:itive)?|bid|ve|value engineering)\s+)?(?:alt(?:ernates?|ernatives?)?|options?|optional|add(?:er|-on)|up-?charge|up-?grade|ve item)\b|^\W*ve\s*[:#-]|^\W*if\b.*\b(?:add|deduct)\b/i;

/** An offer beside the quote, added or taken off when it is chosen: never a discount. */
export function namesAlternate(words: string): boolean {
  return ALTERNATE.test(words) || /\b(?:deduct(?:ive)?|add(?:itive)?)[ -]alt(?:ernate)?s?\b/i.test(words);
}

const GOODS =
  /\b(?:casings?|csgs?|crv|cvd|arch(?:es|ed)?|arc|heads?|trim|moldings?|mouldings?|curved|radius|segmental|half[ -]?rounds?|round top|ellip\w*|gothic|pointed|eyebrow|jambs?|legs?|stools?|aprons?|keystones?|plinths?|rosettes?|blocks?|returns?|windows?|doors?|openings?|lf|pieces?|balance of)\b/i;

/** Words of molding or what goes with it: such a row is a line even without a mark. */
export function namesGoods(words: string): boolean {
  return GOODS.test(words);
}
