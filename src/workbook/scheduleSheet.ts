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
      ...schedule.meaning.map((meaning): Cell => ({ value: meaning ?? 'not used', style: 'unit' })),
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
      rows.push([{ value: row, style: 'text', format: '0' }, text(why), text(was)]);
    }
  }
  return {
    name: 'Schedule',
    rows,
    widths: [13, ...schedule.headings.map(() => 14), 44, 44],
    frozenRows: 5,
    frozenColumns: 1,
    repeatRows: [4, 5],
    landscape: true,
    home: 'A6',
    body: [6, 5 + schedule.openings.length],
  };
}
