/** The unit a workbook is kept in: lengths in inches or millimeters, feeds in ft/min or m/min. */
export const UNITS = ['in', 'mm'] as const;
export type Unit = (typeof UNITS)[number];

/** As a sentence names it. */
export function unitName(unit: Unit): string {
  return unit === 'in' ? 'inches' : 'millimeters';
}

/** What a unit of length comes with, worked out once for each: all by definition. */
const SCALES = {
  in: { perInch: 1, perFootPerMinute: 1, longUnit: 12 },
  mm: { perInch: 25.4, perFootPerMinute: 0.3048, longUnit: 1000 },
} as const;

/** Workbook units in one inch: 1 or 25.4. */
export function perInch(unit: Unit): number {
  return SCALES[unit].perInch;
}

/** Workbook feed units in one ft/min: 1, or 0.3048 (m/min). */
export function perFootPerMinute(unit: Unit): number {
  return SCALES[unit].perFootPerMinute;
}

/** Workbook length units in one foot, or in one meter: what minutes of sawing and sanding are counted by. */
export function longUnit(unit: Unit): number {
  return SCALES[unit].longUnit;
}

declare const INCHES: unique symbol;
declare const FEET_PER_MINUTE: unique symbol;

/**
 * A length in inches, whatever unit the workbook is kept in: what board feet and knife marks go by. It is no number to the
 * compiler, so that a length of a sheet in its place doesn't compile, nor one in inches in place of a sheet's.
 */
export interface Inches {
  readonly [INCHES]: true;
}

/** A feed in ft/min, whatever the workbook's unit. */
export interface FeetPerMinute {
  readonly [FEET_PER_MINUTE]: true;
}

/** A length of a workbook in inches. */
export function inches(length: number, unit: Unit): Inches {
  return (length / perInch(unit)) as unknown as Inches;
}

/** A length in inches as the workbook has it: what a rule or a habit says in inches, beside a length of a sheet. */
export function inWorkbook(length: Inches, unit: Unit): number {
  return bare(length) * perInch(unit);
}

/** A feed of a workbook in ft/min. */
export function feetPerMinute(feed: number, unit: Unit): FeetPerMinute {
  return (feed / perFootPerMinute(unit)) as unknown as FeetPerMinute;
}

/** The bare figure of a length in inches or a feed in ft/min, for arithmetic. */
export function bare(figure: Inches | FeetPerMinute): number {
  return figure as unknown as number;
}
