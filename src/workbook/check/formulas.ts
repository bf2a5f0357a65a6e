import type { CountedBy } from '../../check/quote/checkLine';
import type { RadiusBasis, LengthBasis } from '../../quote/quote';
import type { Unit } from '../../unit';
import { lengthTextFormula } from '../lengthFormula';
import type { FigureName } from '../../takeoff/figures';
import { quote } from '../quote';
import { figureAt, inputAt } from '../takeoff/lookup';
import { takeoffRange } from '../takeoff/places';

/**
 * The Check sheet's formulas, templates as in `columns.ts`; `{lacks}` is "given", or "read" where a line has figures under
 * headings that aren't understood. They say the same as `says.ts` says in values: an edit of the
 * quote or of the takeoff judges the line again.
 */

/** A figure of the opening on the line's place in the takeoff; blank where it has none. */
export function ours(of: FigureName | 'quantity' | 'unit price', openings: number, plain: boolean): string {
  const cell = of === 'quantity' ? inputAt(of, '{place}', openings) : figureAt(of, '{place}', openings, plain);
  // A count that is asked about is text in the takeoff.
  const text = of === 'quantity' ? `IF(ISTEXT(${cell}),"",${cell})` : cell;
  return `IF({place}="","",IF(${cell}="","",${text}))`;
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
  return `IF({mark}="","",IFERROR(MATCH({mark},${takeoffRange('mark', openings)},0),""))`;
}

/** The price of one piece, from the extension where the quote gives no unit price. */
export const UNIT_FORMULA =
  'IF({unitPrice}<>"",{unitPrice},IF({extension}="","",IF({quantity}="","",{extension}/{quantity})))';

export const AMOUNT_FORMULA =
  'IF({extension}<>"",{extension},IF({quantity}="",0,IF({unitPrice}="",0,ROUND({quantity}*{unitPrice},2))))';

const noOpening = (rest: string) => `IF({place}="","can't tell: no such mark in the takeoff",${rest})`;
const given = (key: string, name: string, rest: string) => `IF({${key}}="","can't tell: no ${name} {lacks}",${rest})`;
const known = (key: string, name: string, rest: string) =>
  `IF({${key}}="","can't tell: no ${name} in the takeoff",${rest})`;

/** Pieces of all lines for the same opening. */
const TOGETHER = 'SUMIFS({quantity:all},{place:all},{place})';

/** The pieces that a line's count is judged by. */
const countOf = (by: CountedBy) => (by === 'itself' ? '{quantity}' : TOGETHER);

/** Of lines that are counted together the first says what is wrong with their sum. */
export function quantitySays(by: CountedBy): string {
  const count = countOf(by);
  const off =
    by === 'with the first'
      ? '""'
      : `IF(${count}*2={ourQuantity},` +
        `IF(${count}=1,"one piece counted for a pair or quantity of one","one piece counted for a pair"),` +
        `IF(${count}={ourQuantity}*2,"a pair counted for one piece",IF(${count}=1,"quantity of one",` +
        `ABS(${count}-{ourQuantity})&IF(${count}<{ourQuantity}," too few"," too many"))))`;
  const compared = `IF(${count}={ourQuantity},"agrees",${off})`;
  return noOpening(given('quantity', 'quantity', known('ourQuantity', 'quantity', compared)));
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
 * A length or radius against ours. Which mistake explains it has no closed form: the name found when it was checked is shown
 * as long as the figures are the ones it was found for.
 */
export function shapeSays(kind: 'radius' | 'length', written: Written | null, unit: Unit): string {
  const [quoted, right] = kind === 'radius' ? ['{radius}', '{ourRadius}'] : ['{length}', '{ourLength}'];
  const same = (cell: string, value: number) => `ABS(${cell}-${figure(value)})<0.000001`;
  const off = `${lengthTextFormula(`ABS(${quoted}-${right})`, unit)}&IF(${quoted}<${right}," short"," long")&"; check again to name the mistake"`;
  const named = written
    ? `IF(AND(${same(quoted, written.quoted)},${same(right, written.right)},${same('Shop_tolerance', written.tolerance)}),${quote(written.text)},${off})`
    : off;
  return noOpening(
    given(
      kind,
      kind,
      known(
        kind === 'radius' ? 'ourRadius' : 'ourLength',
        kind,
        `IF(ABS(${quoted}-${right})<=Shop_tolerance+0.000000001*MAX(1,${right}),"agrees",${named})`,
      ),
    ),
  );
}

/** The length judged by the worksheet function, which knows every mistake. */
export function lengthCheckSays(openings: number): string {
  const inputs = ['head', 'span', 'rise', 'face', 'reveal', 'ends'] as const;
  const args = inputs.map((input) => inputAt(input, '{place}', openings)).join(',');
  return noOpening(
    given('length', 'length', known('ourLength', 'length', `ARCH.LENGTHCHECK({length},${args},Shop_tolerance)`)),
  );
}

const money = (amount: string) => `"$"&FIXED(ABS(${amount}),2)&IF(${amount}<0," too little"," too much")`;

export const EXTENSION_SAYS = given(
  'extension',
  'extension',
  given(
    'unitPrice',
    'unit price',
    given(
      'quantity',
      'quantity',
      'IF(ABS({extension}-{quantity}*{unitPrice})<=0.005*MAX(1,{quantity})+0.0050001,"agrees",' +
        `${money('({extension}-{quantity}*{unitPrice})')})`,
    ),
  ),
);

export const PRICE_SAYS = noOpening(
  given(
    'unit',
    'price',
    known(
      'ourPrice',
      'price',
      'IF({ourPrice}=0,"can\'t tell: our own price is 0",' +
        'IF(ABS({unit}/{ourPrice}-1)<=Shop_price_band+0.000000001,"agrees",' +
        'FIXED(ABS({unit}/{ourPrice}-1)*100,1,TRUE)&"% "&IF({unit}<{ourPrice},"below","above")&" ours"))',
    ),
  ),
);

export const COMPARED = [
  'openingSays',
  'quantitySays',
  'radiusSays',
  'lengthSays',
  'extensionSays',
  'priceSays',
] as const;
export type Compared = (typeof COMPARED)[number];
const differs = (key: string) => `AND({${key}}<>"",{${key}}<>"agrees",LEFT({${key}},10)<>"can't tell")`;
const open = (key: string) => `AND(LEFT({${key}},10)="can't tell",RIGHT({${key}},6)<>" given")`;

export const VERDICT_FORMULA =
  `IF(OR(${COMPARED.map(differs).join(',')}),"differs",IF(OR(${COMPARED.map(open).join(',')}),"can't tell",` +
  'IF(OR({quantitySays}="agrees",{radiusSays}="agrees",{lengthSays}="agrees",{priceSays}="agrees"),"agrees","can\'t tell")))';

/** A figure by its name, where a line agrees in it. */
export const FIGURE_NAMES: Readonly<Record<Compared, string>> = {
  openingSays: 'opening',
  quantitySays: 'quantity',
  radiusSays: 'radius',
  lengthSays: 'length',
  extensionSays: 'extension',
  priceSays: 'price',
};

/** Before what is said of a figure; that of the opening is a sentence of its own. */
export const REASON_LABELS: Readonly<Record<Compared, string>> = {
  openingSays: '',
  quantitySays: 'quantity: ',
  radiusSays: 'radius: ',
  lengthSays: 'length: ',
  extensionSays: 'extension: ',
  priceSays: 'price: ',
};

const joined = (parts: readonly string[]) => `MID(${parts.join('&')},3,2000)`;
const TELL = "can't tell: ".length;

export const REASON_FORMULA =
  `IF({verdict}="differs",${joined(COMPARED.map((key) => `IF(${differs(key)},"; ${REASON_LABELS[key]}"&{${key}},"")`))},` +
  `IF({verdict}="agrees",${joined(COMPARED.map((key) => `IF({${key}}="agrees",", ${FIGURE_NAMES[key]}","")`))},` +
  `${joined(
    COMPARED.map(
      (key) => `IF(LEFT({${key}},10)="can't tell","; ${REASON_LABELS[key]}"&MID({${key}},${TELL + 1},1000),"")`,
    ),
  )}))`;

/** Beside a quoted figure: that it agrees, or the right one, a length in inches to the sixteenth that a tape has. */
export function beside(quoted: string, says: Compared, ours: string, unit: Unit): string {
  const isLength = quoted === 'radius' || quoted === 'length';
  const right = isLength && unit === 'in' ? `IF({${ours}}="","",ROUND({${ours}}*16,0)/16)` : `{${ours}}`;
  return `IF({${quoted}}="","",IF({${says}}="agrees","agrees",${right}))`;
}

/** What the line comes to at the price it quotes, its count and its own arithmetic put right. */
export function rightAmount(by: CountedBy): string {
  return (
    `IF(OR(${differs('quantitySays')},${differs('extensionSays')}),` +
    `ROUND(({quantity}+IF(${differs('quantitySays')},{ourQuantity}-${countOf(by)},0))*{unit},2),{amount})`
  );
}

export const EXTENSION_BESIDE =
  'IF({extension}="",{rightAmount},IF(ABS({extension}-{rightAmount})<0.005,"agrees",{rightAmount}))';

export const OFF_FORMULA = 'ROUND({amount}-{rightAmount},2)';

/** The line's price above or below ours by more than the band. Lines that are counted together each bear that of their own pieces. */
export function priceOff(by: CountedBy): string {
  const pieces = by === 'itself' ? '{ourQuantity}' : '{quantity}';
  return `ROUND(IF(${differs('priceSays')},({unit}-{ourPrice})*N(${pieces}),0),2)`;
}

export const HANGS_FORMULA =
  `IF(AND(OR(${(['openingSays', 'radiusSays', 'lengthSays'] as const).map(differs).join(',')},{verdict}="can't tell"),` +
  '{rightAmount}={amount}),ABS({amount}),0)';

export function totalSays(stated: string, amounts: string, tolerance: number): string {
  return `IF(ABS(${stated}-(${amounts}))<=${tolerance},"agrees",${money(`(${stated}-(${amounts}))`)})`;
}

/** What a sum or a charge comes to; the quoted amount where that is right but for its rounding. */
export function rightSum(quoted: string, sum: string, within: number): string {
  return `IF(AND(${quoted}<>"",ABS(N(${quoted})-${sum})<=${within}),${quoted},ROUND(${sum},2))`;
}
