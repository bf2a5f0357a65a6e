import { addUp } from '../rounding';
import type { Opening, Problem } from '../schedule/opening';
import type { Standards } from '../standards';
import { computeRow, type RowFigures } from './computeRow';
import { costOf, NOT_PLANNED, type Cost, type WoodFactors } from './price';
import { handsOf, SIDE_UNSAID } from './hands';
import { rowOf, sharedMarks, type Row } from './row';
import { sharesOf, type Share, type Sharer } from './shares';

/** One opening taken off. */
export interface OpeningTakeoff extends RowFigures {
  /** Its permanent number in its workbook. */
  readonly no: number;
  readonly opening: Opening;
  /** The cells of its row. */
  readonly cells: Row;
  /** Of a head that is high at one side: that its hand is not said; none: nothing. */
  readonly sideUnsaid: readonly string[];
  /** Its part of what is shared; null where it bears nothing. */
  readonly share: Share | null;
  /** Null where it needs something. */
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
  readonly totals: Totals;
  /** The greatest number that an opening of this workbook ever had: none is given twice. */
  readonly numbersGiven: number;
}

export interface TakeoffOptions {
  /** From the plan of the boards; left out: no wood is planned. */
  readonly factors?: WoodFactors | undefined;
  /** The greatest number that the workbook has given so far. */
  readonly numbersGiven?: number | undefined;
  /** The cells of each opening's row, where they stand in a workbook; left out: what a filling would write. */
  readonly cells?: readonly Row[] | undefined;
}

/**
 * Takes off a list of openings: every opening stays, those that can't be computed say what they need. Openings without a
 * number get the next ones.
 */
export function takeoff(
  openings: readonly Opening[],
  standards: Standards,
  { factors = NOT_PLANNED, numbersGiven = 0, cells: given }: TakeoffOptions = {},
): Takeoff {
  const isShared = sharedMarks(openings);
  const numbers = numbered(openings, numbersGiven);
  const computed = openings.map((opening, at) => {
    const cells = given?.[at] ?? rowOf(opening, standards, isShared(opening.mark));
    const figures = computeRow(cells, { standards });
    const hands = figures.inputs && handsOf({ ...figures.inputs, remarks: opening.remarks });
    return { no: numbers[at]!, opening, cells, sideUnsaid: hands === 'unsaid' ? [SIDE_UNSAID] : [], ...figures };
  });
  const problems = openings.flatMap((opening) => opening.problems);
  return priced(
    { standards, problems, numbersGiven: numbers.reduce((most, no) => Math.max(most, no), numbersGiven) },
    computed,
    factors,
  );
}

/** The same takeoff with what its boards really cost. */
export function withFactors(taken: Takeoff, factors: WoodFactors): Takeoff {
  return priced(taken, taken.openings, factors);
}

function priced(
  { standards, problems, numbersGiven }: Pick<Takeoff, 'standards' | 'problems' | 'numbersGiven'>,
  computed: readonly Omit<OpeningTakeoff, 'share' | 'cost'>[],
  factors: WoodFactors,
): Takeoff {
  const shares = new Map(sharesOf(sharersOf(computed), standards).map((share) => [share.no, share]));
  const rows = computed.map((row): OpeningTakeoff => {
    const share = shares.get(row.no) ?? null;
    if (share === null || row.inputs === null || row.own === null || row.ownCost === null)
      return { ...row, share: null, cost: null };
    const { priceAgreed } = row.opening;
    const sold = { quantity: row.inputs.quantity, stock: row.own.stock, priceAgreed };
    return { ...row, share, cost: costOf(row.ownCost, share, sold, factors, standards) };
  });
  return { standards, openings: rows, problems, numbersGiven, totals: totalsOf(rows) };
}

/** The openings that bear their part of what is shared: those that need nothing. */
export function sharersOf(rows: readonly Pick<OpeningTakeoff, 'no' | 'inputs' | 'own'>[]): Sharer[] {
  return rows.flatMap(({ no, inputs, own }) => (inputs && own ? [{ no, inputs, own }] : []));
}

/** Each opening's number: its own, or the next after the greatest there is. */
function numbered(openings: readonly Opening[], given: number): number[] {
  let next = 1 + openings.reduce((most, { no }) => Math.max(most, no ?? 0), given);
  return openings.map(({ no }) => no ?? next++);
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
    price: addUp(rows.map(({ cost }) => cost?.price ?? 0)),
  };
}
