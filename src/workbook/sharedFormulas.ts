import type { Unit } from '../unit';

/* Formulas, and rules of looks, that several sheets share. */

/** The text of `lengthText` by formula. Rounding first lets the two-digit fraction format show a reduced fraction. */
export function lengthTextFormula(size: string, unit: Unit): string {
  return unit === 'mm' ? `ROUND(${size},1)&""` : `TRIM(TEXT(ROUND(${size}*16,0)/16,"# ??/??"))`;
}

/**
 * A sentence as a formula gives it, and how many cells of a range are errors in its place: counts by COUNTIF pass over these.
 * `#NAME?` is what a sheet shows where the worksheet functions aren't loaded; a `plain` workbook has none.
 */
export function unlessErrors(range: string, cells: string, sentence: string, plain: boolean): string {
  const errors = `SUMPRODUCT(--ISERROR(${range}))`;
  const why = plain ? '' : ' #NAME? there means that ARCH functions are not loaded.';
  return `IF(${errors}=0,${sentence},"${cells} in error: "&${errors}&".${why}")`;
}

/** Whether cells that ought to hold formulas hold none, as a native formula. */
export function isTypedOver(cells: string): string {
  return `NOT(ISFORMULA(${cells}))`;
}

/** The rule by which such cells of a range (`H6:K65`) stand out, told of its first cell. Blank ones are no figures. */
export function typedOverRule(range: string): string {
  const first = range.split(':')[0]!;
  return `AND(${first}<>"",${isTypedOver(first)})`;
}

/** How they stand out: #RRGGBB. */
export const TYPED_OVER_LOOK = { ink: '#7F3F00', fill: '#FFE08A' } as const;
