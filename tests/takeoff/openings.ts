import { ARC_ENDS, HEAD_SHAPES, type HeadShape } from '../../src/head/head';
import { blankOpening, type Opening, type Schedule } from '../../src/schedule/opening';
import { defaultStandards, type Standards } from '../../src/standards';
import type { Random } from '../random';

/** An opening as the schedule's reader gives it; what isn't given follows the shop's standards. */
export function opening(given: Partial<Opening> & Pick<Opening, 'head' | 'span'>): Opening {
  return {
    ...blankOpening(2),
    mark: 'W1',
    ...given,
  };
}

/** A schedule of these openings, as if read from a file without other rows. */
export function scheduleOf(openings: readonly Opening[]): Schedule {
  return { name: 'openings.csv', headings: [], meaning: [], headingRow: 1, remarks: [], openings, passedOver: [] };
}

/** A rise the head can have. Ellipses are kept from being flatter than 1 : 6, where the plain length formula loses digits. */
function possibleRise(head: HeadShape, span: number, random: Random): number | null {
  switch (head) {
    case 'segmental':
      return random.between(0.02, 0.9) * span;
    case 'elliptical':
      return random.between(0.17, 0.8) * span;
    case 'three-centered':
      return random.between(0.17, 0.49) * span;
    case 'pointed':
      return random.between(0.5, 1.6) * span;
    case 'radius corners':
      return random.pick([0.5, random.between(0.1, 0.49)]) * span;
    case 'full ellipse':
      return random.between(0.3, 1.6) * span;
    case 'half segmental':
      return random.between(0.1, 1) * span;
    case 'quarter ellipse':
      return random.between(0.2, 1.4) * span;
    case 'four-centered':
      return random.between(0.33, 0.42) * span;
    case 'gable':
    case 'shed':
      return random.between(0.15, 0.9) * span;
    case 'clipped corners':
      return random.between(0.1, 0.4) * span;
    default:
      return null;
  }
}

/** Heads as schedules had them before the others came. */
export const FIRST_HEADS = HEAD_SHAPES.slice(0, 8);

/** Openings of these heads, some with legs, odd casings and repeated profiles; now and then one that lacks something. */
export function randomOpenings(
  count: number,
  random: Random,
  standards: Standards = defaultStandards(),
  heads: readonly HeadShape[] = FIRST_HEADS,
): Opening[] {
  const species = [...new Set(standards.stock.map((board) => board.species))];
  const scale = standards.unit === 'in' ? 1 : 25.4;
  const sixteenths = (least: number, most: number) => (random.whole(least * 16, most * 16) / 16) * scale;
  const now = <T>(chance: number, given: () => T): T | null => (random.between(0, 1) < chance ? given() : null);
  return Array.from({ length: count }, (_, at) => {
    const head = random.pick(heads);
    const span = sixteenths(18, 120);
    const row = at + 2;
    const rise = possibleRise(head, span, random);
    const ends = now(0.6, () => random.pick(ARC_ENDS));
    const complete = opening({
      row,
      mark: `W${at + 1}`,
      quantity: random.whole(1, 6),
      head,
      span,
      rise,
      reveal: now(0.3, () => sixteenths(0, 0.5)),
      face: now(0.4, () => sixteenths(2, 6)),
      thickness: now(0.4, () => random.pick([0.5, 0.75, 0.8125, 1, 1.5]) * scale),
      species: now(0.5, () => random.pick(species)),
      // Level ends of a flat arc run too far out to be taken.
      ends: head === 'segmental' && ends === 'level' && (rise ?? 0) < 0.12 * span ? 'legs' : ends,
      // A quarter round's high leg is longer by the span: boards are 12 ft long.
      leg: now(0.3, () => (head === 'quarter round' && span > 48 * scale ? 0 : sixteenths(10, 84))),
      profile: now(0.3, () => random.pick(['Casing', 'casing', 'Back band', 'Brick mold'])),
    });
    if (random.between(0, 1) < 0.1) {
      return { ...complete, rough: { span: span + standards.roughWidth } };
    }
    if (random.between(0, 1) < 0.03) return { ...complete, species: random.pick(['Ebony', 'Po*', 'a "b" c']) };
    if (random.between(0, 1) < 0.03) return { ...complete, thickness: (17 / 3) * scale };
    if (random.between(0, 1) > 0.06) return complete;
    const field = random.pick(['span', 'quantity', 'head', 'face', 'species'] as const);
    return { ...complete, [field]: null, problems: [{ row, field, message: `The ${field} "n/a" can't be read.` }] };
  });
}
