import { lengthText } from '../lengthText';
import { capital } from '../schedule/figure';
import type { Unit } from '../unit';
import type { Blank } from './blankChoice';
import type { RowFigures } from './computeRow';
import type { RingKind } from './curve';
import {
  byAllowance,
  byArc,
  byBlank,
  byBoard,
  byHeadLength,
  byInputs,
  byMiter,
  byRadius,
  bySegments,
  bySum,
  byTape,
  RINGS,
  type Explain,
  type FigureMeasure,
} from './explained';
import {
  byBlanks,
  byBoardFeet,
  byCenterCuts,
  byCuts,
  byGrade,
  byKnife,
  byLabor,
  byPasses,
  byRunning,
  bySplices,
  bySetups,
  byStock,
  byWood,
} from './explainedWork';
import { LABOR } from './labor';
import { splicesOf, type RingPlan } from './ownFigures';
import type { Stage } from './shop';

/** One figure of an opening, from its own inputs alone. The only place where it is described. */
export interface Figure {
  readonly name: string;
  readonly heading: string;
  readonly measure: FigureMeasure;
  /** What it rests on, since a setting that can't be read blanks only what rests on it; null: on nothing, it is what says so. */
  readonly stage: Stage | null;
  readonly about: string;
  /** Null: the opening has no such figure, or lacks something. */
  readonly value: (row: RowFigures, unit: Unit) => string | number | null | undefined;
  /** The function that gives it and the numbers it rests on. */
  readonly explain: Explain;
}

/** Sentences in one cell. Runs of spaces are folded as TRIM folds them. */
export function sentences(said: readonly string[]): string {
  return said.join(' ').replace(/ +/g, ' ').trim();
}

/** The figures of a ring's curve. */
export const OF_RING = {
  radius: (ring: RingKind) => ring.radius,
  'inside radius': (ring: RingKind) => ring.inside,
  'outside radius': (ring: RingKind) => ring.outside,
  angle: (ring: RingKind) => ring.angle,
} as const;

/** The figures of the blank that is chosen for a ring. */
export const OF_BLANK = {
  segments: (blank: Blank) => blank.segments,
  'blank width': (blank: Blank) => blank.width,
  'blank length': (blank: Blank) => blank.length,
  'board width': (blank: Blank) => blank.boardWidth,
} as const;

/** Figures of one kind of ring, the crown's the first: under the same names as its own with `haunch`, say, before. */
function ringFigures<Before extends string>(ring: number, before: Before) {
  const ofCurve = (of: (ring: RingKind) => number) => (row: RowFigures) => {
    const found = row.curve?.rings[ring];
    return found && of(found);
  };
  const ofBlank = (of: (blank: Blank) => number) => (row: RowFigures) => {
    const found = row.own?.rings[ring];
    return found && of(found.blank.chosen);
  };
  const make = <N extends string>(
    name: N,
    [ofCrown, ofHaunch]: readonly [string, string],
    rest: Pick<Figure, 'measure' | 'stage' | 'about' | 'explain' | 'value'>,
  ) => ({
    name: `${before}${name}` as const,
    heading: ring === 0 ? ofCrown : ofHaunch.replace('Haunch', capital(RINGS[ring]!)),
    ...rest,
  });
  // prettier-ignore
  return [
    make('radius', ['Opening radius', 'Haunch: opening radius'], { measure: 'length', stage: 'curve', about: "Radius of the opening's own edge.", explain: byRadius(ring), value: ofCurve(OF_RING.radius) }),
    make('inside radius', ['Inside radius', 'Haunch: inside radius'], { measure: 'length', stage: 'curve', about: 'Radius with the reveal: the inside edge of the molding.', explain: bySum(ring, 'reveal'), value: ofCurve(OF_RING['inside radius']) }),
    make('outside radius', ['Outside radius', 'Haunch: outside radius'], { measure: 'length', stage: 'curve', about: 'Radius of the outside edge of the molding.', explain: bySum(ring, 'face'), value: ofCurve(OF_RING['outside radius']) }),
    make('angle', ['Angle', 'Haunch: angle'], { measure: 'degrees', stage: 'curve', about: "Degrees that one arc of the opening's own edge turns through.", explain: byArc(ring), value: ofCurve(OF_RING.angle) }),
    make('blank angle', ['Blank angle', 'Haunch: blank angle'], { measure: 'degrees', stage: 'blank', about: 'Degrees that one glued blank covers: of an arc in halves, of one; end allowances, and what is longer for the rolls, included.', explain: byAllowance(ring), value: (row) => row.own?.rings[ring]?.ring.blankAngle }),
    make('segments', ['Segments', 'Haunch: segments'], { measure: 'count', stage: 'blank', about: 'Segments that one ring is glued of.', explain: bySegments(ring), value: ofBlank(OF_BLANK.segments) }),
    make('blank width', ['Blank width', 'Haunch: blank width'], { measure: 'length', stage: 'blank', about: 'Width of board that one segment takes.', explain: byBlank(ring, 'BLANKWIDTH'), value: ofBlank(OF_BLANK['blank width']) }),
    make('blank length', ['Blank length', 'Haunch: blank length'], { measure: 'length', stage: 'blank', about: 'Length of board that one segment takes.', explain: byBlank(ring, 'BLANKLENGTH'), value: ofBlank(OF_BLANK['blank length']) }),
    make('board width', ['Board width', 'Haunch: board width'], { measure: 'length', stage: 'blank', about: 'Narrowest board on sale that holds the segment.', explain: byBoard(ring), value: ofBlank(OF_BLANK['board width']) }),
  ] as const;
}

/** Every figure that `ARCH.OPENING` gives, in the order of the reference page. */
// prettier-ignore
export const FIGURES = [
  { name: 'needs', heading: 'Needs', measure: 'text', stage: null, about: 'What is missing or in doubt; blank where nothing is.', explain: byInputs, value: (row) => sentences(row.needs) },
  { name: 'look at', heading: 'Look at', measure: 'text', stage: null, about: 'What the row needs; where it needs nothing, what should be looked at before the order goes out.', explain: byInputs, value: (row) => sentences(row.needs.length > 0 ? row.needs : row.attention) },
  ...ringFigures(0, ''),
  { name: 'inside length', heading: 'Inside length', measure: 'length', stage: 'curve', about: 'Length of one head along the inside edge of the casing.', explain: byHeadLength((reveal) => reveal, 'the reveal'), value: (row) => row.curve?.insideLength },
  { name: 'center length', heading: 'Center length', measure: 'length', stage: 'curve', about: 'Length of one head along the middle of the casing.', explain: byHeadLength((reveal, face) => reveal + face / 2, 'at the middle of the casing'), value: (row) => row.curve?.centerLength },
  { name: 'long point', heading: 'Outside (long-point) length', measure: 'length', stage: 'curve', about: 'Length of one head along its outside edge, from long point to long point.', explain: byHeadLength((reveal, face) => reveal + face, 'reveal and casing'), value: (row) => row.curve?.length },
  { name: 'long point text', heading: 'Long point', measure: 'length text', stage: 'curve', about: 'The same as on a tape.', explain: byTape, value: (row, unit) => row.curve && lengthText(row.curve.length, unit) },
  { name: 'leg miter', heading: 'Miter of the leg', measure: 'degrees', stage: 'curve', about: 'Saw setting of the leg, degrees off square; blank where the head is not mitered to legs.', explain: byMiter('leg'), value: (row) => row.curve?.miter },
  { name: 'head miter', heading: 'Miter of the head', measure: 'degrees', stage: 'curve', about: 'Saw setting of the head where it meets the left leg, degrees off its radial line at the inside corner, of a straight piece off square; blank where the head is not mitered to legs.', explain: byMiter('head'), value: (row) => row.curve?.headMiter },
  { name: 'blank', heading: 'Blank', measure: 'length text', stage: 'blank', about: 'Segments of every ring, and the board that each takes.', explain: byBlanks, value: (row, unit) => row.own && blanksText(row.own.rings, unit) },
  ...ringFigures(1, 'haunch '),
  { name: 'splices', heading: 'Finished splices', measure: 'count', stage: 'blank', about: 'Finished splices of one head and its legs, where a piece is larger than the shop carries and is made in halves.', explain: bySplices, value: (row) => row.own && splicesOf(row.own) },
  { name: 'cuts', heading: 'Cuts per inch, outside edge', measure: 'cuts', stage: 'machine', about: 'Knife cuts per inch at the outside edge, where the fewest fall.', explain: byCuts, value: (row) => row.own?.cutsOutside },
  { name: 'center cuts', heading: 'Cuts per inch, center', measure: 'cuts', stage: 'machine', about: 'Knife cuts per inch at the center line, where the feed is held.', explain: byCenterCuts, value: (row) => row.own?.cutsPerInch },
  { name: 'grade', heading: 'Grade met (AWS)', measure: 'text', stage: 'machine', about: 'Grade of the Architectural Woodwork Standards that these cuts meet.', explain: byGrade, value: (row) => row.own?.grade },
  { name: 'passes', heading: 'Passes', measure: 'count', stage: 'machine', about: 'Passes to take the profile down to its depth; the list of knives may name either.', explain: byPasses, value: (row) => row.own?.passes },
  { name: 'run minutes', heading: 'Run minutes', measure: 'minutes', stage: 'labor', about: 'Minutes at the machine for the whole quantity, without spare pieces and set-ups.', explain: byRunning, value: (row) => row.ownCost?.runMinutes },
  { name: 'board feet', heading: 'Board feet', measure: 'boardFeet', stage: 'labor', about: 'Board feet for the whole quantity, without spare and test pieces.', explain: byBoardFeet, value: (row) => row.ownCost?.boardFeet },
  { name: 'stock', heading: 'Wood', measure: 'text', stage: 'blank', about: 'The wood by the stock list, with its dressed thickness: what is planned and bought together.', explain: byStock, value: (row) => row.own?.stock },
  { name: 'wood', heading: 'Wood, before waste', measure: 'money', stage: 'labor', about: 'Board-foot money of the wood for the whole quantity, before waste.', explain: byWood, value: (row) => row.ownCost?.wood },
  { name: 'labor', heading: 'Labor', measure: 'money', stage: 'labor', about: `Money for all the work on the whole quantity: ${Object.values(LABOR).join(', ').toLowerCase()}.`, explain: byLabor, value: (row) => row.ownCost?.labor },
  { name: 'knife', heading: 'Knife', measure: 'text', stage: 'blank', about: 'The knife: width, thickness and profile.', explain: byKnife, value: (row) => row.own?.knife },
  { name: 'set-up', heading: 'Set-ups', measure: 'text', stage: 'blank', about: 'The set-ups it runs through: guide sets of its own radii, and straight molding. Where near radii share guides, the sheet Setups says which.', explain: bySetups, value: (row) => row.own && setupsOf(row.own).join('; ') },
] as const satisfies readonly Figure[];

export type FigureName = (typeof FIGURES)[number]['name'];

/** All of them, and those of further rings that a head of many radii has: no cell asks for these by name. */
export const FIGURES_OF_EVERY_RING: readonly Figure[] = FIGURES.flatMap((figure): readonly Figure[] =>
  figure.name === 'haunch board width'
    ? [figure, ...ringFigures(2, 'second haunch '), ...ringFigures(3, 'third haunch ')]
    : [figure],
);

/** Figures that rest on the passes of the knife, which the list of knives may name. */
const BY_KNIFE: ReadonlySet<FigureName> = new Set<FigureName>(['passes', 'run minutes', 'labor']);

/** The ranges of the shop that a formula hands over for a figure. */
export function shopRanges(figure: FigureName): string {
  return BY_KNIFE.has(figure) ? 'Shop,Wood,OnHand' : 'Shop,Wood';
}

/** A figure as the pane tells of it: its value, and what that rests on. */
export { type Explained, type FigureMeasure, type RestsOn } from './explained';

const BY_NAME: ReadonlyMap<string, Figure> = new Map(FIGURES.map((figure) => [figure.name, figure]));

/** A figure by its name, letter case and spaces forgiven; null: there is none. */
export function figureNamed(name: string): Figure | null {
  return BY_NAME.get(name.trim().toLowerCase().replace(/\s+/g, ' ')) ?? null;
}

/** A figure's value as a cell shows it: blank where the opening has none or lacks something. */
export function figureOf(figure: Figure, row: RowFigures, unit: Unit): string | number {
  return figure.stage !== null && row.isInDoubt(figure.stage) ? '' : (figure.value(row, unit) ?? '');
}

/** A figure of an opening by its name; null where the opening has none or lacks something. */
export function numberOf(name: FigureName, row: RowFigures, unit: Unit): number | null {
  const value = figureOf(BY_NAME.get(name)!, row, unit);
  return typeof value === 'number' ? value : null;
}

/**
 * A figure of one of an opening's rings, the crown's the first, under the name that the crown's figure has; null where there is none
 * or it is in doubt.
 */
export function numberOfRing(
  name: keyof typeof OF_RING | keyof typeof OF_BLANK,
  row: RowFigures,
  ring: number,
): number | null {
  const { stage } = BY_NAME.get(name)!;
  if (stage !== null && row.isInDoubt(stage)) return null;
  if (name in OF_RING) {
    const kind = row.curve?.rings[ring];
    return kind ? OF_RING[name as keyof typeof OF_RING](kind) : null;
  }
  const plan = row.own?.rings[ring];
  return plan ? OF_BLANK[name as keyof typeof OF_BLANK](plan.blank.chosen) : null;
}

function blanksText(rings: readonly RingPlan[], unit: Unit): string {
  return rings
    .map(({ ring, blank: { chosen } }) => {
      const times = ring.count > 1 ? `${ring.count} × ` : '';
      return `${times}${chosen.segments} of ${lengthText(chosen.width, unit)} x ${lengthText(chosen.length, unit)}`;
    })
    .join('; ');
}

/** The names of the set-ups an opening runs through. */
function setupsOf(own: NonNullable<RowFigures['own']>): string[] {
  return [...own.rings.map(({ guide }) => guide), ...(own.straight ? [own.straight.setup] : [])];
}
