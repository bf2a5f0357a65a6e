import { arcOrdinates, arcRise } from '../arc';
import { halfSegment, ring as ringOf } from '../blank/ring';
import { beyondTrammel } from '../blank/trammel';
import { degrees, radians } from '../angle';
import { extrasText } from '../extras';
import type { BoardNeeds } from '../takeoff/boards';
import { guideSetsOf, type GuideSets } from '../takeoff/guideSets';
import { headsOf } from '../takeoff/ownCost';
import type { RingPlan } from '../takeoff/ownFigures';
import { straightGuides } from '../takeoff/setupFlags';
import { planSetups } from '../takeoff/setups';
import { sharersOf, type Takeoff } from '../takeoff/takeoff';
import { perInch } from '../unit';
import type { Standards } from '../standards';
import { extentOf, type Extent } from './extent';
import { handsOf, type HandsOf } from '../takeoff/hands';
import { edgesOf, trimTickets, type Ready, type TrimTicket } from './trim';

/** Everything the bench needs of one opening, station by station. Lengths in the workbook's unit, exact. */
export interface Ticket {
  readonly no: number;
  readonly mark: string;
  readonly row: number;
  readonly place: string;
  readonly head: string;
  /** Cased heads: one for each side of the wall that is cased. */
  readonly heads: number;
  /** High sides at the right, as drawn, and at the left, of all heads; null: a head without a high side. */
  readonly hands: HandsOf;
  readonly glue: readonly GlueTicket[];
  readonly saw: readonly SawTicket[];
  /** The finished head over its outside edge; null for a straight piece alone. */
  readonly finished: (Extent & { readonly longPoints: number | null }) | null;
  readonly run: readonly RunTicket[];
  readonly trim: readonly TrimTicket[];
  readonly pack: PackTicket;
}

/** One kind of ring to glue up. */
export interface GlueTicket {
  readonly ring: string;
  /** Rings for all heads of the opening. */
  readonly rings: number;
  readonly segments: number;
  readonly boardWidth: number;
  /** Width of board that the segment takes. */
  readonly width: number;
  /** Along the outer edge of a segment, and along its inner one. */
  readonly longEdge: number;
  readonly shortEdge: number;
  /** At each end of a segment, off square. */
  readonly miter: number;
  readonly joints: number;
  readonly wood: string;
  /** Where its segments lie in the plan: `3 boards 6 × 120`. */
  readonly boards: readonly { readonly count: number; readonly width: number; readonly length: number }[];
}

/** One kind of ring to saw: from the trammel point, or by ordinates where no trammel reaches. */
export interface SawTicket {
  readonly ring: string;
  readonly rings: number;
  readonly inside: number;
  readonly outside: number;
  readonly blankAngle: number;
  readonly across: number;
  readonly high: number;
  /** Heights of both arcs over the straight line between their ends; null: a trammel reaches. */
  readonly ordinates: readonly ArcOrdinates[] | null;
}

export interface ArcOrdinates {
  readonly arc: 'inside' | 'outside';
  readonly rows: readonly (readonly [fromCenterLine: number, height: number])[];
}

export interface RunTicket {
  /** Place among the set-ups, from 1. */
  readonly order: number;
  readonly setup: string;
  readonly pieces: number;
  readonly runLength: number;
  /** Guides of so large a radius that they are sawn straight, in words; null: they are not, or there are none. */
  readonly straightGuides: string | null;
}

export interface PackTicket {
  readonly sets: number;
  /** Pieces of one set, in order. */
  readonly pieces: readonly string[];
  /** What is bought or turned by the piece and goes with all of them: `2 keystones, 4 plinth blocks`; null: nothing. */
  readonly extras: string | null;
}

/** The tickets of every opening that can be made, by No. */
export function ticketsOf(takeoff: Takeoff, boards: BoardNeeds): Ticket[] {
  const { standards, openings } = takeoff;
  const order = new Map(
    planSetups(takeoff).setups.map((setup, at) => [
      setup.name.toLowerCase(),
      { order: at + 1, straightGuides: straightGuides(setup, standards) },
    ]),
  );
  const setups: Setups = { order, sets: guideSetsOf(sharersOf(openings), standards) };
  return [...openings]
    .sort((one, other) => one.no - other.no)
    .flatMap((row) => {
      const { inputs, own } = row;
      return inputs === null || own === null ? [] : [ticketOf({ ...row, inputs, own }, standards, boards, setups)];
    });
}

/** Each set-up by its name in lower case; and the guides of a ring, which near radii may share. */
interface Setups {
  readonly order: ReadonlyMap<string, Pick<RunTicket, 'order' | 'straightGuides'>>;
  readonly sets: GuideSets;
}

function ticketOf(row: Ready, standards: Standards, boards: BoardNeeds, { order, sets }: Setups): Ticket {
  const { no, opening, inputs, own } = row;
  const heads = headsOf(inputs);
  const trim = trimTickets(row, standards);
  const at = (name: string) => order.get(name.toLowerCase()) ?? { order: 0, straightGuides: null };
  return {
    ...{ no, mark: opening.mark, row: opening.row, place: opening.place ?? '', head: inputs.head, heads },
    hands: handsOf({ ...inputs, remarks: opening.remarks }),
    glue: own.rings.map((plan) => glueOf(plan, row, standards, boards)),
    saw: own.rings.map((plan) => sawOf(plan, row, standards)),
    finished: finishedOf(row, standards),
    run: [
      ...own.rings.map((plan) => {
        const setup = sets(inputs, plan).name;
        return { ...at(setup), setup, pieces: heads * plan.ring.count, runLength: plan.runLength };
      }),
      ...(own.straight === null ? [] : own.straight.pieces).map(({ count, length }) => ({
        ...{ ...at(own.straight!.setup), setup: own.straight!.setup, pieces: heads * count, runLength: length },
      })),
    ],
    trim,
    pack: {
      sets: heads,
      pieces: trim.map(({ piece }) => piece),
      extras: extrasText(opening.extras?.map(({ kind, each }) => ({ kind, each: each * inputs.quantity }))),
    },
  };
}

/** What a ring is called beside others of the same head. */
function ringName({ own }: Ready, plan: RingPlan): string {
  const [first, ...others] = own.rings;
  if (others.length === 0) return 'ring';
  if (plan === first) return 'crown';
  return others.length === 1 ? 'haunch' : `haunch ${others.indexOf(plan) + 1}`;
}

function glueOf(plan: RingPlan, row: Ready, standards: Standards, boards: BoardNeeds): GlueTicket {
  const { ring, blank } = plan;
  const { segments, joints, width, boardWidth, length } = blank.chosen;
  const half = halfSegment(ring.blankAngle, segments);
  const inner = ring.inside - standards.margin;
  return {
    ring: ringName(row, plan),
    rings: headsOf(row.inputs) * ring.count,
    ...{ segments, joints, width, boardWidth, longEdge: length, shortEdge: 2 * inner * Math.sin(half) },
    miter: degrees(half),
    wood: row.own.stock,
    boards: boardsWith(plan, row, half, standards, boards),
  };
}

/** The boards of the plan that segments of this ring lie on. */
function boardsWith(
  plan: RingPlan,
  { inputs }: Ready,
  half: number,
  standards: Standards,
  { plans }: BoardNeeds,
): GlueTicket['boards'] {
  const made = ringOf(plan.ring.inside, inputs.face, standards.margin);
  if (!made.ok) return [];
  const counts = new Map<string, { count: number; width: number; length: number }>();
  for (const { species, parts, boards, sale } of plans) {
    if (species.toLowerCase() !== inputs.species.toLowerCase()) continue;
    const wanted = new Set(
      parts.flatMap(({ part: { shape, thickness } }, at) =>
        shape.kind === 'mitered' &&
        thickness === inputs.thickness &&
        shape.half === half &&
        shape.ring.inside === made.value.inside &&
        shape.ring.outside === made.value.outside
          ? [at]
          : [],
      ),
    );
    for (const alike of boards) {
      const pieces = alike.sections.flatMap(({ lanes }) =>
        lanes.flatMap(({ rows }) => rows.flatMap((one) => one.pieces)),
      );
      if (!pieces.some(({ part }) => wanted.has(part))) continue;
      const { width, length } = sale[alike.board]!;
      const before = counts.get(`${width}|${length}`)?.count ?? 0;
      counts.set(`${width}|${length}`, { count: before + alike.count, width, length });
    }
  }
  return [...counts.values()];
}

function sawOf(plan: RingPlan, row: Ready, standards: Standards): SawTicket {
  const { ring } = plan;
  const inside = ring.inside - standards.margin;
  const outside = ring.outside + standards.margin;
  const half = radians(ring.blankAngle / 2);
  const inch = perInch(standards.unit);
  const low = Math.min(inside * Math.cos(half), outside * Math.cos(half));
  return {
    ring: ringName(row, plan),
    rings: headsOf(row.inputs) * ring.count,
    ...{ inside, outside, blankAngle: ring.blankAngle },
    across: 2 * outside * Math.sin(Math.min(half, Math.PI / 2)),
    high: outside - low,
    ordinates: beyondTrammel(outside, standards.unit) ? ordinatesOf(inside, outside, half, inch) : null,
  };
}

/** Ordinates are laid out so far apart that each arc has about a dozen, at whole inches or every 25 mm. */
function ordinatesOf(inside: number, outside: number, half: number, inch: number): ArcOrdinates[] {
  return (['inside', 'outside'] as const).flatMap((arc): ArcOrdinates[] => {
    const radius = arc === 'inside' ? inside : outside;
    const chord = 2 * radius * Math.sin(half);
    const rise = arcRise(chord, radius);
    const unit = inch === 1 ? 1 : 25;
    const rows = rise.ok ? arcOrdinates(chord, rise.value, unit * Math.ceil(chord / 2 / unit / 12)) : rise;
    return rows.ok ? [{ arc, rows: rows.value }] : [];
  });
}

function finishedOf(row: Ready, standards: Standards): Ticket['finished'] {
  const { curve } = row.own;
  if (curve.head.shape === 'straight') return null;
  const { low, high } = edgesOf(row, standards);
  const corners = (curve.joints ?? []).flatMap(({ inside, outside }) => [inside, outside]);
  const [left, right] = curve.joints ?? [];
  return {
    ...extentOf([...low, ...high], corners),
    longPoints: left && right ? Math.hypot(right.outside.x - left.outside.x, right.outside.y - left.outside.y) : null,
  };
}
