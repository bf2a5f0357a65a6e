import { guides, type Guides } from '../blank/guides';
import { pushTo } from '../pushTo';
import type { Result } from '../result';
import { markOrRow } from '../schedule/opening';
import type { Standards } from '../standards';
import type { Inputs } from './inputs';
import { minutesPerPass } from './labor';
import { headsOf } from './ownCost';
import { guideSetsOf, strayOf, type GuideSet, type GuideSets } from './guideSets';
import { cutsAtEdge, cutsOfStraight, type OwnFigures, type RingPlan } from './ownFigures';
import { sharersOf, type OpeningTakeoff, type Takeoff } from './takeoff';

/** The pieces one opening sends through a set-up. */
export interface SetupPieces {
  readonly no: number;
  readonly row: number;
  readonly mark: string;
  readonly count: number;
  /** Of one piece along its center, end allowances included. */
  readonly runLength: number;
  /** Inside radius of its molding; null: straight. */
  readonly insideRadius: number | null;
  /** How a piece is run that the rolls would not hold by itself; null: as it is. */
  readonly longer: 'overlong' | 'carrier' | null;
  /** How far it leaves the path of its guides over their length, because they are made for another radius. */
  readonly strays: number;
}

/** One set-up of the machine: one knife and, for curved work, one pair of guides. */
export interface Setup {
  /** Guide set or straight set-up, as the takeoff names it. */
  readonly name: string;
  readonly knife: string;
  readonly profile: string;
  readonly face: number;
  readonly thickness: number;
  /** Of the molding that the guides are made for; null: a straight set-up. */
  readonly insideRadius: number | null;
  /** Most degrees of any piece's blank. */
  readonly angle: number;
  /** Null: none; refused where the gap leaves no guide. */
  readonly guides: Result<Guides> | null;
  readonly pieces: readonly SetupPieces[];
  /** Pieces to run, spares included. */
  readonly count: number;
  readonly passes: number;
  /** In the workbook's unit: straight stock has its own. */
  readonly feed: number;
  readonly cutsCenter: number;
  readonly cutsOutside: number;
  /** Shortest piece along its center. */
  readonly shortest: number;
  readonly runMinutes: number;
  /** Changing the guides, and the knife where this set-up is the first of its knife. */
  readonly changeMinutes: number;
}

export interface SetupPlan {
  /** In the order that changes knives and guides least: by knife, then by radius. */
  readonly setups: readonly Setup[];
  readonly runMinutes: number;
  /** One knife change for each knife and one guide change for each set-up. */
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
  readonly guides: GuideSet | null;
  readonly pieces: readonly SetupPieces[];
}

export function planSetups(takeoff: Takeoff): SetupPlan {
  const { standards } = takeoff;
  const sets = guideSetsOf(sharersOf(takeoff.openings), standards);
  const runs = takeoff.openings.flatMap((row) => runsOf(row, sets, standards));
  const drafts = new Map<string, Run[]>();
  // Crowns first: the workbook looks a guide set's radius up among the crowns before the haunches.
  for (const run of [...runs.filter(isCrown), ...runs.filter((each) => !isCrown(each))]) {
    pushTo(drafts, run.name.toLowerCase(), run);
  }
  const finished = [...drafts.values()].map((draft) => finish(draft, standards)).sort(byKnifeThenRadius);
  const minutes = changesOf(finished, standards);
  const setups = finished.map((setup, at): Setup => ({ ...setup, changeMinutes: minutes[at]! }));
  const setupMinutes = minutes.reduce((sum, each) => sum + each, 0);
  const asListed = changesOf(
    runs.map(({ name, own }) => ({ name, knife: own.knife })),
    standards,
  );
  return {
    setups,
    runMinutes: setups.reduce((sum, setup) => sum + setup.runMinutes, 0),
    setupMinutes,
    savedMinutes: asListed.reduce((sum, each) => sum + each, 0) - setupMinutes,
  };
}

/** Minutes of changing before each of these, one after another. */
function changesOf(
  inOrder: readonly { readonly name: string; readonly knife: string }[],
  { knifeChange, guideChange }: Standards,
): number[] {
  const differs = (one: string, before: string | undefined) => one.toLowerCase() !== before?.toLowerCase();
  return inOrder.map(({ name, knife }, at) => {
    const before = inOrder[at - 1];
    return (differs(knife, before?.knife) ? knifeChange : 0) + (differs(name, before?.name) ? guideChange : 0);
  });
}

function isCrown({ plan, own }: Run): boolean {
  return plan !== null && plan === own.crown;
}

function runsOf({ no, opening, inputs, own }: OpeningTakeoff, sets: GuideSets, standards: Standards): Run[] {
  if (inputs === null || own === null) return [];
  const of = { no, row: opening.row, mark: opening.mark };
  const runs = own.rings.map((plan): Run => {
    const guides = sets(inputs, plan);
    const { inside, count } = plan.ring;
    // Names tell radii apart to a thousandth; what is less is no stray.
    const strays = guides.name === plan.guide ? 0 : strayOf(inside, guides.radius, standards);
    const piece = {
      ...{ ...of, count: headsOf(inputs) * count, runLength: plan.runLength },
      ...{ insideRadius: inside, strays, longer: longerOf(plan) },
    };
    return { name: guides.name, own, inputs, plan, guides, pieces: [piece] };
  });
  if (own.straight === null) return runs;
  const pieces = own.straight.pieces.map(({ length, count, longer }) => ({
    ...of,
    count: count * headsOf(inputs),
    runLength: length,
    ...{ insideRadius: null, strays: 0, longer },
  }));
  return [...runs, { name: own.straight.setup, own, inputs, plan: null, guides: null, pieces }];
}

function longerOf({ made }: RingPlan): SetupPieces['longer'] {
  return made.overlong ? 'overlong' : made.carried ? 'carrier' : null;
}

function finish(runs: readonly Run[], standards: Standards): Omit<Setup, 'changeMinutes'> {
  const { name, own, inputs, plan, guides: set } = runs[0]!;
  const pieces = runs.flatMap((each) => each.pieces);
  const feed = plan === null ? standards.straightFeed : standards.feed;
  const { passes } = own;
  const inside = set?.radius ?? null;
  const pair = inside === null ? null : guides(inside, inputs.face, standards.margin, standards.clearance);
  const straight = plan === null ? cutsOfStraight(standards) : null;
  const cutsCenter = straight?.ok ? straight.value : own.cutsPerInch;
  // The tightest of its rings has the fewest cuts at its outside edge.
  const tightest = runs.reduce<RingPlan | null>(
    (least, { plan: each }) =>
      each !== null && (least === null || each.ring.inside < least.ring.inside) ? each : least,
    null,
  );
  const edge = tightest === null ? null : cutsAtEdge(tightest.ring, inputs.face, standards);
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
    feed,
    cutsCenter,
    cutsOutside: edge?.ok ? edge.value : cutsCenter,
    shortest: Math.min(...pieces.map((piece) => piece.runLength)),
    runMinutes: passes * withSpares * minutesPerPass(plan === null, standards) + (run + spares) * standards.handling,
  };
}

/** Straight set-ups come before the curved ones of their knife; curved ones from the tightest radius out. */
function byKnifeThenRadius(one: Omit<Setup, 'changeMinutes'>, other: Omit<Setup, 'changeMinutes'>): number {
  return one.knife.localeCompare(other.knife, 'en') || (one.insideRadius ?? -1) - (other.insideRadius ?? -1);
}

/** Whose pieces these are, each opening once. */
export function marksOf(pieces: Setup['pieces']): string[] {
  return [...new Set(pieces.map(markOrRow))];
}
