import type { Result } from '../../src/result';
import type { MeaningKey } from '../../src/schedule/meanings';
import type { Opening, OpeningField, Schedule, Table } from '../../src/schedule/opening';
import type { Standards } from '../../src/standards';
import type { StockOrder } from '../../src/stock/order';
import type { PlanProgress, StockPlan } from '../../src/stock/plan';
import type { Alone, AloneJob } from '../../src/takeoff/alone';
import type { Unit } from '../../src/unit';
import type { PlanInputs, RenewedPlan } from '../../src/workbook/renewPlan';
import type { BuildJob, Built } from './build/job';

/** What the pane asks of the core. Loaded when first needed, so that the pane itself stands at once. */
export interface Core {
  readTables(name: string, bytes: Uint8Array): Promise<Result<readonly Table[]>>;
  readSchedule(
    table: Table,
    standards: Standards,
    choices: Readonly<Record<number, MeaningKey>>,
  ): Promise<Result<Schedule>>;
  /** One opening with what the user typed in place of a field, read by the same rules as the schedule; bare in `unit`. */
  fix(
    openings: readonly Opening[],
    at: number,
    field: OpeningField,
    text: string,
    standards: Standards,
    unit: Unit,
  ): Promise<Result<Opening>>;
  /** The workbook for these openings, and what to say about it once it is written. */
  workbook(job: BuildJob, signal: AbortSignal): Promise<Result<Built>>;
  /** Boards, set-ups and wood factors planned again from a filled workbook's own sheets. */
  renewPlan(inputs: PlanInputs, signal: AbortSignal): Promise<Result<RenewedPlan>>;
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
