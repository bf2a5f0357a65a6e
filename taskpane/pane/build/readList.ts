import type { Result } from '../../../src/result';
import type { MeaningKey } from '../../../src/schedule/meanings';
import type { Answers, Table } from '../../../src/schedule/opening';
import { readSchedule } from '../../../src/schedule/readSchedule';
import type { Standards } from '../../../src/standards';
import { answeredTakeoff } from '../answeredTakeoff';
import type { ListRead } from '../state';

/** A list to be read. Plain data, so that a worker can be handed it. */
export interface ListJob {
  readonly table: Table;
  readonly standards: Standards;
  /** Source column (from 0) → what the user says that it means. */
  readonly choices: Readonly<Record<number, MeaningKey>>;
  readonly answers: Answers;
  /** The table is a Takeoff of ours. */
  readonly ours: boolean;
}

/** A list with more rows is read beside the page: a thousand held it for a quarter of a second. */
export const LONG_LIST = 200;

export function readList({ table, standards, choices, answers, ours }: ListJob): Result<ListRead> {
  return ours ? answeredTakeoff(table, standards, answers) : readSchedule(table, standards, choices, { answers });
}
