/** The unit a workbook is kept in: lengths in inches or millimeters, feeds in ft/min or m/min. */
export const UNITS = ['in', 'mm'] as const;
export type Unit = (typeof UNITS)[number];

/** As a sentence names it. */
export function unitName(unit: Unit): string {
  return unit === 'in' ? 'inches' : 'millimeters';
}

/** Workbook units in one inch: 1 or 25.4, by definition. */
export function perInch(unit: Unit): number {
  return unit === 'in' ? 1 : 25.4;
}

/** Workbook feed units in one ft/min: 1, or 0.3048 (m/min), by definition. */
export function perFootPerMinute(unit: Unit): number {
  return unit === 'in' ? 1 : 0.3048;
}

/** Workbook length units in one foot, or in one meter: what minutes of sawing and sanding are counted by. */
export function longUnit(unit: Unit): number {
  return unit === 'in' ? 12 : 1000;
}
