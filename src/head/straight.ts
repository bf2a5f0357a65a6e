import { insideOffset } from '../insideOffset';
import { figure, finite, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Ends, Head, HeadOptions, StraightEnds } from './head';
import { straightPiece } from './pieces';
import type { Shape } from './shape';

/** How a straight head stops; what an arched one's ends are called means mitered. */
export function straightEndsOf(ends: Ends): StraightEnds {
  return ends === 'over legs' || ends === 'between legs' || ends === 'square' ? ends : 'mitered';
}

/**
 * How far beyond the opening a straight head reaches that isn't mitered, to be handed to `length` and `pieces`: over legs to
 * their outside edges and `overhang` beyond, between legs to their inside edges, square to the opening's own width.
 */
export function straightReach(ends: Ends, reveal: number, face: number, overhang: number): number | undefined {
  switch (straightEndsOf(ends)) {
    case 'mitered':
      return undefined;
    case 'over legs':
      return reveal + face + overhang;
    case 'between legs':
      return reveal;
    case 'square':
      return 0;
  }
}

/**
 * A level head: mitered to its legs span + 2·offset long; over its legs or between them span + 2·reach, at every edge; square
 * the span. It has no rise (leave it out, or 0) and no arcs.
 *
 * Example: span 36, 3-11/16 outside: 43.375 mitered, 36 square.
 */
function straightHead(span: number, rise: number | null): Result<Head> {
  const refusal = positive('span', span);
  if (refusal) return refusal;
  if (rise !== null && rise !== 0) {
    return refuse(`rise of a straight head must be 0 or left out; got ${figure(rise)}`);
  }
  const half = span / 2;
  const halfAt = (offset: number, ends: Ends, { reach }: HeadOptions = {}): Result<number> => {
    const bad = finite('offset', offset);
    if (bad) return bad;
    const stops = straightEndsOf(ends);
    const beyond = stops === 'mitered' ? offset : stops === 'square' ? 0 : (reach ?? offset);
    return insideOffset(beyond, half, 'where the legs would meet') ?? ok(half + beyond);
  };
  const pieces: Head['pieces'] = (offset, ends, options) => {
    const end = halfAt(offset, ends, options);
    if (!end.ok) return end;
    return ok([straightPiece({ x: -end.value, y: offset }, { x: end.value, y: offset }, 2 * end.value)]);
  };
  return ok({
    shape: 'straight',
    span,
    rise: 0,
    haunch: null,
    top: 0,
    radius: null,
    springs: [null, null],
    length: (offset, ends, options) => {
      const end = halfAt(offset, ends, options);
      return end.ok ? ok(2 * end.value) : end;
    },
    pieces,
    arcs: (offset) => finite('offset', offset) ?? ok([]),
    ends: (offset, ends, options) => {
      const end = halfAt(offset, ends, options);
      if (!end.ok) return end;
      const normal = { x: 0, y: 1 };
      return ok([
        { x: -end.value, y: offset, normal },
        { x: end.value, y: offset, normal },
      ]);
    },
    points: (offset) => finite('offset', offset) ?? ok(null),
  });
}

export const STRAIGHT: Shape = {
  name: 'straight',
  rings: 'none',
  spellings:
    'straight str square sq squarehead squaretop flat flattop level none rect rectangular rectangle plain notarched noarch',
  rise: { means: 'none', needs: null, fits: () => true, ofSpan: () => 0 },
  haunch: null,
  closed: false,
  highSide: false,
  plumb: false,
  words: { length: 'The span and both ends', radius: null, angle: '' },
  make: straightHead,
  example: { span: 36, rise: null, ends: 'mitered', leg: 12, segments: [] },
};
