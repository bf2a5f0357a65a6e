import { HEAD_SHAPES, type HeadShape } from '../../head/head';
import { arcRadius, half } from '../working/headFormulas';
import { PLAIN_HEADS } from '../working/heads';
import { argumentsAt, partsOf, textOf, type Part } from './lexer';

/**
 * The plain twin: a formula with worksheet functions of ours rewritten in functions every spreadsheet has, so that a
 * workbook calculates where the add-in isn't. Each rewriting takes the arguments as formula text. No LET, LAMBDA or
 * XLOOKUP: LibreOffice and older Excel know none of them.
 */

type Rewrite = (...args: string[]) => string;

const REWRITES: Readonly<Record<string, Rewrite>> = {
  RADIUS: arcRadius,
  ANGLE: (span, rise) => `DEGREES(4*ATAN(2*${rise}/${span}))`,
  HEADLENGTH: (head, span, rise, offset = '0', ends = '"radial"', haunch = '""') => {
    const of = (shape: HeadShape) => PLAIN_HEADS[shape].length(span!, rise!, offset, ends, haunch);
    const named = HEAD_SHAPES.find((shape) => head === `"${shape}"`);
    if (named !== undefined) return `(${of(named)})`;
    const chain = HEAD_SHAPES.reduceRight(
      (otherwise, shape) => `IF(${head}="${shape}",${of(shape)},${otherwise})`,
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
