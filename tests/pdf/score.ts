import { SCHEDULE } from '../../src/pdf/scheduleKind';
import { readPdf } from '../../src/pdf/readPdf';
import type { Opening, Table } from '../../src/schedule/opening';
import { readSchedule } from '../../src/schedule/readSchedule';
import { defaultStandards } from '../../src/standards';
import { pdfLibrary } from './library';

/** How a reading compares with what the author had. */
export interface Score {
  readonly right: number;
  readonly asked: number;
  /** Openings read otherwise than they are, with nothing asked. */
  readonly wrong: readonly string[];
  readonly lost: readonly string[];
  readonly cells: number;
  readonly cellsRight: number;
  readonly refused: string | null;
}

/** Reads a PDF as the command does, and compares opening by opening with the author's own table. */
export async function score(
  bytes: Uint8Array,
  headings: readonly string[],
  rows: readonly (readonly string[])[],
): Promise<Score> {
  const source: Table = { name: 'source', firstRow: 1, rows: [[...headings], ...rows] };
  const standards = defaultStandards();
  const expected = readSchedule(source, standards);
  if (!expected.ok) throw new Error(expected.message);
  const cells = rows.length * headings.length;
  const none = (refused: string): Score => ({
    right: 0,
    asked: 0,
    wrong: [],
    lost: expected.value.openings.map(({ mark }) => mark),
    cells,
    cellsRight: 0,
    refused,
  });
  const read = await readPdf(await pdfLibrary(), 'plan.pdf', new Uint8Array(bytes), SCHEDULE);
  if (!read.ok) return none(read.message);
  const [first] = [...read.value.tables].sort((one, other) => other.table.rows.length - one.table.rows.length);
  const found = readSchedule(first!.table, standards);
  if (!found.ok) return none(found.message);
  const [right, asked]: [string[], string[]] = [[], []];
  const [wrong, lost]: [string[], string[]] = [[], []];
  for (const opening of expected.value.openings) {
    const same = found.value.openings.filter(({ mark }) => mark === opening.mark);
    const [one] = same;
    if (one === undefined) {
      // A row in doubt whose mark is not to be read is still a question, where it stands at this place in the list.
      lost.push(opening.mark);
    } else if (one.problems.some(({ message }) => !opening.problems.some((problem) => problem.message === message)))
      asked.push(opening.mark);
    else if (figures(one) === figures(opening)) right.push(opening.mark);
    else wrong.push(`${opening.mark}: ${figures(one)} for ${figures(opening)}`);
  }
  return {
    right: right.length,
    asked: asked.length,
    wrong,
    lost,
    cells,
    cellsRight: cellsRight(first!.table, headings, rows),
    refused: null,
  };
}

function figures(opening: Opening): string {
  const {
    row: _row,
    source: _source,
    notes: _notes,
    problems: _problems,
    rough: _rough,
    listed: _listed,
    ...inputs
  } = opening as Opening & Record<string, unknown>;
  return JSON.stringify(inputs);
}

const plain = (text: unknown) =>
  String(text ?? '')
    .replace(/\s+/g, ' ')
    .replace(/ ([½¼¾])/g, '$1')
    .trim();

function cellsRight(table: Table, headings: readonly string[], rows: readonly (readonly string[])[]): number {
  const columns = headings.map((heading) => {
    const flat = plain(heading).toLowerCase();
    const heads = table.rows.slice(0, 6).map((row) => row.map((cell) => plain(cell).toLowerCase()));
    const whole = heads.map((row) => row.indexOf(flat)).find((at) => at >= 0);
    // A group's name may stand before it.
    const under = heads.map((row) => row.findIndex((cell) => cell.endsWith(flat))).find((at) => at >= 0);
    return whole ?? under ?? headings.indexOf(heading);
  });
  let right = 0;
  for (const row of rows) {
    const read = table.rows.find((cells) => plain(cells[columns[0]!]) === plain(row[0]));
    if (read) row.forEach((cell, column) => (right += plain(read[columns[column]!]) === plain(cell) ? 1 : 0));
  }
  return right;
}
