/** Openings that would cost less with another number of segments in each ring. */
export interface SegmentSaving {
  readonly nos: readonly number[];
  readonly marks: readonly string[];
  readonly from: number;
  readonly to: number;
  /** Money by which boards and work cost less once this is changed, too, after the changes before it. */
  readonly saved: number;
}

export interface SegmentSavings {
  readonly changes: readonly SegmentSaving[];
  /** By all of them together, the boards planned in full. */
  readonly saved: number;
}

/** "G2, G3: 5 segments a ring instead of 4" */
export function savingWords({ marks, from, to }: Omit<SegmentSaving, 'saved'>): string {
  return `${marks.join(', ')}: ${to} ${to === 1 ? 'segment' : 'segments'} a ring instead of ${from}`;
}

/** Segments wanted by number of the opening. */
export type Wanted = ReadonlyMap<number, number>;

/** The numbers of segments that changes want. */
export function wantedBy(changes: readonly Pick<SegmentSaving, 'nos' | 'to'>[]): Wanted {
  return new Map(changes.flatMap(({ nos, to }) => nos.map((no) => [no, to] as const)));
}
