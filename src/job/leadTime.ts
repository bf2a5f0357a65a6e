/**
 * Whole weeks that a job takes at the machine: its machine hours by the hours that the machine runs in a week, a part of a week
 * being a week. Example: 61 hours at 30 a week → 3. A job without machine hours takes none.
 */
export function weeksAtMachine(machineMinutes: number, hoursPerWeek: number): number {
  // Minutes are sums of fractions: what is over a whole week by a rounding error is not over.
  return Math.max(0, Math.ceil(machineMinutes / 60 / hoursPerWeek - 1e-9));
}

export function leadTimeText(weeks: number): string {
  return weeks === 1 ? '1 week' : `${weeks} weeks`;
}
