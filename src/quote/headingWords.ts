import type { QuoteKey } from './meanings';

/** Longer headings are sentences. */
const MOST_WORDS = 7;

const has = (words: string) => {
  const pattern = new RegExp(`\\b(?:${words})\\b`);
  return (text: string) => pattern.test(text);
};

const FEET = '(?:lin|linear|lineal|running|run) (?:feet|foot|ft)|lf|lft|l f|foot|ft|feet|footage';
const isFoot = has(FEET);
const isPerFoot = has(
  `(?:per|a|by the|each) (?:${FEET})|(?:${FEET}) (?:price|cost|rate|charge|sell)|(?:price|cost|rate|charge|sell) (?:${FEET})|plf`,
);
const isMoney = has(
  'prices?|priced|pricing|costs?|rate|amounts?|amt|charges?|charged|sell(?:ing)?|dollars?|usd|quoted|bid|figure|fee|value|money|payable|billed|our price|your price|your cost|contractor|nett?',
);
const isPair = has('pairs?|pr|prs|per set|a set');
const isEach = has('each|ea|unit|units|piece|pieces|pc|pcs|per|apiece|one|single|single piece|a piece');
const isWholeLine = has(
  'ext|extd?|extended|extension|extensions|line|item total|row|lot|all|sum|lump|totals?|ttl|tot|x qty|qty x',
);
const isLength = has(
  'lengths?|len|lgth|lg|long|arc|run|developed|stretch ?out|girth|lineal|linear|l p|lp|long pt|oal|o a l|around|curve|perimeter',
);
const isRadius = has('radius|rad|radii');
const isInside = has('inside|inner|ins|is|i s|short point|short pt|sp|s p|ir|id|short');
const isOutside = has('outside|outer|os|o s|long point|or|od|extrados');
const isOpening = has('opening|jamb|frame|opng|rough|window|door|clear|unit|glass|sash');
const isCasing = has('casing|casings|trim|molding|moulding|mold|profile|face|stock|material|member|section|wall|case');

/** The meaning of a heading by the words in it, where the whole of it is not known; null where they say nothing for certain. */
export function byWords(normal: string): QuoteKey | null {
  if (normal === '' || normal.split(' ').length > MOST_WORDS) return null;
  return KINDS.map((kind) => kind(normal)).find((key) => key !== null) ?? null;
}

type Kind = (text: string) => QuoteKey | null;

const money: Kind = (text) => {
  if (/^less(?: %)?$/.test(text) || has('mult|multiplier')(text)) return 'discount';
  if (/^(?:u p|at)$/.test(text)) return 'unitPrice';
  if (has('tax(?:able|ed)?|freight|weight|lead|time|date')(text)) return null;
  if (has('disc|discount|off|trade disc')(text))
    return has('price|net|after|less')(text) && !has('%|percent|pct')(text) ? 'unitPrice' : 'discount';
  const paid = isMoney(text) || has('list|retail|msrp|book')(text);
  if (isPerFoot(text) || (paid && isFoot(text))) return 'footPrice';
  if (
    !paid &&
    !(
      has('ext|extd?|extended|extension|extensions|ttl|totals?')(text) &&
      !isLength(text) &&
      !isFoot(text) &&
      !has('qty|quantity|pieces|pcs|count|ea|units')(text)
    )
  )
    return null;
  if (isLength(text) && !has('price|cost|rate|charge|amount|sell')(text)) return null;
  if (has('list|retail|msrp|book')(text) && !isWholeLine(text)) return 'listPrice';
  if (isPair(text)) return 'pairPrice';
  if (isWholeLine(text) && !has('unit|each|ea|per|piece|pc|apiece')(text)) return 'extension';
  if (isEach(text)) return 'unitPrice';
  return has('amounts?|amt|value|payable|billed')(text) ? 'extension' : 'unitPrice';
};

const radius: Kind = (text) => {
  if (has('dia|diam|diameter')(text)) return 'diameter';
  if (!isRadius(text) && !(has('r|ir|or')(text) && (isInside(text) || isOutside(text) || isOpening(text)))) return null;
  if (isOutside(text)) return 'outsideRadius';
  return isOpening(text) ? 'openingRadius' : 'radius';
};

const legs: Kind = (text) => {
  if (!has('legs?|sides?|stiles?|side pieces?|side casings?|straights?')(text)) return null;
  if (has('with|w|incl|including|and|plus|head')(text) && isLength(text)) return 'lengthWithLegs';
  if (has('qty|quantity|count|no|number|pcs|pieces|how many')(text)) return 'legCount';
  return isLength(text) || has('height|ht|legs?')(text) ? 'leg' : null;
};

const length: Kind = (text) => {
  if (!isLength(text) && !isFoot(text)) return null;
  if (has('board|bd|sq|square|wide|high')(text)) return null;
  if (isInside(text) && !has('long point|long pt|outside')(text)) return 'insideLength';
  if (has('center|centre|ctr|centerline|cl|c l|middle')(text)) return 'centerLength';
  return has('totals?|all|ttl|combined|together|order|line')(text) ||
    (isFoot(text) && !has('length|len|long|each|ea|piece|pc')(text))
    ? 'totalLength'
    : 'length';
};

const sides: Kind = (text) => {
  if (has('reveal|setback')(text)) return 'reveal';
  if (has('rise|sagitta|camber')(text)) return 'rise';
  if (has('thick|thickness|thk|thkness')(text)) return 'thickness';
  if (!has('width|wd|wide|w|span|face')(text)) return null;
  if (has('blank|board|rough|r o|ro')(text)) return 'aside';
  return isCasing(text) && !isOpening(text) ? 'face' : 'span';
};

const words: Kind = (text) => {
  if (has('uom|u m|measure|meas|sold by|priced by|per')(text)) return 'measure';
  if (
    has(
      'qty|quan|quant|quantity|quantities|count|pcs|pieces|how many|number of|no of|nos|no off|sets|reqd|required|ordered|needed|order qty|ea|units ordered',
    )(text)
  )
    return 'quantity';
  if (
    has(
      'goods|workmanship|description|desc|descr|descriptions?|particulars|details?|scope|remarks?|notes?|comments?|specification|specs?|spec|product|article',
    )(text)
  )
    return 'description';
  if (/^(?:goods|item description)$/.test(text)) return 'description';
  if (has('finish|profile|pattern|grade|stain|color')(text)) return 'aside';
  if (has('species|wood|lumber|timber')(text)) return 'species';
  if (has('shape|style|head|config|configuration|top')(text)) return 'head';
  if (has('ends?|end cuts?')(text)) return 'ends';
  if (
    has(
      'mark|marks|tags?|tag no|symbol|ref|reference|opening|openings|window|windows|door|doors|plan|plans|schedule|sched|opng|opg|wdw|unit id|id',
    )(text)
  )
    return 'mark';
  if (has('type|types|key|item|items|line|no|number')(text)) return 'mark';
  if (has('room|location|floor|level|area|elevation|where|line no')(text)) return 'aside';
  return null;
};

/** In the order in which they are asked: "Unit price per foot" is money before it is anything in feet. */
const KINDS: readonly Kind[] = [money, radius, legs, length, sides, words];
