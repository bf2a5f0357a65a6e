import { cellsNamed } from '../../formulaText';
import type { FigureName } from '../../takeoff/figures';
import type { RowField } from '../../takeoff/row';

/**
 * The keys of the sheet Working. A figure of an opening stands there under its own name, so one that has no plain formula doesn't
 * compile; the others are figures on the way. Formulas name cells by these keys alone: `its['blank width']`.
 */
export type WorkingKey =
  FigureName | InputKey | ToDoStep | ShareKey | HighLegKey | MachineStep | WoodStep | PriceStep | RingKey<RingBefore>;

export type InputKey = 'at' | RowField;
export type ShareKey = 'no' | 'shareMoney' | 'shareWood';
export type HighLegKey = 'insideAtLeg' | 'centerAtLeg' | 'outsideAtLeg';
export type PriceStep = 'benchMinutes';
export type MachineStep = 'straightCuts' | 'cutsFewest' | 'straightMinutes';
export type ToDoStep =
  'attention' | 'stops' | 'lacksShape' | 'curveFails' | 'missingShape' | 'lacks' | 'blankFails' | 'missing' | 'counted';
export type WoodStep =
  | 'stockThickness'
  | 'quarters'
  | 'widest'
  | 'ripped'
  | 'longestPiece'
  | 'flatLong'
  | 'headLong'
  | 'leftLegLong'
  | 'rightLegLong'
  | 'straightLength'
  | 'straightPieces'
  | 'straightSplices'
  | 'straightCarried'
  | 'straightSetup'
  | 'headJoints'
  | 'straightPart'
  | 'guideParts'
  | 'straightFeet'
  | 'testFeet';

/** What a figure of a ring is called, of whichever kind: `blank width` of the crown, of the haunches, …. */
export type RingFigure = FigureName extends infer Name
  ? Name extends `haunch ${infer OfRing}`
    ? OfRing
    : never
  : never;
export type RingStep =
  | 'finishedAngle'
  | 'parts'
  | 'ownAngle'
  | 'madeAngle'
  | 'segmentsFewest'
  | 'weigh0'
  | 'weigh1'
  | 'weigh2'
  | 'guide'
  | 'guideRadius'
  | 'pieces'
  | 'setupPieces'
  | 'guidePart'
  | 'pieceRun'
  | 'pieceBench'
  | 'pieceFeet';
/** What stands before the figures of one kind of ring: nothing before the crown's. */
export type RingBefore = '' | 'haunch ' | 'second haunch ' | 'third haunch ';
export type RingKey<Before extends RingBefore> = `${Before}${RingFigure | RingStep}`;

/** A cell of the same row in a formula's template, `${its.span}/2`, and a whole column, `SUM(${all.counted})`. */
export const { its, all } = cellsNamed<WorkingKey>();
