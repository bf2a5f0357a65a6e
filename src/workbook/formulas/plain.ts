import type { HeadShape } from '../../head/head';
import { its } from '../working/keys';
import { argumentsAt, partsOf, textOf, type Part } from './lexer';

/**
 * The plain twin: a formula with worksheet functions of ours rewritten in functions every spreadsheet has, so that a
 * workbook calculates where the add-in isn't. Each rewriting takes the arguments as formula text. No LET, LAMBDA or
 * XLOOKUP: LibreOffice and older Excel know none of them.
 */

type Rewrite = (...args: string[]) => string;

/** a = half the span; every argument stands in parentheses already. */
const half = (span: string) => `(${span}/2)`;
const arcRadius = (span: string, rise: string) => `((${half(span)}^2+${rise}^2)/(2*${rise}))`;

/** Midpoints of 64 equal parts of a right angle, in 128ths: the midpoint rule converges like a power on an ellipse. */
const MIDPOINTS = `{${Array.from({ length: 64 }, (_, at) => 2 * at + 1).join(',')}}*PI()/256`;

type LengthOf = (s: string, h: string, d: string, ends: string, haunch: string) => string;

const LENGTHS: readonly (readonly [head: string, length: LengthOf])[] = [
  [
    'segmental',
    (s, h, d, ends) => {
      const radius = arcRadius(s, h);
      const level = `2*ATAN2(${radius}-${h},SQRT((${d}+${h})*(2*${radius}+${d}-${h})))`;
      const legs = `2*ATAN2((${half(s)}-${h})*SQRT((${half(s)}+${h})^2+4*${h}*${d})/(2*${h}),${half(s)}+${d})`;
      return `(${radius}+${d})*IF(${ends}="legs",${legs},IF(${ends}="level",${level},4*ATAN(2*${h}/${s})))`;
    },
  ],
  ['half round', (s, _h, d) => `PI()*(${half(s)}+${d})`],
  [
    'quarter round',
    (s, _h, d, ends) => `(${s}+${d})*(PI()/2+IF(${ends}="legs",ATAN2(SQRT(${s}*(${s}+2*${d})),${d}),0))`,
  ],
  ['round', (s, _h, d) => `2*PI()*(${half(s)}+${d})`],
  [
    'elliptical',
    (s, h, d) => `SUMPRODUCT(SQRT((${half(s)}*SIN(${MIDPOINTS}))^2+(${h}*COS(${MIDPOINTS}))^2))*PI()/64+PI()*${d}`,
  ],
  [
    'three-centered',
    (s, h, d) => {
      const { haunch, crown } = bisector(s, h);
      const turn = `ATAN2(${half(s)}-${haunch},${crown}-${h})`;
      return `2*(${haunch}*${turn}+${crown}*(PI()/2-${turn}))+PI()*${d}`;
    },
  ],
  [
    'pointed',
    (s, h, d) => {
      const radius = `((${half(s)}^2+${h}^2)/${s})`;
      return `2*(${radius}+${d})*ATAN2(${radius}-${half(s)},SQRT((${d}+${half(s)})*(2*${radius}+${d}-${half(s)})))`;
    },
  ],
  ['straight', (s, _h, d, ends) => `${s}+IF(${ends}="square",0,2*${d})`],
  ['radius corners', (s, h, d) => `${s}-2*${h}+PI()*(${h}+${d})`],
  [
    'full ellipse',
    (s, h, d) =>
      `SUMPRODUCT(SQRT((${half(s)}*SIN(${MIDPOINTS}))^2+(${half(h)}*COS(${MIDPOINTS}))^2))*PI()/32+2*PI()*${d}`,
  ],
  [
    'half segmental',
    (s, h, d, ends) => {
      const radius = oneSidedRadius(s, h);
      const level = `ATAN2(${radius}-${h},SQRT((${d}+${h})*(2*${radius}+${d}-${h})))`;
      const low = `ATAN2((${s}-${h})*SQRT((${s}+${h})^2+4*${h}*${d})/(2*${h}),${s}+${d})`;
      const high = `ATAN2(SQRT(${radius}*(${radius}+2*${d})),${d})`;
      return `(${radius}+${d})*IF(${ends}="legs",${low}+${high},IF(${ends}="level",${level},2*ATAN(${h}/${s})))`;
    },
  ],
  [
    // Up to the jamb line; what runs on to a high leg is added where it is worked out.
    'quarter ellipse',
    (s, h, d) => `SUMPRODUCT(SQRT((${s}*SIN(${MIDPOINTS}))^2+(${h}*COS(${MIDPOINTS}))^2))*PI()/128+PI()/2*${d}`,
  ],
  [
    'four-centered',
    (s, h, d, _ends, given) => {
      const { haunch, crown, upper } = fourCentered(s, h, given);
      return `2*((${haunch}+${d})*PI()/3+(${crown}+${d})*(${upper(d)}))`;
    },
  ],
  [
    'gable',
    (s, h, d, ends) => {
      const side = `SQRT(${half(s)}^2+${h}^2)`;
      return `2*(${side}+${d}*(${endGain(ends, side, h, half(s))}+${h}/${half(s)}))`;
    },
  ],
  [
    'clipped corners',
    (s, h, d, ends, given) => {
      const along = `IF(${given}="",${h},${given})`;
      const side = `SQRT((${along})^2+${h}^2)`;
      const corner = `(${side}-${along})/${h}`;
      return `2*(${side}+${d}*(${endGain(ends, side, h, along)}+${corner}))+${s}-2*${along}+2*${d}*${corner}`;
    },
  ],
  [
    'shed',
    (s, h, d, ends) => {
      const side = `SQRT(${s}^2+${h}^2)`;
      return `${side}+${d}*(${endGain(ends, side, h, s)}+IF(${ends}="legs",(${side}+${h})/${s},0))`;
    },
  ],
  ['octagon', (s, _h, d) => `8*(${s}+2*${d})*(SQRT(2)-1)`],
];

/** Radius of one unit of a pair, its crown over the high jamb. */
function oneSidedRadius(s: string, h: string): string {
  return `((${s}^2+${h}^2)/(2*${h}))`;
}

/** How much longer a slope gets at its foot for each unit of offset: its `side` long, rising `h` over `run`. */
function endGain(ends: string, side: string, h: string, run: string): string {
  return `IF(${ends}="legs",(${side}-${h})/(${run}),IF(${ends}="level",(${run})/${h},0))`;
}

/**
 * A four-centered head by its haunch radius, left out a quarter of the span: the radius of its upper arcs, and in radians how far
 * one of them turns at an offset.
 */
export function fourCentered(
  s: string,
  h: string,
  given: string,
): { haunch: string; crown: string; upper: (d: string) => string } {
  const haunch = `IF(${given}="",${s}/4,${given})`;
  const side = `(${half(s)}-${haunch})`;
  const along = `((SQRT(3)*${h}-${side})/2)`;
  const crown = `((${side}^2+${h}^2+${haunch}^2-2*${haunch}*${along})/(2*(${haunch}-${along})))`;
  const center = `((${crown}-${haunch})/2-${side})`;
  const upper = (d: string) => `ACOS(${center}/(${crown}+${d}))-PI()/3`;
  return { haunch, crown, upper };
}

/** Radii of the three-centered arch by the bisector construction. */
function bisector(s: string, h: string): { haunch: string; crown: string } {
  const diagonal = `SQRT(${half(s)}^2+${h}^2)`;
  return {
    haunch: `((${diagonal}^2-(${half(s)}-${h})*${diagonal})/${s})`,
    crown: `((${diagonal}^2+(${half(s)}-${h})*${diagonal})/(2*${h}))`,
  };
}

const NOT_HALF_SPAN = `ABS(${its.rise}-${its.span}/2)>0.000000001*${its.span}`;
/** Which rises a head can't have, where it has one of its own to judge; in the words of the sheet Working. */
export const RISE_MISFIT: Partial<Readonly<Record<HeadShape, string>>> = {
  segmental: `${its.rise}<=0`,
  'half round': NOT_HALF_SPAN,
  elliptical: `NOT(AND(${its.rise}>0,${NOT_HALF_SPAN}))`,
  'three-centered': `NOT(AND(${its.rise}>0,${its.rise}<${its.span}/2,${NOT_HALF_SPAN}))`,
  pointed: `NOT(AND(${its.rise}>${its.span}/2,${NOT_HALF_SPAN}))`,
  'radius corners': `NOT(AND(${its.rise}>0,${its.rise}<=${its.span}/2*1.000000001))`,
  'full ellipse': `NOT(AND(${its.rise}>0,ABS(${its.rise}-${its.span})>0.000000001*${its.span}))`,
  'half segmental': `NOT(AND(${its.rise}>0,${its.rise}<=${its.span}*1.000000001))`,
  'quarter ellipse': `NOT(AND(${its.rise}>0,ABS(${its.rise}-${its.span})>0.000000001*${its.span}))`,
  'four-centered': `NOT(AND(${its.rise}>0,${its.rise}<${its.span}/SQRT(3)))`,
  gable: `${its.rise}<=0`,
  'clipped corners': `${its.rise}<=0`,
  shed: `${its.rise}<=0`,
};

const REWRITES: Readonly<Record<string, Rewrite>> = {
  RADIUS: arcRadius,
  ANGLE: (span, rise) => `DEGREES(4*ATAN(2*${rise}/${span}))`,
  HEADLENGTH: (head, span, rise, offset = '0', ends = '"radial"', haunch = '""') => {
    const named = LENGTHS.find(([shape]) => head === `"${shape}"`);
    if (named) return `(${named[1](span!, rise!, offset, ends, haunch)})`;
    const chain = LENGTHS.reduceRight(
      (otherwise, [shape, length]) =>
        `IF(${head}="${shape}",${length(span!, rise!, offset, ends, haunch)},${otherwise})`,
      'NA()',
    );
    return `(${chain})`;
  },
  MITER: (span, rise, face, reveal = '0') => {
    const corner = (offset: string) => `SQRT((${half(span!)}+${rise})^2+4*${rise}*(${offset}))`;
    return `DEGREES(ATAN(2*(${half(span!)}-${rise})/(${corner(reveal)}+${corner(`${reveal}+${face}`)})))`;
  },
  SEGMENTS: (radius, face, angle, board, margin = '0', grain = '30') => {
    const inside = `(${radius}-${margin})`;
    const outside = `(${radius}+${face}+${margin})`;
    const widestTurn = `ACOS(MAX(-1,(${outside}-${board})/${inside}))`;
    return `MAX(1,ROUNDUP(MAX(${angle}/(2*${grain}),RADIANS(${angle})/(2*${widestTurn}))-0.000000001,0))`;
  },
  BLANKWIDTH: (radius, face, angle, count, margin = '0') =>
    `(${face}+2*${margin}+(${radius}-${margin})*2*SIN(RADIANS(${angle})/4/${count})^2)`,
  BLANKLENGTH: (radius, face, angle, count, margin = '0') =>
    `(2*(${radius}+${face}+${margin})*TAN(RADIANS(${angle})/2/${count}))`,
  BOARDFEET: (thickness, width, length, quantity = '1') => `(MAX(${thickness},1)*${width}*${length}*${quantity}/144)`,
  CUTSPERINCH: (rpm, knives, feed, feedRadius, edgeRadius) =>
    `(${rpm}*${knives}/(12*${feed})${feedRadius === undefined ? '' : `*${feedRadius}/${edgeRadius}`})`,
  RUNTIME: (length, feed, passes = '1', handling = '0') => `(${passes}*${length}/(12*${feed})+${handling})`,
};

/**
 * Rewrites every `ARCH.` call of a formula. `written` gives the value of a call that has no closed form (the arcs that
 * best fit an ellipse); such a formula no longer follows its arguments, and the cell must say so.
 */
export function plainFormula(formula: string, written: (call: string) => number): { formula: string; fixed: boolean } {
  let fixed = false;
  const rewrite = (parts: readonly Part[]): string => {
    const at = parts.findIndex(({ kind, text }) => kind === 'call' && text.startsWith('ARCH.'));
    if (at < 0) return textOf(parts);
    const picked = parts[at - 2]?.text === 'INDEX';
    const from = picked ? at - 2 : at;
    const { args, close } = argumentsAt(parts, from + 1);
    const [before, rest] = [textOf(parts.slice(0, from)), rewrite(parts.slice(close + 1))];
    if (picked) {
      fixed = true;
      return `${before}${written(textOf(parts.slice(from, close + 1)))}${rest}`;
    }
    const rule = REWRITES[parts[at]!.text.slice('ARCH.'.length)];
    // A formula of ours that has no plain form is a mistake of the workbook's columns; the tests rewrite each one.
    return rule ? `${before}${rule(...args.map((arg) => parenthesized(rewrite(arg))))}${rest}` : `${before}NA()${rest}`;
  };
  return { formula: rewrite(partsOf(formula)), fixed };
}

/** Cell references, names, numbers and quoted text stand as they are; anything longer goes into parentheses. */
function parenthesized(text: string): string {
  const [first, ...more] = partsOf(text);
  const stands = first !== undefined && more.length === 0 && /^(?:cells|name|number|text|logical)$/.test(first.kind);
  return stands ? text : `(${text})`;
}
