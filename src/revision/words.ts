import { lengthInWords } from '../lengthText';
import { FIELD_KINDS } from '../schedule/fieldKinds';
import type { Unit } from '../unit';
import type { ListedPrice } from './compare';
import { COMPARED, type FigureChange, type FigureValue } from './figures';

/** A figure as a sentence names it. */
export function figureLabel(figure: FigureChange['figure']): string {
  return figure === 'extras' ? figure : FIELD_KINDS[figure].label.toLowerCase();
}

/** What an opening that came or went is sold for; `was`: it went. */
export function priceText({ price, isOfExtras }: ListedPrice, was: boolean, money: (amount: number) => string): string {
  const unpriced = was ? 'was not priced' : 'not priced';
  if (price === null) return unpriced;
  const amount = money(was ? -price : price);
  return isOfExtras ? `${unpriced}, its extras ${amount}` : amount;
}

/** A figure's value as a sentence says it; a length as on a tape where it is one exactly. */
export function valueText(figure: FigureChange['figure'], value: FigureValue, unit: Unit): string {
  if (value === null || value === '') return 'not given';
  if (typeof value === 'string') return value;
  const isLength = COMPARED.find(({ key }) => key === figure)?.kind === 'length';
  if (!isLength) return String(value);
  const onTape = unit === 'mm' || Number.isInteger(value * 16);
  return onTape ? lengthInWords(value, unit) : String(Number(value.toFixed(4)));
}
