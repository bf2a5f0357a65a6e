/** The middle one of some figures, of an even count the upper; 0 of none. Example: 3, 1, 2 have the median 2. */
export function median(figures: readonly number[]): number {
  const sorted = [...figures].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
