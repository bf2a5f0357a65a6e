import { columnLetters, rangeAddress, type CellRange } from '../../src/workbook/address';
import type { Cell, Sheet } from '../../src/workbook/sheet';

/** Excel takes a list of ranges up to this long; longer lists are cut into several. */
const LONGEST_LIST = 2_000;

/**
 * The rectangles of a sheet whose cells answer alike to `trait`, by answer: a column of a thousand equal cells is one
 * rectangle. Cells for which it gives null are left out.
 */
export function areasBy(sheet: Sheet, trait: (cell: Cell) => string | null): Map<string, CellRange[]> {
  const areas = new Map<string, CellRange[]>();
  const width = Math.max(0, ...sheet.rows.map((row) => row.length));
  let left = new Map<string, CellRange>(); // what ends at the column before, to be widened
  for (let column = 0; column < width; column++) {
    const here = new Map<string, CellRange>();
    for (const { answer, first, last } of runsDown(sheet, column, trait)) {
      const key = `${first} ${last} ${answer}`;
      const before = left.get(key);
      const range = { first: before?.first ?? { row: first, column }, last: { row: last, column } };
      here.set(key, range);
      const ranges = areas.get(answer) ?? [];
      areas.set(answer, ranges);
      if (before) ranges[ranges.indexOf(before)] = range;
      else ranges.push(range);
    }
    left = here;
  }
  return areas;
}

function runsDown(sheet: Sheet, column: number, trait: (cell: Cell) => string | null) {
  const runs: { answer: string; first: number; last: number }[] = [];
  for (const [row, cells] of sheet.rows.entries()) {
    const cell = cells[column];
    const answer = cell ? trait(cell) : null;
    if (answer === null) continue;
    const open = runs.at(-1);
    if (open && open.answer === answer && open.last === row - 1) open.last = row;
    else runs.push({ answer, first: row, last: row });
  }
  return runs;
}

/** "A1:B9,D4" and so on: the rectangles as few lists that Excel takes at once. */
export function addressLists(ranges: readonly CellRange[]): string[] {
  const lists: string[] = [];
  let list = '';
  for (const range of ranges) {
    const address = rangeAddress(range);
    if (list !== '' && list.length + address.length + 1 > LONGEST_LIST) {
      lists.push(list);
      list = '';
    }
    list += (list === '' ? '' : ',') + address;
  }
  return list === '' ? lists : [...lists, list];
}

/** Whole columns, from 0: 1 to 3 → B:D. */
export function columnsAddress(first: number, last: number): string {
  return `${columnLetters(first)}:${columnLetters(last)}`;
}
