import { guides, type Guides } from '../blank/guides';
import type { Result } from '../result';
import { markOrRow } from '../schedule/opening';
import type { Standards } from '../standards';
import { perFootPerMinute, perInch } from '../unit';
import type { Inputs } from './inputs';
import { headsOf } from './ownCost';
import { cutsAtEdge, passesOf, type OwnFigures, type RingPlan } from './ownFigures';
import type { OpeningTakeoff, Takeoff } from './takeoff';

/** The pieces one opening sends through a set-up. */
export interface SetupPieces {
  readonly no: number;
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

/** What one opening runs through one set-up. */
interface Run {
  readonly name: string;
  readonly own: OwnFigures;
  readonly inputs: Inputs;
  /** Null: straight. */
  readonly plan: RingPlan | null;
  readonly pieces: readonly SetupPieces[];
}

export function planSetups(takeoff: Takeoff): SetupPlan {
  const { standards } = takeoff;
  const runs = takeoff.openings.flatMap(runsOf);
  const drafts = new Map<string, Run[]>();
  // Crowns first: the workbook looks a guide set's radius up among the crowns before the haunches.
  for (const run of [...runs.filter(isCrown), ...runs.filter((each) => !isCrown(each))]) {
    const key = run.name.toLowerCase();
    const draft = drafts.get(key);
    if (draft) draft.push(run);
    else drafts.set(key, [run]);
  }
  const setups = [...drafts.values()].map((draft) => finish(draft, standards)).sort(byKnifeThenRadius);
  const changes = runs.filter((run, at) => run.name.toLowerCase() !== runs[at - 1]?.name.toLowerCase()).length;
  return {
    setups,
    runMinutes: setups.reduce((sum, setup) => sum + setup.runMinutes, 0),
    setupMinutes: setups.length * standards.setupMinutes,
    savedMinutes: (changes - setups.length) * standards.setupMinutes,
  };
}

function isCrown({ plan, own }: Run): boolean {
  return plan !== null && plan === own.crown;
}

function runsOf({ no, opening, inputs, own }: OpeningTakeoff): Run[] {
  if (inputs === null || own === null) return [];
  const of = { no, row: opening.row, mark: opening.mark };
  const runs = own.rings.map((plan): Run => ({
    name: plan.guide,
    own,
    inputs,
    plan,
    pieces: [{ ...of, count: headsOf(inputs) * plan.ring.count, runLength: plan.runLength }],
  }));
  if (own.straight === null) return runs;
  const pieces = own.straight.pieces.map(({ length, count }) => ({
    ...of,
    count: count * headsOf(inputs),
    runLength: length,
  }));
  return [...runs, { name: own.straight.setup, own, inputs, plan: null, pieces }];
}

function finish(runs: readonly Run[], standards: Standards): Setup {
  const { name, own, inputs, plan } = runs[0]!;
  const pieces = runs.flatMap((each) => each.pieces);
  const feed = standards.feed / perFootPerMinute(standards.unit);
  const inch = perInch(standards.unit);
  const passes = passesOf(standards);
  const inside = plan?.ring.inside ?? null;
  const pair = inside === null ? null : guides(inside, inputs.face, standards.margin, standards.clearance);
  const edge = plan === null ? null : cutsAtEdge(plan.ring, inputs.face, standards);
  const spares = plan === null ? 0 : standards.sparePieces;
  const run = pieces.reduce((sum, piece) => sum + piece.count, 0);
  const length = pieces.reduce((sum, piece) => sum + piece.count * piece.runLength, 0);
  const withSpares = length * (1 + spares / run);
  return {
    name,
    knife: own.knife,
    profile: inputs.profile,
    face: inputs.face,
    thickness: inputs.thickness,
    insideRadius: inside,
    angle: Math.max(...runs.map((each) => each.plan?.ring.blankAngle ?? 0)),
    guides: pair,
    pieces,
    count: run + spares,
    passes,
    cutsCenter: own.cutsPerInch,
    cutsOutside: edge?.ok ? edge.value : own.cutsPerInch,
    shortest: Math.min(...pieces.map((piece) => piece.runLength)),
    runMinutes: (passes * withSpares) / inch / (12 * feed) + (run + spares) * standards.handling,
  };
}

/** Straight set-ups come before the curved ones of their knife; curved ones from the tightest radius out. */
function byKnifeThenRadius(one: Setup, other: Setup): number {
  return one.knife.localeCompare(other.knife, 'en') || (one.insideRadius ?? -1) - (other.insideRadius ?? -1);
}

/** Whose pieces these are, each opening once. */
export function marksOf(pieces: Setup['pieces']): string[] {
  return [...new Set(pieces.map(markOrRow))];
}
