import { jobMinimum } from '../../job/minimum';
import { jobCellName, type Job } from '../../job/fields';
import { allExtras } from '../../takeoff/extras';
import type { Takeoff } from '../../takeoff/takeoff';
import { columnFormat } from '../format';
import { quote } from '../quote';
import type { Cell } from '../sheet';
import { TAKEOFF_COLUMNS, type ColumnKey } from './columns';
import { extrasHeight } from './extras';
import { cellsOfRow } from './sheet';

const MONEY = columnFormat('money', 'in');
const MORE = 'The Proposal takes set-ups apart, finish, discount or alternates in before it asks what is short.';

/**
 * What is short of the job's minimum charge, below the total and the extras, and the sum with it; none where the job has no
 * minimum. `total` is the row of the total, from 1.
 */
export function* minimumRows(takeoff: Takeoff, job: Job, total: number): Generator<(Cell | null)[]> {
  const minimum = jobMinimum(takeoff, job);
  if (minimum === null) return;
  const { charge, short, otherLines, moreOnProposal } = minimum;
  const height = extrasHeight(allExtras(takeoff).length);
  // The sum of openings and extras stands last among the extras.
  const above = cellsOfRow(total + height).price;
  const line = total + height + 1;
  const others = otherLines === 0 ? '' : `+${otherLines}`;
  const named = jobCellName('minimum');
  const money = (value: number, formula: string): Cell => ({ value, formula, style: 'total', format: MONEY });
  const words = otherLines === 0 ? '' : `, other lines of ${otherLines.toFixed(2)} counted`;
  yield rowWith({
    no: {
      value: `Short of the job's minimum charge, ${charge.toFixed(2)}${words}`,
      formula: `"Short of the job's minimum charge, "&TEXT(${named},"0.00")&${quote(words)}`,
      style: 'total',
    },
    price: money(short, `MAX(0,ROUND(${named}-(${above}${others}),2))`),
    ...(moreOnProposal ? { lookAt: { value: MORE, style: 'note' } } : {}),
  });
  yield rowWith({
    no: { value: 'Job in all', style: 'total' },
    price: money(minimum.total, `ROUND(${above}${others}+${cellsOfRow(line).price},2)`),
  });
}

function rowWith(cells: Partial<Record<ColumnKey, Cell>>): (Cell | null)[] {
  return TAKEOFF_COLUMNS.map(({ key }) => cells[key] ?? null);
}
