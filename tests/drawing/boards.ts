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
