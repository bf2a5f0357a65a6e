import type { Result } from '../../src/result';
import type { MeaningKey } from '../../src/schedule/meanings';
import type { Answers, Opening, OpeningField, Table } from '../../src/schedule/opening';
import type { Standards } from '../../src/standards';
import type { StockOrder } from '../../src/stock/order';
import type { PlanProgress, StockPlan } from '../../src/stock/plan';
import type { Alone, AloneJob } from '../../src/takeoff/alone';
import type { OnStep } from '../../src/takeoff/segmentSavings';
import type { Unit } from '../../src/unit';
import type { PlanInputs, RenewedPlan } from '../../src/workbook/renewPlan';
import type { BuildJob, BuildStep, Built } from './build/job';
import type { ListRead } from './state';

/** What the pane asks of the core. Loaded when first needed, so that the pane itself stands at once. */
export interface Core {
  readTables(name: string, bytes: Uint8Array): Promise<Result<readonly Table[]>>;
  readSchedule(
    table: Table,
    standards: Standards,
    choices: Readonly<Record<number, MeaningKey>>,
    answers?: Answers,
    /** The table is a Takeoff of ours. */
    ours?: boolean,
  ): Promise<Result<ListRead>>;
  /** What was typed for a field of one of these openings as an answer to keep, a bare length with `unit`; or why it can't be. */
  typed(
    openings: readonly Opening[],
    at: number,
    field: OpeningField,
    text: string,
    unit: Unit,
  ): Promise<Result<string>>;
  /** The workbook for these openings, and what to say about it once it is written. */
  workbook(job: BuildJob, signal: AbortSignal, onStep?: (step: BuildStep) => void): Promise<Result<Built>>;
  /** Boards, set-ups and wood factors planned again from a filled workbook's own sheets. */
  renewPlan(inputs: PlanInputs, signal: AbortSignal, onStep?: OnStep): Promise<Result<RenewedPlan>>;
  /** What one opening would cost alone, and what its job saves without it. */
  alone(job: AloneJob, signal: AbortSignal): Promise<Result<Alone>>;
  /** A cutting plan; looked for until it is proven or the time is over. */
  plan(
    order: StockOrder,
    deadlineMs: number,
    onProgress: (progress: PlanProgress) => void,
    signal: AbortSignal,
  ): Promise<Result<StockPlan>>;
}
