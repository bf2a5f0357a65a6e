import { shopInches } from '../feetInches';
import { roundTo } from '../takeoff/rounding';
import type { Unit } from '../unit';

/** A size as it is written on the wood: to the nearest 1/16, reduced (35 7/16); in a metric workbook to a tenth. */
export function sizeText(size: number, unit: Unit): string {
  if (unit === 'mm') return roundTo(1, size).toFixed(1);
  const text = shopInches(size);
  return text.ok ? text.value : text.message;
}

/** The same text by formula. Rounding first lets the two-digit fraction format show a reduced fraction. */
export function sizeTextFormula(size: string, unit: Unit): string {
  return unit === 'mm' ? `TEXT(ROUND(${size},1),"0.0")` : `TRIM(TEXT(ROUND(${size}*16,0)/16,"# ??/??"))`;
}

export function blankText(blank: { segments: number; width: number; length: number }, unit: Unit): string {
  return `${blank.segments} of ${sizeText(blank.width, unit)} x ${sizeText(blank.length, unit)}`;
}
