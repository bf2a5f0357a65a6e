import { perInch, type Unit } from '../unit';

/** A size as it is written on the wood: to the nearest 1/16, reduced (35 7/16); in a metric workbook to a tenth. */
export function sizeText(size: number, unit: Unit): string {
  if (unit === 'mm') return size.toFixed(1);
  const sixteenths = Math.round((size / perInch(unit)) * 16);
  const whole = Math.floor(sixteenths / 16);
  let top = sixteenths % 16;
  let bottom = 16;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

/** The same text by formula. Rounding first lets the two-digit fraction format show a reduced fraction. */
export function sizeTextFormula(size: string, unit: Unit): string {
  return unit === 'mm' ? `TEXT(${size},"0.0")` : `TRIM(TEXT(ROUND(${size}*16,0)/16,"# ??/??"))`;
}

export function blankText(blank: { segments: number; width: number; length: number }, unit: Unit): string {
  return `${blank.segments} of ${sizeText(blank.width, unit)} x ${sizeText(blank.length, unit)}`;
}
