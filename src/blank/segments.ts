import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import { EQUAL_WITHIN, halfSegment, MOST_SEGMENTS, ring, ringAngle } from './ring';
import { sectorWidth } from './width';

/** Steepest grain angle at the face of a curved member, degrees. Source: ANSI/AWI 0622-2024, 3.3.2. */
export const STEEPEST_GRAIN = 30;

/**
 * Least number of equal segments whose blank fits the board, and no fewer than angle/(2·grain), because straight grain
 * runs angle/(2·segments) off the curve at a joint.
 *
 * A board exactly as wide as the blank takes it (sizes within 1e-12 of the outside radius count as equal). Refused: a
 * board no wider than face + 2·margin, which no number of segments can fit, and one that would take more than 10,000.
 *
 * Example: radius 18, face 3-1/2, 180°, board 5-1/2 wide: 4 segments.
 *
 * @param grain steepest grain angle allowed at a joint, degrees, more than 0 up to 180
 */
export function segments(
  radius: number,
  face: number,
  angle: number,
  boardWidth: number,
  margin = 0,
  grain = STEEPEST_GRAIN,
): Result<number> {
  const of = ring(radius, face, margin);
  if (!of.ok) return of;
  const refusal = ringAngle(angle) ?? positive('board_width', boardWidth) ?? positive('grain', grain, 180);
  if (refusal) return refusal;

  const slack = EQUAL_WITHIN * of.value.outside;
  if (boardWidth <= of.value.width + slack) {
    return refuse(
      `board_width must be more than face + 2·margin, here ${figure(of.value.width)}; got ${figure(boardWidth)}`,
    );
  }
  const fits = (count: number) => sectorWidth(of.value, halfSegment(angle, count)) <= boardWidth + slack;
  const forGrain = Math.max(1, Math.ceil((angle / (2 * grain)) * (1 - EQUAL_WITHIN)));
  if (forGrain > MOST_SEGMENTS || !fits(MOST_SEGMENTS)) {
    return refuse(
      `no more than ${MOST_SEGMENTS} segments can be asked for: board_width ${figure(boardWidth)} is too little over ` +
        `face + 2·margin, here ${figure(of.value.width)}, or grain ${figure(grain)} is too small`,
    );
  }
  // The more segments, the narrower a board will do: the range is halved until the first that fits is left.
  let [least, most] = [forGrain, MOST_SEGMENTS];
  while (least < most) {
    const middle = Math.floor((least + most) / 2);
    if (fits(middle)) most = middle;
    else least = middle + 1;
  }
  return ok(least);
}
