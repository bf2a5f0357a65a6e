import { guides, type Guides } from '../blank/guides';
import type { Result } from '../result';
import type { Standards } from '../standards';
import { perFootPerMinute, perInch } from '../unit';
import type { Inputs } from './inputs';
import { passesOf, type OwnFigures, type RingPlan } from './ownFigures';
import type { Takeoff } from './takeoff';

/** The pieces one opening sends through a set-up. */
export interface SetupPieces {
  readonly row: number;
  readonly mark: string;
  readonly count: number;
  /** Of one piece along its center, end allowances included. */
  readonly runLength: number;
}

/** One set-up of the machine: one knife and, for curved work, one pair of guides. */
export interface Setup {
  /** Guide set or straight set-up, as the takeoff names it. */
  readonly name: string;
  readonly knife: string;
  readonly profile: string;
  readonly face: number;
  readonly thickness: number;
  /** Of the molding; null: a straight set-up. */
  readonly insideRadius: number | null;
  /** Most degrees of any piece's blank. */
  readonly angle: number;
  /** Null: none; refused where the gap leaves no guide. */
  readonly guides: Result<Guides> | null;
  readonly pieces: readonly SetupPieces[];
  /** Pieces to run, spares included. */
  readonly count: number;
  readonly passes: number;
  readonly cutsCenter: number;
  readonly cutsOutside: number;
  /** Shortest piece along its center. */
  readonly shortest: number;
  readonly runMinutes: number;
}

export interface SetupPlan {
  /** In the order that changes knives and guides least: by knife, then by radius. */
  readonly setups: readonly Setup[];
  readonly runMinutes: number;
  readonly setupMinutes: number;
  /** Set-up minutes saved against running the openings in the schedule's order. */
  readonly savedMinutes: number;
}

interface Draft {
  readonly name: string;
  readonly inputs: Inputs;
  readonly own: OwnFigures;
  readonly plan: RingPlan | null;
  readonly pieces: SetupPieces[];
  angle: number;
}

export function planSetups(takeoff: Takeoff): SetupPlan {
  const { standards } = takeoff;
  const drafts = new Map<string, Draft>();
  let changes = 0;
  let mounted = '';
  const add = (own: OwnFigures, inputs: Inputs, name: string, plan: RingPlan | null, pieces: SetupPieces[]) => {
    const key = name.toLowerCase();
    if (mounted !== key) changes++;
    mounted = key;
    const draft = drafts.get(key) ?? { name, inputs, own, plan, pieces: [], angle: 0 };
    draft.pieces.push(...pieces);
    draft.angle = Math.max(draft.angle, plan?.ring.blankAngle ?? 0);
    drafts.set(key, draft);
  };
  for (const row of takeoff.openings) {
    const { inputs, own } = row;
    if (inputs === null || own === null) continue;
    const of = { row: row.opening.row, mark: row.opening.mark };
    for (const plan of [own.crown, own.haunch]) {
      if (plan === null) continue;
      add(own, inputs, plan.guide, plan, [
        { ...of, count: inputs.quantity * plan.ring.count, runLength: plan.runLength },
      ]);
    }
    if (own.straight) {
      const pieces = own.straight.pieces.map(({ length, count }) => ({
        ...of,
        count: count * inputs.quantity,
        runLength: length,
      }));
      add(own, inputs, own.straight.setup, null, pieces);
    }
  }
  const setups = [...drafts.values()].map((draft) => finish(draft, standards)).sort(byKnifeThenRadius);
  return {
    setups,
    runMinutes: setups.reduce((sum, setup) => sum + setup.runMinutes, 0),
    setupMinutes: setups.length * standards.setupMinutes,
    savedMinutes: (changes - setups.length) * standards.setupMinutes,
  };
}

function finish(draft: Draft, standards: Standards): Setup {
  const { inputs, plan, pieces } = draft;
  const feed = standards.feed / perFootPerMinute(standards.unit);
  const inch = perInch(standards.unit);
  const passes = passesOf(standards);
  const inside = plan?.ring.inside ?? null;
  const pair = inside === null ? null : guides(inside, inputs.face, standards.margin, standards.clearance);
  const spares = plan === null ? 0 : standards.sparePieces;
  const run = pieces.reduce((sum, piece) => sum + piece.count, 0);
  const length = pieces.reduce((sum, piece) => sum + piece.count * piece.runLength, 0);
  const withSpares = length * (1 + spares / run);
  return {
    name: draft.name,
    knife: draft.own.knife,
    profile: inputs.profile,
    face: inputs.face,
    thickness: inputs.thickness,
    insideRadius: inside,
    angle: draft.angle,
    guides: pair,
    pieces,
    count: run + spares,
    passes,
    cutsCenter: draft.own.cutsPerInch,
    cutsOutside: plan?.cutsOutside ?? draft.own.cutsPerInch,
    shortest: Math.min(...pieces.map((piece) => piece.runLength)),
    runMinutes: (passes * withSpares) / inch / (12 * feed) + (run + spares) * standards.handling,
  };
}

/** Straight set-ups come before the curved ones of their knife; curved ones from the tightest radius out. */
function byKnifeThenRadius(one: Setup, other: Setup): number {
  return one.knife.localeCompare(other.knife, 'en') || (one.insideRadius ?? -1) - (other.insideRadius ?? -1);
}
