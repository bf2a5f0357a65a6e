import type { Merge, Table } from '../schedule/opening';
import type { FoundRow, FoundTable, IsHeading, ListKind } from './found';
import { lastPage } from './moreColumns';
import type { TableParts } from './overPages';

/** A table of a PDF as it is offered: where it stands, and the plain table that the schedule's reader takes. */
export interface PdfTable {
  readonly parts: TableParts;
  readonly table: Table;
  /** For each row of `table`: which part it is from, and which row of it. */
  readonly places: readonly { readonly part: number; readonly row: number }[];
}

/** The parts of a table as one plain table, with what is in doubt by row. */
export function pdfTable(file: string, parts: TableParts, { name, isHeading }: ListKind): PdfTable {
  const rows: FoundRow[] = [];
  const places: { part: number; row: number }[] = [];
  const merges: Merge[] = [];
  parts.forEach((part, index) => {
    const from = rows.length;
    const whole = widened(part);
    for (const merge of whole.merges)
      merges.push({ ...merge, firstRow: merge.firstRow + from + 1, lastRow: merge.lastRow + from + 1 });
    whole.rows.forEach((row, at) => {
      rows.push(row);
      places.push({ part: index, row: at });
    });
  });
  const doubts = new Map<number, readonly string[]>();
  const heading = headingRow(rows, isHeading);
  // A heading that is in doubt puts every figure below it in doubt.
  const ofHeadings = [...new Set(rows.slice(Math.max(0, heading - 2), heading + 1).flatMap(({ flags }) => flags))].map(
    (flag) => `in the headings ${flag}`,
  );
  rows.forEach(({ flags }, index) => {
    const continues = rows[index + 1]?.flags.some((flag) => flag.startsWith('it has no mark and may go on')) ?? false;
    const isBelow = (at: number) => name === 'schedule' && at > heading + 1 && mayGoOn(rows[at - 1]!, rows[at]!);
    const isFirst = index > heading && rows[index + 1] !== undefined && isBelow(index + 1);
    const all = [
      ...(index > heading ? ofHeadings : []),
      ...flags,
      ...(isBelow(index) ? ['it has no mark and may go on with the row above it'] : []),
      ...(isFirst ? ['the row below it has no mark and may go on with it'] : []),
      ...(continues ? ['the row below it, on the next page, may go on with it'] : []),
    ];
    if (all.length > 0) doubts.set(index + 1, all);
  });
  const pages = pagesOf(parts);
  return {
    parts,
    places,
    table: {
      name: `${file}, ${pages}`,
      firstRow: 1,
      rows: rows.map(({ cells }) => cells.map((cell) => (cell === '' ? null : cell))),
      merges,
      doubts,
      remarks: parts.flatMap((part) => [
        ...unplacedRemark(part),
        ...part.beside.flatMap((more) => [
          `Page ${more.page} was read as more columns of page ${part.page}.`,
          ...unplacedRemark(more),
        ]),
      ]),
    },
  };
}

/** A part with the columns that stand on pages of their own, behind its own. */
function widened(part: FoundTable): Pick<FoundTable, 'rows' | 'merges'> {
  let { rows, merges } = part;
  for (const { page, rows: more, merges: spans } of part.beside) {
    const width = rows[0]?.cells.length ?? 0;
    if (more.length !== rows.length) {
      const flag = `page ${page} holds more of its columns, which have other rows than this frame`;
      rows = rows.map((row) => ({ ...row, flags: [...row.flags, flag] }));
      continue;
    }
    rows = rows.map((row, index) => ({
      ...row,
      cells: [...row.cells, ...more[index]!.cells],
      flags: [...row.flags, ...more[index]!.flags.map((flag) => `on page ${page} ${flag}`)],
    }));
    const shifted = spans.map((span) => ({
      ...span,
      firstColumn: span.firstColumn + width,
      lastColumn: span.lastColumn + width,
    }));
    merges = [...merges, ...shifted];
  }
  return { rows, merges };
}

const TOTAL = /^(?:sub|grand )?totals?\b/i;

/** Whether a row without a mark may be a second line of the one above: it holds no more than half as much, and is no total. */
function mayGoOn(above: FoundRow, { cells, flags }: FoundRow): boolean {
  const filled = (row: readonly string[]) => row.filter((cell) => cell !== '').length;
  if (flags.length > 0 || cells[0] !== '' || above.cells[0] === '' || filled(cells) === 0) return false;
  return filled(cells) <= filled(above.cells) / 2 && !cells.some((cell) => TOTAL.test(cell));
}

/** The row that names the most columns. */
function headingRow(rows: readonly FoundRow[], isHeading: IsHeading): number {
  const named = rows.slice(0, 40).map(({ cells }) => cells.filter((cell) => cell !== '' && isHeading(cell)).length);
  return named.indexOf(Math.max(...named));
}

/** `page 2`, `pages 2 to 4`. */
export function pagesOf(parts: TableParts): string {
  const [first, last] = [parts[0]!.page, Math.max(...parts.map(lastPage))];
  return first === last ? `page ${first}` : `pages ${first} to ${last}`;
}

/** Every letter in the frame that went into no cell is counted and shown. */
function unplacedRemark({ page, unplaced }: FoundTable): string[] {
  if (unplaced.length === 0) return [];
  const count = unplaced.reduce((sum, text) => sum + text.replace(/\s/g, '').length, 0);
  const letters = count === 1 ? '1 letter' : `${count} letters`;
  return [
    `On page ${page}, ${letters} within the table's frame went into no cell: ${unplaced.map((text) => `"${text}"`).join(', ')}.`,
  ];
}
