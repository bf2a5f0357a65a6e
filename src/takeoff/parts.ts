import { halfSegment, ring } from '../blank/ring';
import { markOrRow } from '../schedule/opening';
import type { Standards } from '../standards';
import { guideSetsOf } from './guideSets';
import type { Inputs } from './inputs';
import { headsOf } from './ownCost';
import type { RingPlan } from './ownFigures';
import { sharersOf, type Takeoff } from './takeoff';
import type { WoodPart } from './woodParts';

/**
 * The wood the openings need, piece by piece: segments of every ring, spare ones included, straight heads and legs, and
 * the test pieces. Pieces alike in everything are counted together, under the marks they are for.
 */
export function partsOf(takeoff: Takeoff): WoodPart[] {
  const { standards } = takeoff;
  const parts = new Map<string, { part: WoodPart; marks: Set<string> }>();
  const add = (part: Omit<WoodPart, 'for'>, mark: string) => {
    const key = JSON.stringify([part.species.toLowerCase(), part.thickness, part.shape]);
    const before = parts.get(key);
    const marks = (before?.marks ?? new Set<string>()).add(mark);
    parts.set(key, { part: { ...part, count: part.count + (before?.part.count ?? 0), for: '' }, marks });
  };
  const setUp = new Set<string>();
  const sets = guideSetsOf(sharersOf(takeoff.openings), standards);
  for (const { opening, inputs, own } of takeoff.openings) {
    if (inputs === null || own === null) continue;
    const mark = markOrRow(opening);
    const straight = (length: number, count: number, name: string) =>
      add(
        { ...woodOf(inputs), count, shape: { kind: 'straight', length, width: inputs.face + 2 * standards.margin } },
        name,
      );
    const testPiece = (name: string) => {
      if (setUp.has(name.toLowerCase())) return false;
      setUp.add(name.toLowerCase());
      if (standards.testPiece > 0) straight(standards.testPiece, 1, 'test pieces');
      return true;
    };
    for (const plan of own.rings) {
      const spares = testPiece(sets(inputs, plan).name) ? standards.sparePieces : 0;
      const count = (headsOf(inputs) * plan.ring.count + spares) * plan.blank.chosen.segments;
      const segment = segmentOf(plan, inputs, standards);
      if (segment !== null) add({ ...woodOf(inputs), count, shape: segment }, mark);
    }
    if (own.straight === null) continue;
    testPiece(own.straight.setup);
    for (const { length, count } of own.straight.pieces) straight(length, count * headsOf(inputs), mark);
  }
  return [...parts.values()].map(({ part, marks }) => ({ ...part, for: [...marks].join(', ') }));
}

function woodOf({ species, thickness }: Inputs): { species: string; thickness: number } {
  return { species, thickness };
}

/** Null only for a ring that can't be, and such an opening has no plan. */
function segmentOf(plan: RingPlan, inputs: Inputs, standards: Standards): WoodPart['shape'] | null {
  const made = ring(plan.ring.inside, inputs.face, standards.margin);
  if (!made.ok) return null;
  const half = halfSegment(plan.ring.blankAngle, plan.blank.chosen.segments);
  return { kind: 'mitered', ring: made.value, half };
}
