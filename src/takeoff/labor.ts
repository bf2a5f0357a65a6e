import type { Standards } from '../standards';
import { bare, feetPerMinute, longUnit, perInch } from '../unit';

/** Each kind of work on a piece, in the order it is done, by what it is called. Only running is at the machine; the rest is at the bench. */
export const LABOR = {
  gluing: 'Gluing up',
  sawing: 'Sawing rings',
  planing: 'Planing blanks',
  running: 'Running and handling',
  trimming: 'Trimming to width',
  endCuts: 'Cutting ends',
  sanding: 'Sanding by hand',
  packing: 'Packing pieces',
  fitting: 'Splices and carriers',
} as const;
export type LaborKind = keyof typeof LABOR;
export type BenchKind = Exclude<LaborKind, 'running'>;
export const LABOR_KINDS = Object.keys(LABOR) as readonly LaborKind[];
/** Minutes of each kind of work. */
export type LaborMinutes = Readonly<Record<LaborKind, number>>;

export const NO_LABOR = Object.fromEntries(LABOR_KINDS.map((kind) => [kind, 0])) as LaborMinutes;

/** Pieces of one kind as the work on them is counted: of rings or of straight molding. */
export interface Worked {
  readonly pieces: number;
  /** All pieces at the molding's center, with their end allowances: what runs past the knife. */
  readonly runLength: number;
  /** All pieces along their outside edge, with their end allowances. */
  readonly outsideLength: number;
  readonly passes: number;
  readonly joints: number;
  /** Pieces fixed to a carrier, because the rolls would not hold them. */
  readonly carried: number;
  /** Ends of one piece that are cut. */
  readonly ends: number;
  /** Straight stock comes dressed, is ripped from the board, and has a feed of its own. */
  readonly straight: boolean;
}

/** The minutes of work on pieces; their number need not be whole: an opening's share of the spare ones is not. */
export function laborOf(worked: Worked, standards: Standards): LaborMinutes {
  const { pieces, runLength, outsideLength, passes, joints, carried, ends, straight } = worked;
  const long = outsideLength / longUnit(standards.unit);
  return {
    gluing: joints * standards.jointMinutes,
    sawing: straight ? 0 : long * standards.sawMinutes,
    planing: straight ? 0 : long * standards.planeMinutes,
    running: passes * runLength * minutesPerPass(straight, standards) + pieces * standards.handling,
    trimming: long * standards.trimMinutes,
    endCuts: pieces * ends * standards.endCutMinutes,
    sanding: long * standards.sandMinutes,
    packing: pieces * standards.packMinutes,
    fitting: carried * standards.carrierMinutes,
  };
}

/** Minutes that one pass takes for one unit of length. */
export function minutesPerPass(straight: boolean, { feed, straightFeed, unit }: Standards): number {
  return 1 / perInch(unit) / (12 * bare(feetPerMinute(straight ? straightFeed : feed, unit)));
}

export function addLabor(all: readonly LaborMinutes[]): LaborMinutes {
  return Object.fromEntries(
    LABOR_KINDS.map((kind) => [kind, all.reduce((sum, minutes) => sum + minutes[kind], 0)]),
  ) as LaborMinutes;
}

export function minutesOf(minutes: LaborMinutes): number {
  return LABOR_KINDS.reduce((sum, kind) => sum + minutes[kind], 0);
}

/** Minutes of the work that is not at the machine. */
export function benchMinutes(minutes: LaborMinutes): number {
  return minutesOf({ ...minutes, running: 0 });
}

/** Money for a kind of work. */
export function moneyForKind(kind: LaborKind, minutes: number, { shopRate, benchRate }: Standards): number {
  return (minutes / 60) * (kind === 'running' ? shopRate : benchRate);
}

export function laborMoney(minutes: LaborMinutes, standards: Standards): number {
  return LABOR_KINDS.reduce((sum, kind) => sum + moneyForKind(kind, minutes[kind], standards), 0);
}
