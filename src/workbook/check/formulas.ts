import { said } from '../../check/rules/expression';
import { lineReason, lineVerdict } from '../../check/rules/verdict';
import type { RadiusBasis, LengthBasis } from '../../quote/quote';
import type { Unit } from '../../unit';
import { lengthTextFormula } from '../sharedFormulas';
import type { FigureName } from '../../takeoff/figures';
import { quote } from '../../formulaText';
import { its, type CheckKey } from './columns';
import { figureAt, inputAt } from '../takeoff/lookup';
import { takeoffRange } from '../takeoff/places';

/*
 * The Check sheet's formulas, templates by the keys of `columns.ts`. Those that judge a figure or a line are the rules of `src/check/rules`;
 * here are the figures that they read, and the money.
 */

/** A figure of the opening on the line's place in the takeoff; blank where it has none. */
export function ours(of: FigureName | 'quantity' | 'unit price', openings: number, plain: boolean): string {
  const cell = of === 'quantity' ? inputAt(of, its.place, openings) : figureAt(of, its.place, openings, plain);
  // A count that is asked about is text in the takeoff.
  const text = of === 'quantity' ? `IF(ISTEXT(${cell}),"",${cell})` : cell;
  return `IF(${its.place}="","",IF(${cell}="","",${text}))`;
}

export const RADIUS_FIGURES: Readonly<Record<RadiusBasis, FigureName>> = {
  inside: 'inside radius',
  outside: 'outside radius',
  opening: 'radius',
};
export const LENGTH_FIGURES: Readonly<Record<LengthBasis, FigureName>> = {
  outside: 'long point',
  'all pieces': 'long point',
  'with legs': 'long point',
  inside: 'inside length',
  center: 'center length',
};

export function placeFormula(openings: number): string {
  return `IF(${its.mark}="","",IFERROR(MATCH(${its.mark},${takeoffRange('mark', openings)},0),""))`;
}

/** What was said of a figure when it was checked, and for which figures it was said. */
export interface Written {
  readonly quoted: number;
  readonly right: number;
  readonly tolerance: number;
  readonly text: string;
}

const figure = (value: number) => value.toFixed(9);

/**
 * What is said of a radius or length that isn't ours. Which mistake explains it has no closed form: what was found is shown as long as
 * the figures are the ones it was found for. After that the worksheet function names it, `openings` being how many the takeoff has,
 * or without it (null) a further check.
 */
export function wrongCurve(
  kind: 'radius' | 'length',
  written: Written | null,
  unit: Unit,
  openings: number | null,
): string {
  const [quoted, right] = kind === 'radius' ? [its.radius, its.ourRadius] : [its.length, its.ourLength];
  const same = (cell: string, value: number) => `ABS(${cell}-${figure(value)})<0.000001`;
  const off = `${lengthTextFormula(`ABS(${quoted}-${right})`, unit)}&IF(${quoted}<${right}," short"," long")&"; check again to name the mistake"`;
  const otherwise = openings === null ? off : lengthCheck(openings);
  return written
    ? `IF(AND(${same(quoted, written.quoted)},${same(right, written.right)},${same('Shop_tolerance', written.tolerance)}),${quote(written.text)},${otherwise})`
    : otherwise;
}

/** The worksheet function, which knows every mistake in a length. */
function lengthCheck(openings: number): string {
  const inputs = ['head', 'span', 'rise', 'face', 'reveal', 'ends'] as const;
  const args = inputs.map((input) => inputAt(input, its.place, openings)).join(',');
  return `ARCH.LENGTHCHECK(${its.length},${args},Shop_tolerance)`;
}

const COMPARED = ['openingSays', 'quantitySays', 'radiusSays', 'lengthSays', 'extensionSays', 'priceSays'] as const;
export type Compared = (typeof COMPARED)[number];

/** The figures that are compared with ours: the quote's own sums agreeing say nothing of them. */
const JUDGED = COMPARED.filter((key) => key !== 'extensionSays');

export const VERDICT = lineVerdict<Readonly<Record<Compared, string>>>(
  COMPARED.map((key) => said(key)),
  JUDGED.map((key) => said(key)),
);

/** A comparison by name, where a line agrees in it; before what differs in it, but for the opening's sentences, with a colon. */
const NAMES: Readonly<Record<Compared, string>> = {
  openingSays: 'sizes',
  quantitySays: 'quantity',
  radiusSays: 'radius',
  lengthSays: 'length',
  extensionSays: 'extension',
  priceSays: 'price',
};

export const REASON = lineReason<Readonly<Record<Compared | 'verdict', string>>>(
  said('verdict'),
  COMPARED.map((key) => ({
    text: said(key),
    name: NAMES[key],
    label: key === 'openingSays' ? '' : `${NAMES[key]}: `,
  })),
);

/** Beside a quoted figure: that it agrees, or the right one, a length in inches to the sixteenth that a tape has. */
export function beside(quoted: CheckKey, says: Compared, ours: CheckKey, unit: Unit): string {
  const isLength = quoted === 'radius' || quoted === 'length';
  const right = isLength && unit === 'in' ? `IF(${its[ours]}="","",ROUND(${its[ours]}*16,0)/16)` : its[ours];
  return `IF(${its[quoted]}="","",IF(${its[says]}="agrees","agrees",${right}))`;
}
