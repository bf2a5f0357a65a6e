import type { Merge } from '../schedule/opening';
import { cellText, type CellText } from './cellText';
import { headingLevels } from './headings';
import type { FoundRow, FoundTable, IsHeading } from './found';
import { boxAround, firstFrom, type Cell } from './grid';
import { clusters } from './rules';
import { splitRows } from './splitRows';
import { middleOf as middleOfBox, type TurnedText } from './turnedText';
import { phrasesOf, wordLines, type Phrase, type Word } from './words';

/** Words of a cell that starts nearer its left edge than this, in ems, and runs over its right edge, were let run over. */
const INSET = 0.8;
/** A table has words in this share of its cells. */
const FULL = 0.3;
/** A wider gap, in ems, parts the texts of two cells. */
const PHRASE_GAP = 0.42;

type Found = Omit<FoundTable, 'page' | 'turn' | 'named'>;

/** A table of closed cells with the words in it; null where it holds too little to be one, unless it may go on from a page before. */
export function ruledTable(
  cells: readonly Cell[],
  words: readonly Word[],
  /** What the page says at a quarter turn to the table: headings over narrow columns often do. */
  across: () => readonly TurnedText[],
  isHeading: IsHeading,
  mayGoOn: boolean,
): { table: Found; used: Set<Word> } | null {
  if (!mayGoOn && cells.length < 2) return null;
  // No more cells can be filled than there are words: the lines of a drawing hold few, and are not looked at closer.
  const near = within(words, boxAround(cells));
  if (!mayGoOn && near.length < FULL * cells.length) return null;
  const xs = edges(cells.flatMap(({ left, right }) => [left, right]));
  const ys = edges(cells.flatMap(({ top, bottom }) => [top, bottom]));
  // Rules may part the columns only: one closed row then holds many of the list.
  const isOneRow = ys.length < 3;
  if (xs.length < (mayGoOn ? 2 : isOneRow ? 4 : 3)) return null;
  const box = { left: xs[0]!, right: xs.at(-1)!, top: ys[0]!, bottom: ys.at(-1)! };
  const inside = within(near, box);
  const isFull = (filled: number) => filled >= FULL * cells.length && (isOneRow || filled >= 6);
  if (!mayGoOn && !isFull(inside.length)) return null;
  const places = cells.map((cell) => ({
    cell,
    column: indexOf(xs, cell.left),
    row: indexOf(ys, cell.top),
    columns: indexOf(xs, cell.right) - indexOf(xs, cell.left),
    rows: indexOf(ys, cell.bottom) - indexOf(ys, cell.top),
    words: [] as Word[],
    turned: [] as TurnedText[],
    flags: new Set<string>(),
  }));
  const byRow = ys.slice(1).map((): typeof places => []);
  for (const place of places) for (let row = place.row; row < place.row + place.rows; row += 1) byRow[row]?.push(place);
  const cellAt = (x: number, y: number) => {
    const row = ys.findIndex((bottom, index) => index > 0 && y < bottom) - 1;
    return (byRow[row] ?? []).find(({ cell }) => x >= cell.left && x < cell.right && y >= cell.top);
  };
  const used = new Set<Word>();
  const unplaced: string[] = [];
  const isEdge = (x0: number, x1: number, y: number) => {
    const one = cellAt(Math.max(x0 - 0.5, box.left + 0.01), y);
    const other = cellAt(Math.min(x1 + 0.5, box.right - 0.01), y);
    return one !== other;
  };
  for (const line of wordLines(inside))
    for (const phrase of phrasesOf(line, PHRASE_GAP, (x0, x1) => isEdge(x0, x1, middleOf(line[0]!)))) {
      const y = middleOf(phrase.words[0]!);
      const start = cellAt(phrase.left + 0.1 * phrase.size, y);
      const end = cellAt(phrase.right - 0.1 * phrase.size, y);
      const runsOver = start !== end;
      const goesFirst = start !== undefined && phrase.left - start.cell.left < INSET * phrase.size;
      const home = !runsOver || goesFirst ? start : (cellAt((phrase.left + phrase.right) / 2, y) ?? start ?? end);
      if (home === undefined) {
        unplaced.push(phrase.text);
        continue;
      }
      if (runsOver) home.flags.add(`a text runs over the edge of column ${home.column + 1}`);
      home.words.push(...phrase.words);
    }
  inside.forEach((word) => used.add(word));
  for (const text of across()) {
    const { x, y } = middleOfBox(text.box);
    if (x < box.left || x > box.right || y < box.top || y > box.bottom) continue;
    const home = cellAt(x, y);
    const runsOver = home !== undefined && places.some((place) => place !== home && overlaps(text.box, place.cell));
    // As upright texts do, a turned one may run over the end of its own cell, not over its sides.
    const isOwn = home !== undefined && (!runsOver || (home.words.length === 0 && isBeside(text.box, home.cell)));
    if (!isOwn) {
      unplaced.push(text.phrase.text);
      continue;
    }
    if (runsOver) home.flags.add(`a turned text runs over the edge of column ${home.column + 1}`);
    home.turned.push(text);
  }
  const filled = places.filter((place) => place.words.length > 0);
  const wide = byRow.filter((row) => row.filter((place) => place.words.length > 0).length >= 2).length;
  if (!mayGoOn && !(isFull(filled.length) && (isOneRow || wide >= 2))) return null;

  const rows: FoundRow[] = [];
  const firstRowOf: number[] = [];
  const merges: Merge[] = [];
  const singles = byRow.filter((row) => row[0] && wordLines(row[0].words).length === 1).length;
  byRow.forEach((all, row) => {
    firstRowOf.push(rows.length);
    const starting = all.filter((place) => place.row === row);
    const byColumn = xs.slice(1).map((_, column) => starting.find((place) => place.column === column));
    const place = (column: number) => {
      const own = byColumn[column];
      const right = own ? xs[column + own.columns]! : xs[column + 1]!;
      return { left: xs[column]!, right, name: `column ${column + 1}` };
    };
    const several = holdsSeveralRows(
      byColumn.map((each) => each?.words ?? []),
      starting.some(({ rows: span }) => span > 1),
      isHeading,
    );
    const parts = several ?? [
      { cells: byColumn.map((each) => each?.words ?? []), flags: [], top: ys[row]!, bottom: ys[row + 1]! },
    ];
    for (const part of parts) {
      const isFirst = part === parts[0];
      const texts = part.cells.map((each, column) => {
        const text = cellText(each, place(column), isHeading, parts.length > 1);
        return withTurned(text, isFirst ? (byColumn[column]?.turned ?? []) : [], `column ${column + 1}`, isHeading);
      });
      const flags = [
        ...part.flags,
        ...starting.flatMap((each) => [...each.flags]),
        ...texts.flatMap((text) => text.flags),
      ];
      if (several && singles > 3) flags.push('it shares a ruled row with others');
      const all = part.cells.flat();
      const top = parts.length === 1 ? ys[row]! : Math.min(...all.map((word) => word.y - word.size));
      const bottom = parts.length === 1 ? ys[row + 1]! : Math.max(...all.map((word) => word.y + 0.3 * word.size));
      rows.push({ top, bottom, cells: texts.map(({ text }) => text), flags: [...new Set(flags)] });
    }
  });
  if (isOneRow && !mayGoOn && rows.length < 3) return null;
  firstRowOf.push(rows.length);
  for (const { row, column, rows: down, columns } of places)
    if (down > 1 || columns > 1)
      merges.push({
        firstRow: firstRowOf[row]!,
        lastRow: firstRowOf[row + down]! - 1,
        firstColumn: column,
        lastColumn: column + columns - 1,
      });
  return { table: { box, edges: xs, rows, merges, ruled: true, unplaced, beside: [] }, used };
}

/** A cell's text with what stands in it at a quarter turn. Where both are there, which of them comes first is in doubt. */
function withTurned(upright: CellText, turned: readonly TurnedText[], name: string, isHeading: IsHeading): CellText {
  if (turned.length === 0) return upright;
  const whole = [1, 2, 3].flatMap((quarters) => {
    const words = turned.filter(({ turn }) => turn === quarters).flatMap(({ phrase }) => phrase.words);
    // How long a line of it may get is not known: no word counts as broken.
    return words.length === 0 ? [] : [cellText(words, { left: 0, right: Infinity, name }, isHeading, false)];
  });
  const texts = upright.text === '' ? whole : [upright, ...whole];
  return {
    text: texts.map(({ text }) => text).join(' '),
    flags: [
      ...texts.flatMap(({ flags }) => flags),
      ...(texts.length > 1 ? [`texts stand both upright and turned in ${name}`] : []),
    ],
  };
}

/** A turned text may reach this far over the edge of its cell, in points. */
const SLACK = 1.5;

/** Whether a turned text reaches into a cell, by more than a little. */
function overlaps(text: Cell, cell: Cell): boolean {
  const [across, down] = [
    Math.min(text.right, cell.right) - Math.max(text.left, cell.left),
    Math.min(text.bottom, cell.bottom) - Math.max(text.top, cell.top),
  ];
  return across > SLACK && down > SLACK;
}

/** Whether a turned text keeps between the sides of a cell. */
function isBeside(text: Cell, cell: Cell): boolean {
  return text.left > cell.left - SLACK && text.right < cell.right + SLACK;
}

/** Where rules part the columns only, a closed row holds many rows of the list: these, headings first; else null. */
function holdsSeveralRows(columns: readonly (readonly Word[])[], spans: boolean, isHeading: IsHeading) {
  if (spans) return null;
  const counts = columns.filter((words) => words.length > 0).map((words) => wordLines(words).length);
  const several = counts.filter((count) => count >= 2).length;
  if (counts.length < 2 || counts[0]! < 2 || several < 0.6 * counts.length) return null;
  const { headings, body } = headingLevels(columns, isHeading);
  // Headings of two lines, nothing below them.
  if (headings !== null && body.every((words) => words.length === 0)) return null;
  if (!body.some((words) => words.some(({ text }) => /\d/.test(text)))) return null;
  const split = splitRows(body);
  return headings === null ? split : [{ cells: headings, flags: [] }, ...split];
}

function within(words: readonly Word[], box: Cell): Word[] {
  return words.filter((word) => {
    const y = middleOf(word);
    return y > box.top && y < box.bottom && word.right > box.left && word.left < box.right;
  });
}

function middleOf(word: Word | Phrase): number {
  return word.y - 0.3 * word.size;
}

function edges(places: readonly number[]): number[] {
  return clusters([...places], (place) => place, 0.5).map((group) => group[0]!);
}

function indexOf(places: readonly number[], at: number): number {
  const first = firstFrom(places, at - 0.6);
  return first < places.length && places[first]! <= at + 0.6 ? first : -1;
}
