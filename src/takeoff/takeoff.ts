import type { Opening, Problem } from '../schedule/opening';
import type { Standards } from '../standards';
import { attentionOf } from './attention';
import { curveOf, type Curve } from './curve';
import { known, needsOf, type Inputs, type Known, type ShapeInputs } from './inputs';
import { ownFigures, type OwnFigures } from './ownFigures';
import { priceOf, type Cost } from './price';
import { sharesOf, type Shares } from './shares';

/** One opening taken off. */
export interface OpeningTakeoff {
  readonly opening: Opening;
  /** The inputs as far as they are known, with the shop's standards put in. */
  readonly known: Known;
  /** Inputs of the curve that are missing or in doubt, each in a sentence. */
  readonly missingShape: readonly string[];
  /** All inputs that are missing or in doubt, those of the curve first. */
  readonly missing: readonly string[];
  /** Why the figures can't be computed although every input is there. */
  readonly failure: string | null;
  /** The two above together; empty: every figure below is there. */
  readonly needs: readonly string[];
  /** What is computed but should be looked at before the order goes out. */
  readonly attention: readonly string[];
  /** There as soon as the curve's own inputs are. */
  readonly curve: Curve | null;
  readonly inputs: Inputs | null;
  readonly own: OwnFigures | null;
  readonly cost: Cost | null;
}

export interface Totals {
  readonly openings: number;
  /** Openings that need something and are not priced. */
  readonly open: number;
  readonly heads: number;
  readonly boardFeet: number;
  readonly runMinutes: number;
  readonly laborMinutes: number;
  readonly price: number;
}

export interface Takeoff {
  readonly standards: Standards;
  readonly openings: readonly OpeningTakeoff[];
  readonly problems: readonly Problem[];
  readonly shares: Shares;
  readonly totals: Totals;
}

/** Takes off a list of openings: every opening stays, those that can't be computed say what they need. */
export function takeoff(openings: readonly Opening[], standards: Standards): Takeoff {
  const marks = new Map<string, number>();
  for (const { mark } of openings) marks.set(mark.toLowerCase(), (marks.get(mark.toLowerCase()) ?? 0) + 1);
  const markUsed = (mark: string) => marks.get(mark.toLowerCase()) ?? 0;

  const computed = openings.map((opening) => {
    const at = known(opening, standards);
    const needed = needsOf(opening, at, standards, markUsed);
    const made = needed.shape.length === 0 ? curveOf(at as ShapeInputs, standards.endAllowance) : null;
    const curve = made?.ok ? made.value : null;
    const missing = [...needed.shape, ...needed.rest];
    const base = { opening, known: at, missingShape: needed.shape, missing, curve };
    if (missing.length > 0) return { ...base, failure: null, needs: missing, inputs: null, own: null };
    const own = made?.ok ? ownFigures(at as Inputs, made.value, standards) : made;
    if (own?.ok) return { ...base, failure: null, needs: [], inputs: at as Inputs, own: own.value };
    const failure = own?.message ?? 'The curve can not be computed.';
    return { ...base, failure, needs: [failure], inputs: null, own: null };
  });
  const shares = sharesOf(computed.flatMap(({ inputs, own }) => (inputs && own ? [{ inputs, own }] : [])));
  const rows = computed.map((row): OpeningTakeoff => {
    if (row.inputs === null || row.own === null) return { ...row, attention: [], cost: null };
    const cost = priceOf(row.inputs, row.own, shares, standards);
    return { ...row, attention: attentionOf(row.inputs, row.own, standards), cost };
  });
  return {
    standards,
    openings: rows,
    problems: openings.flatMap((opening) => opening.problems),
    shares,
    totals: totalsOf(rows),
  };
}

function totalsOf(rows: readonly OpeningTakeoff[]): Totals {
  const sum = (of: (cost: Cost) => number) => rows.reduce((total, { cost }) => total + (cost ? of(cost) : 0), 0);
  return {
    openings: rows.length,
    open: rows.filter((row) => row.needs.length > 0).length,
    heads: rows.reduce((total, row) => total + (row.inputs?.quantity ?? 0), 0),
    boardFeet: sum((cost) => cost.boardFeet),
    runMinutes: sum((cost) => cost.runMinutes),
    laborMinutes: sum((cost) => cost.laborMinutes),
    // Whole cents are added, so that the total is the sum of the prices as they are printed.
    price: sum((cost) => Math.round(cost.price * 100)) / 100,
  };
}
