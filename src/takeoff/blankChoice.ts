import { blankLength } from '../blank/length';
import { segments as fewestSegments } from '../blank/segments';
import { blankWidth } from '../blank/width';
import { boardFeet } from '../lumber';
import { ok, refuse, type Result } from '../result';
import type { Standards } from '../standards';
import { inches } from '../unit';
import { boardFor, type Wood } from './wood';

/**
 * A constant-radius ring to be glued up: the molding's inside radius, the degrees its blank must cover, and those of the
 * finished piece, which the grain is judged over: what the end allowances add is sawn off.
 */
export interface RingSize {
  readonly inside: number;
  readonly face: number;
  readonly degrees: number;
  readonly finished: number;
}

/** One ring's blank with a count of segments, and what its wood and joints cost. */
export interface Blank {
  readonly segments: number;
  readonly joints: number;
  readonly width: number;
  readonly boardWidth: number;
  readonly price: number;
  readonly length: number;
  /** Board feet of one ring, without waste. */
  readonly boardFeet: number;
  /** Money: wood with waste, and gluing the joints. */
  readonly cost: number;
}

/** The blank chosen and the ones it was weighed against: the fewest segments, one more, and two more. */
export interface BlankChoice {
  readonly chosen: Blank;
  readonly weighed: readonly [Blank, Blank, Blank];
}

/**
 * More segments mean narrower boards and less wood, but more joints to glue. The cheapest of the three is chosen; of
 * equal ones, the one with the fewest joints. A count that is `wanted` is taken as it is, and refused where no board holds it.
 */
export function chooseBlank(
  ring: RingSize,
  wood: Wood,
  standards: Standards,
  wanted: number | null = null,
): Result<BlankChoice> {
  const { margin } = standards;
  const grain = grainOf(ring, standards.grain);
  const fewest = fewestSegments(ring.inside, ring.face, ring.degrees, wood.widest, margin, grain);
  if (!fewest.ok) return fewest;
  const weighed: Blank[] = [];
  for (const more of [0, 1, 2]) {
    const blank = blankOf(ring, fewest.value + more, wood, standards);
    if (!blank.ok) return blank;
    weighed.push(blank.value);
  }
  const [first, second, third] = weighed as [Blank, Blank, Blank];
  if (wanted !== null) {
    if (wanted < fewest.value)
      return refuse(
        `Segments wanted must be at least ${fewest.value} for the boards and the grain there are; got ${wanted}.`,
      );
    const blank = blankOf(ring, wanted, wood, standards);
    return blank.ok ? ok({ chosen: blank.value, weighed: [first, second, third] }) : blank;
  }
  const chosen = first.cost <= Math.min(second.cost, third.cost) ? first : second.cost <= third.cost ? second : third;
  return ok({ chosen, weighed: [first, second, third] });
}

/** The limit on the blank's own angle that comes to `grain` on the finished one. */
function grainOf(ring: RingSize, grain: number): number {
  return Math.min(180, (grain * ring.degrees) / ring.finished);
}

function blankOf(ring: RingSize, count: number, wood: Wood, standards: Standards): Result<Blank> {
  const { margin } = standards;
  const width = blankWidth(ring.inside, ring.face, ring.degrees, count, margin);
  if (!width.ok) return width;
  const length = blankLength(ring.inside, ring.face, ring.degrees, count, margin);
  if (!length.ok) return length;
  const board = boardFor(width.value, wood);
  if (board === null) return refuse(`The blank is ${width.value} wide; the widest board is ${wood.widest}.`);
  const feet = boardFeet(
    inches(wood.quarters / 4, 'in'),
    inches(board.width, standards.unit),
    inches(length.value, standards.unit),
    count,
  );
  if (!feet.ok) return feet;
  const joints = ring.degrees === 360 ? count : count - 1;
  return ok({
    segments: count,
    joints,
    width: width.value,
    boardWidth: board.width,
    price: board.price,
    length: length.value,
    boardFeet: feet.value,
    cost:
      feet.value * board.price * (1 + standards.waste) + ((joints * standards.jointMinutes) / 60) * standards.benchRate,
  });
}
