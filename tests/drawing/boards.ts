import fc from 'fast-check';
import type { GuideBoards } from '../../src/drawing/guideLayout';

/** A pair of guide boards, shared by the drawing tests. */
export const boards: GuideBoards = {
  marks: ['A1', 'A3'],
  profile: 'Casing',
  radius: 18,
  face: 3.5,
  margin: 0.25,
  clearance: 1 / 32,
  thinEdge: 'inside',
  unit: 'in',
};

export const anyBoards = fc.record({
  radius: fc.double({ min: 4, max: 600, noNaN: true }),
  face: fc.double({ min: 1, max: 9, noNaN: true }),
  margin: fc.double({ min: 0, max: 0.5, noNaN: true }),
  clearance: fc.double({ min: 0, max: 0.125, noNaN: true }),
  bedLine: fc.double({ min: 3, max: 12, noNaN: true }),
});
