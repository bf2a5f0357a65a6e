import { cellsNamed, withAddresses } from '../../formulaText';
import { columnLetters } from '../address';
import type { ColumnMeasure } from '../format';

/** The columns of the Check sheet from left to right: where each figure of a line stands. */
export const CHECK_COLUMNS = [
  { key: 'row', heading: 'Row in the quote', group: 'Quote', measure: 'row', width: 7 },
  { key: 'mark', heading: 'Mark', group: 'Quote', measure: 'text', width: 9 },
  { key: 'verdict', heading: 'Verdict', group: 'Verdict', measure: 'text', width: 10 },
  { key: 'reason', heading: 'Reason', group: 'Verdict', measure: 'text', width: 22 },
  { key: 'quantity', heading: 'Quoted', group: 'Quantity', measure: 'number', width: 7 },
  { key: 'quantityRight', heading: 'Right', group: 'Quantity', measure: 'count', width: 7 },
  { key: 'radius', heading: 'Quoted', group: 'Radius', measure: 'input length', width: 10 },
  { key: 'radiusRight', heading: 'Right', group: 'Radius', measure: 'input length', width: 10 },
  { key: 'length', heading: 'Quoted', group: 'Length', measure: 'input length', width: 10 },
  { key: 'lengthRight', heading: 'Right', group: 'Length', measure: 'input length', width: 10 },
  { key: 'unitPrice', heading: 'Quoted', group: 'Unit price', measure: 'money', width: 10 },
  { key: 'priceRight', heading: 'Ours', group: 'Unit price', measure: 'money', width: 10 },
  { key: 'extension', heading: 'Quoted', group: 'Extension', measure: 'money', width: 11 },
  { key: 'extensionRight', heading: 'Corrected', group: 'Extension', measure: 'money', width: 11 },
  { key: 'off', heading: 'Quoted less corrected', group: 'Money', measure: 'money', width: 10 },
  { key: 'priceOff', heading: 'Price against ours', group: 'Money', measure: 'money', width: 10 },
  { key: 'hangs', heading: 'Hangs on the line', group: 'Money', measure: 'money', width: 10 },
  { key: 'description', heading: 'Description', group: 'Quote', measure: 'text', width: 19 },
  { key: 'openingSays', heading: 'Opening', group: 'Compared', measure: 'text', width: 24 },
  { key: 'quantitySays', heading: 'Quantity', group: 'Compared', measure: 'text', width: 22 },
  { key: 'radiusSays', heading: 'Radius', group: 'Compared', measure: 'text', width: 24 },
  { key: 'lengthSays', heading: 'Length', group: 'Compared', measure: 'text', width: 24 },
  { key: 'extensionSays', heading: 'Extension', group: 'Compared', measure: 'text', width: 20 },
  { key: 'priceSays', heading: 'Unit price', group: 'Compared', measure: 'text', width: 22 },
  { key: 'ourQuantity', heading: 'Quantity', group: 'Our takeoff', measure: 'count', width: 10 },
  { key: 'ourRadius', heading: 'Radius', group: 'Our takeoff', measure: 'length', width: 10 },
  { key: 'ourLength', heading: 'Length', group: 'Our takeoff', measure: 'length', width: 10 },
  { key: 'ourPrice', heading: 'Unit price', group: 'Our takeoff', measure: 'money', width: 10 },
  { key: 'place', heading: 'Line of the takeoff', group: 'Working figures', measure: 'count', width: 9 },
  { key: 'unit', heading: 'Unit price taken', group: 'Working figures', measure: 'money', width: 10 },
  { key: 'amount', heading: 'Amount', group: 'Working figures', measure: 'money', width: 11 },
  { key: 'rightAmount', heading: 'Amount corrected', group: 'Working figures', measure: 'money', width: 11 },
  { key: 'stake', heading: 'At stake', group: 'When it was checked', measure: 'money', width: 11 },
  { key: 'found', heading: 'Found', group: 'When it was checked', measure: 'text', width: 70 },
] as const satisfies readonly {
  key: string;
  heading: string;
  group: string;
  measure: ColumnMeasure;
  width: number;
}[];

export type CheckKey = (typeof CHECK_COLUMNS)[number]['key'];

/** From 0. */
export function columnAt(key: CheckKey): number {
  return CHECK_COLUMNS.findIndex((column) => column.key === key);
}

const LETTERS = new Map<CheckKey, string>(CHECK_COLUMNS.map(({ key }, at) => [key, columnLetters(at)]));

export function checkLetter(key: CheckKey): string {
  // Every key of the type stands in the list above.
  return LETTERS.get(key)!;
}

/** First and last row, from 1, of the lines on the sheet. */
export interface Lines {
  readonly first: number;
  readonly last: number;
}

/** A column's cells of all lines, as an absolute range: `$F$6:$F$27`. */
export function checkRange(key: CheckKey, { first, last }: Lines): string {
  const letter = checkLetter(key);
  return `$${letter}$${first}:$${letter}$${last}`;
}

/** A cell of the same row in a formula's template, and those of all lines. */
export const { its } = cellsNamed<CheckKey>();

/** A template with its addresses filled in. `lacks` is the line's own word for a figure it hasn't. */
export function atRow(template: string, row: number, lines: Lines, lacks: string): string {
  return withAddresses<CheckKey | 'lacks'>(template, (key, all) => {
    if (key === 'lacks') return lacks;
    return all ? checkRange(key, lines) : `${checkLetter(key)}${row}`;
  });
}
