import fc from 'fast-check';
import { segments as fewestSegments } from '../../src/blank/segments';
import { valueOf } from '../value';

/** Any ring with a board for it, for the drawings of rings and boards. */
export const anyRing = fc.record({
  radius: fc.double({ min: 8, max: 120, noNaN: true }),
  face: fc.double({ min: 1.5, max: 5, noNaN: true }),
  angle: fc.double({ min: 20, max: 360, noNaN: true }),
  kerf: fc.double({ min: 0, max: 0.25, noNaN: true }),
  boardWidth: fc.double({ min: 8, max: 24, noNaN: true }),
});

interface RingGiven {
  readonly radius: number;
  readonly face: number;
  readonly angle: number;
  readonly boardWidth: number;
  readonly kerf: number;
  readonly margin?: number;
}

/** As many segments as the core wants for the board. */
export function layoutOf<T extends RingGiven>(given: T): T & { segments: number } {
  const segments = valueOf(fewestSegments(given.radius, given.face, given.angle, given.boardWidth, given.margin));
  return { ...given, segments };
}
