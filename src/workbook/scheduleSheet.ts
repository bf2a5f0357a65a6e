import { MEANINGS } from '../schedule/meanings';
import type { Schedule } from '../schedule/opening';
import type { Cell, Sheet } from './sheet';

/** The list as it was read: every source row, how it was understood, and what was wrong with it. */
export function scheduleSheet(schedule: Schedule): Sheet {
  const text = (value: string): Cell => ({ value, format: '@', style: 'text' });
  const heading = (value: string): Cell => ({ value, style: 'heading', wrap: true });
  const rows: (Cell | null)[][] = [
    [{ value: 'Schedule', style: 'title' }],
    [
      {
        value: `As read from ${schedule.name}: ${schedule.openings.length} openings, ${schedule.passedOver.length} other rows.`,
        style: 'text',
        format: '@',
      },
    ],
    [{ value: schedule.remarks.join(' '), style: 'attention', format: '@' }],
    [heading('Row'), ...schedule.headings.map(heading), heading('How it was read'), heading('What is wrong')],
    [
      { value: 'understood as', style: 'unit' },
      ...schedule.meaning.map((meaning): Cell => ({ value: meaningLabel(meaning), style: 'unit' })),
    ],
    ...schedule.openings.map((opening): Cell[] => [
      { value: opening.row, style: 'text', format: '0' },
      ...schedule.headings.map((_heading, at) => text(opening.source[at] ?? '')),
      { value: opening.notes.join(' '), style: 'note', wrap: true, format: '@' },
      {
        value: opening.problems.map((problem) => problem.message).join(' '),
        style: 'attention',
        wrap: true,
        format: '@',
      },
    ]),
  ];
  if (schedule.passedOver.length > 0) {
    rows.push([], [{ value: 'Rows that are not openings', style: 'group' }]);
    for (const { row, why, text: was } of schedule.passedOver) {
      rows.push([{ value: row, style: 'text', format: '0' }, text(was === '' ? why : `${why}: ${was}`)]);
    }
  }
  return {
    name: 'Schedule',
    rows,
    widths: [13, ...schedule.headings.map((heading, at) => widthOf(heading, at, schedule)), 44, 44],
    frozenRows: 5,
    frozenColumns: 1,
    repeatRows: [4, 5],
    landscape: true,
    home: 'A6',
    body: [6, 5 + schedule.openings.length],
  };
}

function meaningLabel(key: string | null): string {
  return MEANINGS.find((meaning) => meaning.key === key)?.label ?? 'not used';
}

/** Wide enough for what the column holds, within reason. */
function widthOf(heading: string, at: number, { openings }: Schedule): number {
  const longest = openings.reduce((most, { source }) => Math.max(most, source[at]?.length ?? 0), heading.length);
  return Math.min(40, Math.max(10, longest + 3));
}
