import { refuse, type Result } from '../result';
import { ellipticalHead } from './elliptical';
import { halfRoundHead } from './halfRound';
import type { Head, HeadShape } from './head';
import { pointedHead } from './pointed';
import { quarterRoundHead } from './quarterRound';
import { roundHead } from './round';
import { segmentalHead } from './segmental';
import { straightHead } from './straight';
import { threeCenteredHead } from './threeCentered';

const MAKERS: Readonly<Record<HeadShape, (span: number, rise: number | null) => Result<Head>>> = {
  segmental: withRise('segmental', segmentalHead),
  'half round': halfRoundHead,
  'quarter round': quarterRoundHead,
  round: roundHead,
  elliptical: withRise('elliptical', ellipticalHead),
  'three-centered': withRise('three-centered', threeCenteredHead),
  pointed: withRise('pointed', pointedHead),
  straight: straightHead,
};

function withRise(shape: HeadShape, make: (span: number, rise: number) => Result<Head>) {
  return (span: number, rise: number | null): Result<Head> =>
    rise === null ? refuse(`rise is missing; a ${shape} head needs it`) : make(span, rise);
}

/**
 * The head of an opening. The rise may be null for half round, quarter round, round and straight heads, which have it from
 * the span. Refused: a span or rise that is not a length more than 0, and a rise the shape can't have.
 *
 * Example: `makeHead('segmental', 36, 6)` has radius 30.
 */
export function makeHead(shape: HeadShape, span: number, rise: number | null): Result<Head> {
  return MAKERS[shape](span, rise);
}
