import type { Unit } from '../unit';

/** The text of `lengthText` by formula. Rounding first lets the two-digit fraction format show a reduced fraction. */
export function lengthTextFormula(size: string, unit: Unit): string {
  return unit === 'mm' ? `ROUND(${size},1)&""` : `TRIM(TEXT(ROUND(${size}*16,0)/16,"# ??/??"))`;
}
