import { checkLength } from '../../check/length';
import type { LineCheck } from '../../check/quote/checkLine';
import type { Finding } from '../../check/quote/finding';
import { dollars, extensionTolerance } from '../../quote/money';
import { lengthText } from '../../lengthText';
import { roundTo } from '../../rounding';
import type { Standards } from '../../standards';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { COMPARED, FIGURE_NAMES, REASON_LABELS, type Compared } from './formulas';
import type { LineFigures } from './lineFigures';

/** What the formulas of `formulas.ts` say of a line, in the same words under the same conditions. */

/** `count`: the pieces that are compared, of this line or of all lines for its opening. */
export function quantityText({ quantity, ourQuantity, lacks }: LineFigures, count: number): string {
  if (quantity === null) return `can't tell: no quantity ${lacks}`;
  if (ourQuantity === null) return "can't tell: no quantity in the takeoff";
  if (count === ourQuantity) return 'agrees';
  if (count * 2 === ourQuantity) return `one piece counted for a pair${count === 1 ? ' or quantity of one' : ''}`;
  if (count === ourQuantity * 2) return 'a pair counted for one piece';
  if (count === 1) return 'quantity of one';
  return `${Math.abs(count - ourQuantity)} ${count < ourQuantity ? 'too few' : 'too many'}`;
}

/** Null where the check found a mistake: what it is called depends on more than the row's figures. */
export function shapeText(about: 'radius' | 'length', figures: LineFigures, finding: Finding | undefined) {
  const [quoted, right] =
    about === 'radius' ? [figures.radius, figures.ourRadius] : [figures.length, figures.ourLength];
  if (quoted === null) return `can't tell: no ${about} ${figures.lacks}`;
  if (right === null) return `can't tell: no ${about} in the takeoff`;
  return finding?.verdict === 'differs' ? null : 'agrees';
}

/** A mistake's name in the words of ARCH.LENGTHCHECK, so that both kinds of workbook say the same. */
export function mistakeText(
  finding: Finding,
  { line }: LineCheck,
  opening: OpeningTakeoff | null,
  { unit, tolerance }: Standards,
): string {
  const { quoted, right, mistakes } = finding;
  if (finding.about === 'length' && unit === 'in' && line.lengthOf === 'outside' && opening?.inputs) {
    const { head, span, rise, face, reveal, ends } = opening.inputs;
    const judged = checkLength({ quoted: quoted!, head, span, rise, face, reveal, ends, tolerance });
    if (judged.ok) return judged.value.text;
  }
  if (mistakes.length > 0) return mistakes.join(' or ');
  const off = quoted! - right!;
  return `unexplained: ${lengthText(Math.abs(off), unit)} ${off < 0 ? 'short' : 'long'}`;
}

export function extensionText({ extension, unitPrice, quantity, lacks }: LineFigures): string {
  if (extension === null) return `can't tell: no extension ${lacks}`;
  if (unitPrice === null) return `can't tell: no unit price ${lacks}`;
  if (quantity === null) return `can't tell: no quantity ${lacks}`;
  return moneyText(extension - quantity * unitPrice, extensionTolerance(quantity));
}

/** An amount's difference from what it should be. */
export function moneyText(off: number, tolerance: number): string {
  if (Math.abs(off) <= tolerance) return 'agrees';
  return `${dollars(Math.abs(off))} ${off < 0 ? 'too little' : 'too much'}`;
}

export function priceText({ unit, ourPrice, lacks }: LineFigures, band: number): string {
  if (unit === null) return `can't tell: no price ${lacks}`;
  if (ourPrice === null) return "can't tell: no price in the takeoff";
  if (ourPrice === 0) return "can't tell: our own price is 0";
  const off = unit / ourPrice - 1;
  if (Math.abs(off) <= band + 1e-9) return 'agrees';
  return `${roundTo(1, Math.abs(off) * 100).toFixed(1)}% ${unit < ourPrice ? 'below' : 'above'} ours`;
}

/** What is said of each comparison, in the order of the columns; '' where there is nothing to say. */
export type Comparisons = Readonly<Record<Compared, string>>;

const open = (text: string) => text.startsWith("can't tell");
const wrong = (text: string) => text !== '' && text !== 'agrees' && !open(text);

/** Why a line has its verdict: what differs, or can't be told, each under its figure; else the figures that agree. */
export function reasonText(verdict: string, compared: Comparisons): string {
  const of = (is: (text: string) => boolean) =>
    COMPARED.filter((key) => is(compared[key])).map(
      (key) => REASON_LABELS[key] + compared[key].replace(/^can't tell: /, ''),
    );
  if (verdict === 'differs') return of(wrong).join('; ');
  if (verdict !== 'agrees') return of(open).join('; ');
  return COMPARED.flatMap((key) => (compared[key] === 'agrees' ? [FIGURE_NAMES[key]] : [])).join(', ');
}

/** Of what is said of all comparisons; `figures` are those that can make a line agree. */
export function verdictText(all: readonly string[], figures: readonly string[]): string {
  if (all.some(wrong)) return 'differs';
  if (all.some((text) => open(text) && !text.endsWith(' given'))) return "can't tell";
  return figures.includes('agrees') ? 'agrees' : "can't tell";
}
