import { attentionOf } from './attention';
import { curveOf, type Curve } from './curve';
import { readRow, type Inputs, type Known, type ShapeInputs } from './inputs';
import { ownCost, type OwnCost } from './ownCost';
import { blanksOf, runningOf, type OwnFigures } from './ownFigures';
import type { Row } from './row';
import { SettingsRead, type Shop, type Stage } from './shop';

/** Everything that follows from one row alone. */
export interface RowFigures {
  /** The inputs as far as they are known, with the shop's standards put in. */
  readonly known: Known;
  /** Inputs of the curve that are missing or in doubt, each in a sentence. */
  readonly missingShape: readonly string[];
  /** All inputs that are missing or in doubt, those of the curve first. */
  readonly missing: readonly string[];
  /** Why the curve can't be made although its own inputs are there. */
  readonly curveFailure: string | null;
  /** Why the figures can't be computed although every input is there; a curve's failure whatever else is missing. */
  readonly failure: string | null;
  /** The two above together, and settings that can't be read; empty: every figure below is there. */
  readonly needs: readonly string[];
  /** What is computed but should be looked at before the order goes out. */
  readonly attention: readonly string[];
  /** There as soon as the curve's own inputs are. */
  readonly curve: Curve | null;
  readonly inputs: Inputs | null;
  readonly own: OwnFigures | null;
  readonly ownCost: OwnCost | null;
  /** Whether a stage's figures rest on a setting that can't be read, and are not to be shown. */
  readonly isInDoubt: (stage: Stage) => boolean;
}

/** Computes one row: what is missing is said, and what follows from the rest is there all the same. */
export function computeRow(row: Row, shop: Shop): RowFigures {
  const settings = new SettingsRead(shop);
  const { known, missingShape, missing } = readRow(row, settings.for('inputs'));
  const made = missingShape.length === 0 ? curveOf(known as ShapeInputs, settings.for('curve')) : null;
  const base = {
    ...{ known, missingShape, missing, curve: made?.ok ? made.value : null },
    curveFailure: made && !made.ok ? made.message : null,
    isInDoubt: (stage: Stage) => settings.wrongFor(stage).length > 0,
  };
  const lacking = (failure: string | null) => ({
    ...base,
    ...{ inputs: null, own: null, ownCost: null, attention: [], failure },
    // A curve that can't be is said first: its own inputs are all there then.
    needs: [...settings.all(), ...(failure === null ? [] : [failure]), ...missing],
  });
  if (made && !made.ok) return lacking(made.message);
  if (missing.length > 0 || made === null) return lacking(null);
  const inputs = known as Inputs;
  const blanks = blanksOf(inputs, made.value, settings.for('blank'));
  if (!blanks.ok) return lacking(blanks.message);
  const running = runningOf(inputs, blanks.value, settings.for('machine'));
  if (!running.ok) return lacking(running.message);
  const own: OwnFigures = { ...blanks.value, ...running.value };
  const cost = ownCost(inputs, own, settings.for('labor'));
  const attention = attentionOf(inputs, own, settings.for('attention'));
  return { ...base, failure: null, needs: settings.all(), attention, inputs, own, ownCost: cost };
}
