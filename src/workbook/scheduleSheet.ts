import { MEANINGS } from '../schedule/meanings';
import type { Schedule } from '../schedule/opening';
import { headingCell, unitCell } from './columnHeads';
import { pagesWide } from './pagesWide';
import type { Cell, Sheet } from './sheet';

/** The list as it was read: every source row, how it was understood, and what was wrong with it. */
export function scheduleSheet(schedule: Schedule): Sheet {
  const text = (value: string): Cell => ({ value, format: '@', style: 'text' });
  const rows: (Cell | null)[][] = [
    [{ value: 'Schedule', style: 'title' }],
    [
      {
        value: `As read from ${schedule.name}. Openings: ${schedule.openings.length}, other rows: ${schedule.passedOver.length}.`,
        style: 'text',
        format: '@',
      },
    ],
    [{ value: schedule.remarks.join(' '), style: 'attention', format: '@' }],
    ['Row', ...schedule.headings, 'How it was read', 'What is wrong'].map((heading) => headingCell(heading)),
    [unitCell('read as'), ...schedule.meaning.map((meaning) => unitCell(meaningLabel(meaning)))],
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
  const widths = [8, ...schedule.headings.map((heading, at) => widthOf(heading, at, schedule)), 40, 40];
  return {
    name: 'Schedule',
    rows,
    widths,
    frozenRows: 5,
    frozenColumns: 1,
    repeatRows: [4, 5],
    landscape: true,
    pagesWide: pagesWide(widths, 1),
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
