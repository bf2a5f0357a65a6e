import { addUp } from '../rounding';
import type { ListedPrice, Revision } from '../revision/compare';
import { figureLabel, valueText } from '../revision/words';
import type { Unit } from '../unit';
import { lettersOf } from './address';
import { headingCell } from './columnHeads';
import { columnFormat } from './format';
import type { Cell, Sheet } from './sheet';

const MONEY = columnFormat('money', 'in');
const HEADINGS = [
  'What',
  'No.',
  'Mark',
  'Before',
  'Figure',
  'From',
  'To',
  'Old price',
  'New price',
  'Difference',
] as const;
const LETTERS = lettersOf(HEADINGS);
const WIDTHS = [12, 6, 12, 12, 16, 22, 22, 12, 12, 12] as const;
const HEAD_ROWS = 4;

/** An opening that isn't priced, whose extras are. */
const OF_EXTRAS = `${MONEY}" extras"`;

type Row = (Cell | null)[];

export interface RevisionNames {
  readonly old: string;
  readonly now: string;
}

/** A revised list against the list before: a row for each opening that is another, the money of each, and the totals. */
export function revisionSheet(revision: Revision, { old, now }: RevisionNames, unit: Unit): Sheet {
  const { added, dropped, renamed, changed, unchanged, shared, total } = revision;
  const rows: Row[] = [
    [{ value: 'Revision', style: 'title' }],
    [
      text(
        `${now} against ${old}. Added: ${added.length}, dropped: ${dropped.length}, changed: ${changed.length}, renamed: ${renamed.length}, unchanged: ${unchanged.length}.`,
      ),
    ],
    [text('As it was when the two lists were compared; it follows no later change.', 'note')],
    HEADINGS.map((heading, at) => headingCell(heading, at >= 7 ? 'figures' : 'text')),
  ];
  for (const opening of added) rows.push(line('added', opening, null, opening, rows.length + 1));
  for (const opening of dropped) rows.push(line('dropped', opening, opening, null, rows.length + 1));
  for (const { old: before, new: after, figures } of changed) {
    figures.forEach(({ figure, from, to }, at) => {
      const row = at === 0 ? line('changed', after, before, after, rows.length + 1) : line('', after, null, null, null);
      row.splice(
        4,
        3,
        text(figureLabel(figure)),
        text(valueText(figure, from, unit)),
        text(valueText(figure, to, unit)),
      );
      rows.push(row);
    });
  }
  for (const { old: before, new: after, asked } of renamed) {
    const row = line('renamed', after, null, null, null);
    row[3] = text(before.mark);
    if (asked) row[4] = text('the same figures: the same opening?', 'attention');
    rows.push(row);
  }
  const last = Math.max(HEAD_ROWS + 1, rows.length);
  if (rows.length === HEAD_ROWS) rows.push([text('Nothing changed.')]);
  rows.push([]);
  const sum = (label: string, value: number, formula: string | null, style: Cell['style'] = 'figure'): Row => [
    ...Array.from({ length: 9 }, (_, at): Cell => ({
      value: at === 0 ? label : null,
      style: style === 'total' ? 'total' : 'text',
    })),
    { value, style, format: MONEY, ...(formula === null ? {} : { formula }) },
  ];
  const lines = `${LETTERS.Difference}${HEAD_ROWS + 1}:${LETTERS.Difference}${last}`;
  const own = addUp([total.new, -total.old, -shared]);
  const at = rows.length + 1;
  rows.push(
    sum('Old total', total.old, null),
    sum('Openings added, dropped and changed', own, `ROUND(SUM(${lines}),2)`),
    sum('Openings as they were: their part of knives, guides, set-ups and boards', shared, null),
    sum('New total', total.new, `ROUND(SUM(${LETTERS.Difference}${at}:${LETTERS.Difference}${at + 2}),2)`, 'total'),
  );
  return {
    name: 'Revision',
    rows,
    widths: [...WIDTHS],
    frozenRows: HEAD_ROWS,
    frozenColumns: 3,
    landscape: true,
    repeatRows: [HEAD_ROWS, HEAD_ROWS],
    home: `A${HEAD_ROWS + 1}`,
    locked: true,
    body: [HEAD_ROWS + 1, last],
  };
}

function text(value: string, style: Cell['style'] = 'text'): Cell {
  return { value, style, format: '@' };
}

/** A row's money stands once, in the first row of an opening. */
function line(
  what: string,
  { no, mark }: ListedPrice,
  old: ListedPrice | null,
  now: ListedPrice | null,
  row: number | null,
): Row {
  const price = (opening: ListedPrice | null): Cell | null =>
    opening === null
      ? null
      : opening.price === null
        ? text('not priced', 'attention')
        : opening.isOfExtras
          ? { value: opening.price, style: 'attention', format: OF_EXTRAS }
          : { value: opening.price, style: 'figure', format: MONEY };
  const moved = addUp([now?.price ?? 0, -(old?.price ?? 0)]);
  return [
    text(what),
    no === null ? null : { value: no, style: 'text', format: '0' },
    text(mark),
    old !== null && now !== null && old.mark !== now.mark ? text(old.mark) : null,
    ...[null, null, null],
    price(old),
    price(now),
    row === null
      ? null
      : {
          value: moved,
          formula: `N(${LETTERS['New price']}${row})-N(${LETTERS['Old price']}${row})`,
          style: 'figure',
          format: MONEY,
        },
  ];
}
