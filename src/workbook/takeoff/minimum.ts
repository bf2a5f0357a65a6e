import { jobMinimum } from '../../job/minimum';
import { jobCellName, type Job } from '../../job/fields';
import type { Takeoff } from '../../takeoff/takeoff';
import { columnFormat } from '../format';
import { quote } from '../../formulaText';
import type { Cell } from '../sheet';
import { cellsOfRow, rowWith } from './places';

const MONEY = columnFormat('money', 'in');
const MORE = 'The Proposal takes set-ups apart, finish, discount or alternates in before it asks what is short.';

/**
 * What is short of the job's minimum charge, below the total and the extras, and the sum with it; none where the job has no
 * minimum. `last` is the row above, from 1: of the total, or of the sum of openings and extras.
 */
export function* minimumRows(takeoff: Takeoff, job: Job, last: number): Generator<(Cell | null)[]> {
  const minimum = jobMinimum(takeoff, job);
  if (minimum === null) return;
  const { charge, short, otherLines, moreOnProposal } = minimum;
  const above = cellsOfRow(last).price;
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
    price: money(minimum.total, `ROUND(${above}${others}+${cellsOfRow(last + 1).price},2)`),
  });
}
