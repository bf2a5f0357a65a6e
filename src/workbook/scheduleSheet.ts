import { extrasText, readExtrasText, type Extra } from '../extras';
import { MEANINGS } from '../schedule/meanings';
import type { Opening, OpeningField, Schedule, Table } from '../schedule/opening';
import { listedCells } from '../takeoff/row';
import type { Takeoff } from '../takeoff/takeoff';
import { columnLetters } from './address';
import { headingCell, unitCell } from './columnHeads';
import { columnFormat, columnUnit } from './format';
import { pagesWide } from './pagesWide';
import type { Cell, Sheet } from './sheet';
import { TAKEOFF_COLUMNS } from './takeoff/columns';
import { takeoffBlock, takeoffRange } from './takeoff/places';

const HEAD_ROWS = 5;
const NUMBERS_GIVEN = 'Numbers given so far';
/** Before the heading of an input, as it was read from the list. */
const READ = 'Read: ';
/** The list's extras, which stand below the Takeoff's total: a row deleted there is told from one that never was. */
const READ_EXTRAS = `${READ}Extras`;
const INPUTS = TAKEOFF_COLUMNS.filter(({ role }) => role === 'input');
const SHARES = ['No.', 'Share, money', 'Share, wood'] as const;

/**
 * The list as it was read: every source row with its opening's number, what was understood of it, and what was wrong. What a
 * row gave stands here, so that a later filling can tell what was changed by hand. At the right end, live, what each opening
 * bears of knives, guides and set-ups; the plain workbook has that on Working.
 */
export function scheduleSheet(schedule: Schedule, takeoff: Takeoff, plain: boolean): Sheet {
  const text = (value: string): Cell => ({ value, format: '@', style: 'text' });
  const { unit } = takeoff.standards;
  const headings = ['No.', 'Row', ...schedule.headings];
  const read = [...INPUTS.map(({ heading }) => READ + heading), READ_EXTRAS];
  const all = [...headings, 'How it was read', 'What is wrong', ...read];
  const first = HEAD_ROWS + 1;
  const last = HEAD_ROWS + Math.max(1, takeoff.openings.length);
  const sharesAt = all.length + 1;
  const shares = plain ? [] : sharesRows(takeoff);
  const rows: (Cell | null)[][] = [
    [{ value: 'Schedule', style: 'title' }],
    [
      {
        value: `As read from ${schedule.name}. Openings: ${schedule.openings.length}, other rows: ${schedule.passedOver.length}.`,
        ...{ style: 'text', format: '@' },
      },
    ],
    [{ value: schedule.remarks.join(' '), style: 'attention', format: '@' }],
    [
      ...all.map((heading) => headingCell(heading)),
      null,
      ...(plain ? [] : SHARES.map((heading) => headingCell(heading, 'figures'))),
    ],
    [
      unitCell(''),
      unitCell('read as'),
      ...schedule.meaning.map((meaning) => unitCell(meaningLabel(meaning))),
      ...[unitCell(''), unitCell('')],
      ...INPUTS.map(({ measure }) => unitCell(columnUnit(measure, unit))),
      unitCell('each'),
      null,
      ...(plain ? [] : [unitCell(''), unitCell('$', 'figures'), unitCell('$, before waste', 'figures')]),
    ],
    ...takeoff.openings.map(({ no, opening, cells, sideUnsaid }, at): (Cell | null)[] => [
      { value: no, style: 'text', format: '0' },
      { value: opening.row, style: 'text', format: '0' },
      ...schedule.headings.map((_heading, column) => text(opening.source[column] ?? '')),
      { value: opening.notes.join(' '), style: 'note', wrap: true, format: '@' },
      {
        value: [...opening.problems.map(({ message }) => message), ...sideUnsaid].join(' '),
        style: 'attention',
        wrap: true,
        format: '@',
      },
      ...INPUTS.map(({ key, measure }): Cell => {
        const value = listedCells(opening, cells)[key as OpeningField];
        return { value, style: 'note', format: columnFormat(measure, unit, value) };
      }),
      { value: extrasText(listedExtras(opening)) ?? '', style: 'note', format: '@' },
      null,
      ...(shares[at] ?? []),
    ]),
  ];
  if (takeoff.openings.length === 0) rows.push([]);
  rows.push([], [text(NUMBERS_GIVEN), { value: takeoff.numbersGiven, style: 'text', format: '0' }]);
  if (schedule.passedOver.length > 0) {
    rows.push([], [{ value: 'Rows that are not openings', style: 'group' }]);
    for (const { row, why, text: was } of schedule.passedOver) {
      rows.push([null, { value: row, style: 'text', format: '0' }, text(was === '' ? why : `${why}: ${was}`)]);
    }
  }
  const widths = [
    ...[6, 8],
    ...schedule.headings.map((heading, at) => widthOf(heading, at, schedule)),
    ...[40, 40],
    ...INPUTS.map(({ width }) => width),
    ...[24, 4, 6, 12, 12],
  ];
  const letters = (at: number) => columnLetters(sharesAt + at);
  return {
    name: 'Schedule',
    rows,
    widths,
    frozenRows: HEAD_ROWS,
    frozenColumns: 2,
    names: plain ? [] : [{ name: 'Shares', ref: `Schedule!$${letters(0)}$${first}:$${letters(2)}$${last}` }],
    repeatRows: [4, HEAD_ROWS],
    landscape: true,
    pagesWide: pagesWide(widths, 2),
    printArea: `A1:${columnLetters(headings.length + 1)}${rows.length}`,
    home: `A${first}`,
    body: [first, last],
  };
}

/** What the list gives, whatever was changed by hand. */
function listedExtras({ extras }: Opening): Extra[] | undefined {
  return extras?.map(({ kind, each, listed = each }) => ({ kind, each: listed }));
}

/** The array of `ARCH.SHARES`: its first cell holds the formula, the others the values it gives. */
function sharesRows(takeoff: Takeoff): Cell[][] {
  const rows = [...takeoff.openings]
    .sort((one, other) => one.no - other.no)
    .map(({ no, share }): Cell[] => [
      { value: no, style: 'figure', format: '0' },
      { value: share?.money ?? 0, style: 'figure', format: '#,##0.00' },
      { value: share?.wood ?? 0, style: 'figure', format: '#,##0.00' },
    ]);
  const [top] = rows;
  if (top === undefined) return rows;
  top[0] = {
    ...top[0]!,
    // Ranges, not names: the workbench's grid goes on calculating with a name's old place after rows are deleted.
    formula: `ARCH.SHARES(${takeoffRange('no', rows.length)},${takeoffBlock('main', rows.length)},${takeoffBlock('more', rows.length)},Shop,Wood,OnHand)`,
    spill: { rows: rows.length, columns: 3 },
  };
  return rows;
}

/** One opening as an earlier filling read it. */
export interface ListedRow {
  readonly no: number;
  readonly row: number;
  readonly inputs: ReadonlyMap<string, string | number | null>;
  readonly extras: readonly Extra[];
}

/** What a Schedule sheet of ours says of the list that was filled; null where it is none. Lengths as they stand there. */
export function readListed({
  rows,
}: Table): { readonly listed: readonly ListedRow[]; readonly numbersGiven: number; readonly unit: string } | null {
  const heads = rows.findIndex((row) => row[0] === 'No.' && row[1] === 'Row');
  if (heads < 0) return null;
  const headings = rows[heads]!.map((cell) => String(cell ?? ''));
  const places = INPUTS.map(({ key, heading }) => [key, headings.indexOf(READ + heading)] as const);
  const extrasAt = headings.indexOf(READ_EXTRAS);
  const listed: ListedRow[] = [];
  let given = 0;
  for (const cells of rows.slice(heads + 2)) {
    if (cells[0] === NUMBERS_GIVEN && typeof cells[1] === 'number') given = cells[1];
    const [no, row] = cells;
    if (typeof no !== 'number' || typeof row !== 'number') continue;
    const inputs = new Map(
      places.map(([key, at]) => {
        const cell = cells[at] ?? null;
        return [key, cell === '' ? null : typeof cell === 'number' ? cell : cell === null ? null : String(cell)];
      }),
    );
    listed.push({ no, row, inputs, extras: readExtrasText(String(cells[extrasAt] ?? '')) });
  }
  const span = places.find(([key]) => key === 'span')?.[1] ?? -1;
  return { listed, numbersGiven: given, unit: String(rows[heads + 1]?.[span] ?? '') };
}

function meaningLabel(key: string | null): string {
  return MEANINGS.find((meaning) => meaning.key === key)?.label ?? 'not used';
}

/** Wide enough for what the column holds, within reason. */
function widthOf(heading: string, at: number, { openings }: Schedule): number {
  const longest = openings.reduce((most, { source }) => Math.max(most, source[at]?.length ?? 0), heading.length);
  return Math.min(40, Math.max(10, longest + 3));
}
