import { BLANK_JOB, type Job } from '../../../src/job/fields';
import type { Schedule } from '../../../src/schedule/opening';
import type { Standards } from '../../../src/standards';
import type { Before } from '../../../src/workbook/refill';
import type { Sheet } from '../../../src/workbook/sheet';
import { takeoffTotals } from '../../../src/workbook/takeoff/totals';
import { takeoffWithEdits } from '../../../src/workbook/withEdits';
import { workbookSheets } from '../../../src/workbook/workbook';
import { OUR_SHEETS } from '../ourSheets';
import type { Filled } from '../state';

/** What is to be built. Plain data, so that a worker can be handed it. */
export interface BuildJob {
  readonly schedule: Schedule;
  readonly standards: Standards;
  readonly plain: boolean;
  /** The takeoff as it stands, where there is one: what its user did to it is kept. */
  readonly before: Before | null;
  /** Who it is for; left out: blank. */
  readonly job?: Job;
}

export interface Built {
  readonly sheets: readonly Sheet[];
  readonly filled: Filled;
}

/** What takes its time after the openings are worked out. */
export type BuildStep = 'Planning the boards' | 'Making the sheets';

/** The workbook for a schedule, and what to say about it once it is written; `onStep` is told what is done next. */
export function build(job: BuildJob, onStep?: (step: BuildStep) => void): Built {
  const { taken, boards, held, said, repriced, ownColumns } = takeoffWithEdits(job, () =>
    onStep?.('Planning the boards'),
  );
  onStep?.('Making the sheets');
  const sheets = workbookSheets(job.schedule, taken, {
    plain: job.plain,
    ownColumns,
    boards,
    held,
    job: job.job ?? BLANK_JOB,
  });
  return { sheets, filled: { ...filledOf(sheets), said, repriced } };
}

/** What the Takeoff's own cells add up to, as they will be written. */
function filledOf(sheets: readonly Sheet[]): Omit<Filled, 'said' | 'repriced'> {
  const rows = sheets.find(({ name }) => name === 'Takeoff')!.rows;
  const values = { name: 'Takeoff', firstRow: 1, rows: rows.map((row) => row.map((cell) => cell?.value ?? null)) };
  return {
    ...takeoffTotals(values)!,
    sheets: OUR_SHEETS.flatMap(([name, about]) => {
      const sheet = sheets.find((one) => one.name === name);
      return sheet ? [{ name, about, address: sheet.home }] : [];
    }),
  };
}
