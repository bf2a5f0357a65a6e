import { cellText } from './cellText';
import type { FoundTable, IsHeading } from './found';
import { boxAround, type Cell } from './grid';
import { lineOf, type Line } from './lines';
import { columnsOf } from './openColumns';
import type { OpenTable } from './openRows';
import { wordLines, type Word } from './words';

/** Rows of two pages stand at one height within this, in points. */
const SAME_ROW = 1;
/** Edges of two pages are the same within this, in points. */
const SAME_EDGE = 4;

/** Whether closed cells may be more of a table of an earlier page: as high, or as wide, and at the same place. */
export function mayBelong(cells: readonly Cell[], { box }: FoundTable): boolean {
  const { left, right, top, bottom } = boxAround(cells);
  const near = (one: number, other: number) => Math.abs(one - other) <= SAME_EDGE;
  return (near(top, box.top) && near(bottom, box.bottom)) || (near(left, box.left) && near(right, box.right));
}

/** Whether a table's rows stand at the heights of another's: columns that its page had no room for, printed on a page of their own. */
export function hasRowsOf(table: Pick<FoundTable, 'rows'>, other: Pick<FoundTable, 'rows'>): boolean {
  return (
    table.rows.length === other.rows.length &&
    table.rows.every(({ top, bottom }, index) => {
      const own = other.rows[index]!;
      return Math.abs(top - own.top) <= SAME_ROW && Math.abs(bottom - own.bottom) <= SAME_ROW;
    })
  );
}

/** Whether a table's columns stand where another's do. */
export function hasEdgesOf({ edges }: Pick<FoundTable, 'edges'>, other: Pick<FoundTable, 'edges'>): boolean {
  return (
    edges.length === other.edges.length && edges.every((edge, at) => Math.abs(edge - other.edges[at]!) <= SAME_EDGE)
  );
}

/** The last page that a table stands on. */
export function lastPage({ page, beside }: Pick<FoundTable, 'page' | 'beside'>): number {
  return Math.max(page, ...beside.map((more) => more.page));
}

/** Fewer lines in line with a table's rows are chance. */
const FEWEST_LINES = 3;
const MOST = 0.7;

/** Whether a page's text stands in line with a table's rows, from the first line on. */
function standsBeside(lines: readonly Line[], { rows }: Pick<FoundTable, 'rows'>): boolean {
  const inLine = lines.map(({ y, size }) =>
    rows.some(
      ({ top, bottom }) => Math.abs(top - (y - size)) <= SAME_ROW && Math.abs(bottom - (y + 0.3 * size)) <= SAME_ROW,
    ),
  );
  const count = inLine.filter(Boolean).length;
  return inLine[0] === true && count >= FEWEST_LINES && count >= MOST * Math.max(lines.length, rows.length / 2);
}

/**
 * A page's text without rules or headings enough of its own, as more columns of the table of an earlier page in whose lines
 * it stands; null where it doesn't. In doubt from the headings on.
 */
export function openBeside(words: readonly Word[], table: FoundTable, isHeading: IsHeading): OpenTable | null {
  const lines = wordLines(words).map((line) => lineOf(line));
  if (lines.length === 0 || !standsBeside(lines, table)) return null;
  const columns = columnsOf([], lines, lines[0]!.size, isHeading);
  const edges = [...columns.map(({ left }) => left), columns.at(-1)!.right];
  const cells = table.rows.map(() => columns.map((): Word[] => []));
  const unplaced: string[] = [];
  for (const word of words) {
    const row = table.rows.filter(({ top }) => top <= word.y - 0.3 * word.size).length - 1;
    const column = columns.findIndex(({ left, right }) => word.left < right && word.right > left);
    const home = cells[row]?.[column];
    if (home) home.push(word);
    else unplaced.push(word.text);
  }
  const rows = table.rows.map(({ top, bottom }, row) => {
    const texts = columns.map((column, at) =>
      cellText(cells[row]![at]!, { ...column, name: `column ${at + 1}` }, isHeading, true),
    );
    const unsure = row === 0 ? ['nothing but their height says that the columns belong to it'] : [];
    const flags = [...unsure, ...texts.flatMap((text) => text.flags)];
    return { top, bottom, cells: texts.map(({ text }) => text), flags };
  });
  const box = { left: edges[0]!, right: edges.at(-1)!, top: rows[0]!.top, bottom: rows.at(-1)!.bottom };
  return { box, edges, rows, merges: [], ruled: false, named: false, unplaced, beside: [] };
}
