import { savingWords, type SegmentSavings } from '../src/takeoff/segmentChange';

/** Where other numbers of segments cost less, a line for the openings alike. */
export function segmentsText({ changes, saved }: SegmentSavings, isTaken: boolean): string {
  if (changes.length === 0) return 'Segments: no other number costs less, boards and gluing together.\n';
  const lines = changes.map((change) => `  ${savingWords(change)}, $${change.saved.toFixed(2)} less\n`);
  const title = isTaken ? 'Segments taken over as wanted' : 'Segments: other numbers cost less';
  return `${title}, $${saved.toFixed(2)} in all, boards and gluing together:\n${lines.join('')}`;
}
