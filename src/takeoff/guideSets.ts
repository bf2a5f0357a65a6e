import { guidesOwned, SAME_SIZE } from '../onHand';
import { roundTo } from '../rounding';
import type { Standards } from '../standards';
import type { Inputs } from './inputs';
import type { OwnFigures, RingPlan } from './ownFigures';

/** The guides that a ring runs between. */
export interface GuideSet {
  /** As its set-up is called. */
  readonly name: string;
  /** Inside radius of the molding that the guides are made for. */
  readonly radius: number;
  /** Whether the shop has them. */
  readonly owned: boolean;
}

/** The guides of a ring of an opening. */
export type GuideSets = (inputs: Inputs, plan: RingPlan) => GuideSet;

type Tolerances = Pick<Standards, 'guideTolerance' | 'clearance' | 'margin' | 'bedLine'>;

/**
 * How much larger, and how much smaller, an inside radius may be than `inside` and still run between the same guides. No more than the
 * shop's tolerance; and the sagitta of the blank's inside edge over the length of the guides, bed line to bed line, may differ by no
 * more than the clearance, so that the blank neither binds nor leaves its path by more. None where the guides reach round their circle.
 *
 * Sagitta s = r − √(r² − b²) with r = inside − margin and b half the guides' length; the radius of a sagitta s is (b² + s²)/2s. Worked out
 * independently here. Example: inside radius 30, margin 1/4, b 5, clearance 1/32: 2.34 larger, 2.02 smaller.
 */
export function reachOf(inside: number, shop: Tolerances): { up: number; down: number } {
  const { guideTolerance, clearance, margin, bedLine: b } = shop;
  const r = inside - margin;
  if (guideTolerance === 0 || !(r > b)) return { up: 0, down: 0 };
  const sagitta = (b * b) / (r + Math.sqrt((r - b) * (r + b)));
  const radius = (s: number) => (b * b + s * s) / (2 * s);
  const flatter = sagitta - clearance;
  const rounder = sagitta + clearance;
  return {
    up: Math.min(guideTolerance, flatter > 0 ? radius(flatter) - r : Infinity),
    down: Math.min(guideTolerance, r - (rounder < b ? radius(rounder) : b)),
  };
}

/** How far a molding of this inside radius leaves the path of guides made for another, over their length. */
export function strayOf(inside: number, guides: number, { margin, bedLine: b }: Tolerances): number {
  const sagitta = (radius: number) => {
    const r = radius - margin;
    return r > b ? (b * b) / (r + Math.sqrt((r - b) * (r + b))) : b;
  };
  return Math.abs(sagitta(inside) - sagitta(guides));
}

/**
 * The guide sets of a job. Without a tolerance each radius has its own. With one, guides that the shop owns are used first, the nearest;
 * the radii left are put together from the smallest up, each set taking all that reach from its smallest allows, which needs the fewest
 * sets. Its guides are made for the middle of its radii. The same openings have the same sets in whatever order they are given.
 */
export function guideSetsOf(
  openings: readonly { readonly inputs: Inputs; readonly own: OwnFigures }[],
  standards: Standards,
): GuideSets {
  const owned = (inputs: Inputs, inside: number): number | null => {
    const { up, down } = reachOf(inside, standards);
    const near = guidesOwned(inputs, standards.onHand)
      .filter((radius) => radius >= inside - down - SAME_SIZE && radius <= inside + up + SAME_SIZE)
      .sort((one, other) => Math.abs(one - inside) - Math.abs(other - inside) || one - other);
    return near[0] ?? null;
  };
  if (standards.guideTolerance === 0)
    return (inputs, { guide, ring }) => ({
      name: guide,
      radius: ring.inside,
      owned: owned(inputs, ring.inside) !== null,
    });

  const radiiOf = new Map<string, Set<number>>();
  for (const { inputs, own } of openings)
    for (const { ring } of own.rings) {
      const inside = roundTo(3, ring.inside);
      if (owned(inputs, inside) !== null) continue;
      const knife = own.knife.toLowerCase();
      radiiOf.set(knife, (radiiOf.get(knife) ?? new Set()).add(inside));
    }
  const middles = new Map<string, number>();
  for (const [knife, radii] of radiiOf)
    for (const set of together([...radii], standards))
      for (const radius of set) middles.set(`${knife}|${radius}`, (set[0]! + set.at(-1)!) / 2);
  return (inputs, { guide, knife, ring }) => {
    const inside = roundTo(3, ring.inside);
    const has = owned(inputs, inside);
    const radius = has ?? middles.get(`${knife.toLowerCase()}|${inside}`) ?? inside;
    if (Math.abs(radius - inside) <= SAME_SIZE) return { name: guide, radius: ring.inside, owned: has !== null };
    return { name: `${knife}, R ${roundTo(3, radius)}`, radius, owned: has !== null };
  };
}

/** Fewest sets of radii, each no farther apart than the reach of its smallest. */
function together(radii: number[], standards: Tolerances): number[][] {
  const sets: number[][] = [];
  let end = -Infinity;
  for (const radius of radii.sort((one, other) => one - other)) {
    if (radius > end) {
      sets.push([]);
      end = radius + reachOf(radius, standards).up + 1e-9;
    }
    sets.at(-1)!.push(radius);
  }
  return sets;
}
