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

/** Reads a row's words cell by cell; null where they name neither a charge nor a sum. */
export function readLabel(cells: readonly string[]): Label | null {
  const texts = cells.filter((text) => /\p{L}/u.test(text));
  for (const text of texts) {
    const plain = text.replace(/\s+/g, ' ').trim();
    if (SUBTOTAL.test(plain)) return { kind: 'sum', sum: 'subtotal', text: plain };
    if (TOTAL.test(plain)) return { kind: 'sum', sum: 'total', text: plain };
  }
  for (const text of texts) {
    const plain = text.replace(/\s+/g, ' ').trim();
    if (plain.split(' ').length > MOST_WORDS) continue;
    for (const [charge, pattern] of CHARGES) {
      if (!pattern.test(plain)) continue;
      const percent = texts.map((one) => /(\d+(?:\.\d+)?) ?%/.exec(one)?.[1]).find((digits) => digits !== undefined);
      return { kind: 'charge', charge, text: plain, rate: percent === undefined ? null : Number(percent) / 100 };
    }
  }
  return null;
}
