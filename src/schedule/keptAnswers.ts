import * as v from 'valibot';
import { rowsNamed } from './asked';
import { rowText } from './cell';
import type { Answers, Table } from './opening';

/**
 * Answers that stay with a takeoff, for when it is filled again from the same list. They are used for a list of the same name with the
 * same headings only, and an answer for a row only as long as the row says what it said: another opening may stand there by now.
 */
export interface KeptAnswers {
  readonly list: string;
  readonly headings: string;
  readonly answers: Answers;
  /** What the rows said that answers name, by their numbers. */
  readonly rows: Readonly<Record<string, string>>;
}

const SHAPE = v.object({
  list: v.string(),
  headings: v.string(),
  answers: v.record(v.string(), v.string()),
  rows: v.record(v.string(), v.string()),
});

/** Answers with what they rest on; `headingRow` as the user counts it. */
export function keepAnswers(table: Table, headingRow: number | null, answers: Answers): KeptAnswers {
  const said = (row: number) => rowText(table.rows[row - table.firstRow]);
  const numbers = Object.keys(answers).flatMap(rowNumbers);
  return {
    list: table.name,
    headings: headingRow === null ? '' : said(headingRow),
    answers,
    rows: Object.fromEntries(numbers.map((row) => [String(row), said(row)])),
  };
}

/** What of the answers holds for this list. */
export function answersFor({ list, headings, answers, rows }: KeptAnswers, table: Table): Answers {
  if (list !== table.name || (headings !== '' && !table.rows.some((row) => rowText(row) === headings))) return {};
  const stands = (row: number) => rows[String(row)] === rowText(table.rows[row - table.firstRow]);
  return Object.fromEntries(Object.entries(answers).filter(([key]) => rowNumbers(key).every(stands)));
}

/** From the text that was kept; null for any other. */
export function readKept(text: string): KeptAnswers | null {
  try {
    const read = v.safeParse(SHAPE, JSON.parse(text));
    return read.success ? read.output : null;
  } catch {
    return null;
  }
}

function rowNumbers(key: string): readonly number[] {
  return rowsNamed(key)?.rows.map((at) => parseInt(at, 10)) ?? [];
}
