import { ok, refuse, type Refusal, type Result } from '../result';
import { csvRecords, type CsvRecord } from './csvRecords';
import { decodeText } from './decode';
import { findLayout } from './layout';
import type { Table } from './opening';
import { LAST_COLUMN, MOST_CELLS, MOST_ROWS } from './xlsxSheet';

const DELIMITERS = [',', '\t', ';', '|'] as const;
/** Lines looked at to find the delimiter. */
const SAMPLE_LINES = 60;

/**
 * A table from a delimited text file. Every field stays text. Rows count records from 1, as a spreadsheet shows them: a
 * field with a line break inside does not add a row.
 */
export function readCsv(name: string, bytes: Uint8Array): Result<Table> {
  const decoded = decodeText(bytes);
  if (!decoded.ok) return decoded;
  let { text } = decoded.value;
  const remarks = [...decoded.value.remarks];
  const stated = /^sep=(.)\r?\n?/i.exec(text);
  if (stated) text = text.slice(stated[0].length);
  const delimiter = stated?.[1] ?? findDelimiter(name, text);
  const tooLarge = beyondLimits(text, delimiter);
  if (tooLarge !== null) return tooLarge;
  const records = csvRecords(text, delimiter);
  const rows = records.map(({ fields }) => fields);
  const rowRemarks = new Map<number, readonly string[]>();
  records.forEach(({ remark }, index) => {
    if (remark !== null) rowRemarks.set(index + 1, [remark]);
  });
  if (rowRemarks.size > 0) remarks.push(quotesRemark([...rowRemarks.keys()]));
  return ok({
    name,
    firstRow: 1,
    rows,
    remarks,
    rowRemarks,
    delimited: true,
    ...(hasDecimalCommas(rows, delimiter) ? { decimalCommas: true } : {}),
  });
}

/** Commas stand within figures where something else parts the fields, and more often than points do. */
function hasDecimalCommas(rows: readonly (readonly string[])[], delimiter: string): boolean {
  if (delimiter === ',') return false;
  let commas = 0;
  let points = 0;
  for (const row of rows.slice(0, 2000))
    for (const field of row) {
      if (/^\s*(?:\d{1,3}(?:\.\d{3})+|\d+),\d+(?:\s*[a-z]{1,2})?\s*$/i.test(field)) commas += 1;
      else if (/^\s*\d+\.\d+\s*$/.test(field)) points += 1;
    }
  return commas >= 1 && commas > points * 2;
}

/** A text file may hold as much as is read of a sheet; counted before anything is taken apart. */
function beyondLimits(text: string, delimiter: string): Refusal | null {
  const mark = delimiter.charCodeAt(0);
  let row = 1;
  let cells = 1;
  let all = 0;
  for (let index = 0; index < text.length; index += 1) {
    const code = text.charCodeAt(index);
    if (code === mark) cells += 1;
    else if (code === 10 || (code === 13 && text.charCodeAt(index + 1) !== 10)) {
      row += 1;
      all += cells;
      cells = 1;
    }
    if (cells > LAST_COLUMN)
      return refuse(`Row ${row} has more than ${LAST_COLUMN} columns; a schedule has far fewer.`);
    if (all + cells > MOST_CELLS) return refuse(`It has more than ${MOST_CELLS} cells; a schedule is far smaller.`);
    if (row > MOST_ROWS + 1) return refuse(`It has more than ${MOST_ROWS} rows; a schedule has far fewer.`);
  }
  return null;
}

function quotesRemark(rows: readonly number[]): string {
  const shown = rows.slice(0, 10).join(', ');
  const more = rows.length > 10 ? ` and ${rows.length - 10} more` : '';
  return `Quotation marks were out of place in row${rows.length === 1 ? '' : 's'} ${shown}${more}.`;
}

/** The delimiter under which headings are best understood; where none are, the one that gives the most even rows. */
function findDelimiter(name: string, text: string): string {
  const sample = firstLines(text);
  if (/\.(?:tsv|tab)$/i.test(name) && sample.includes('\t')) return '\t';
  let best: { delimiter: string; score: number; evenness: number } = { delimiter: ',', score: -1, evenness: -1 };
  for (const delimiter of DELIMITERS) {
    if (!sample.includes(delimiter)) continue;
    const rows = csvRecords(sample, delimiter).map(({ fields }) => fields);
    const layout = findLayout(rows, 0, {});
    const score = layout === null ? 0 : layout.columns.filter(({ key }) => key !== null).length;
    const even = evenness(rows);
    if (score > best.score || (score === best.score && even > best.evenness))
      best = { delimiter, score, evenness: even };
  }
  return best.delimiter;
}

function firstLines(text: string): string {
  let end = 0;
  for (let line = 0; line < SAMPLE_LINES && end < text.length; line += 1) {
    const next = text.slice(end, end + 20_000).search(/[\r\n]/);
    if (next < 0) return text.slice(0, Math.min(text.length, end + 20_000));
    end += next + 1;
  }
  return text.slice(0, end);
}

/** How many rows share the commonest width of two fields or more. */
function evenness(rows: readonly CsvRecord['fields'][]): number {
  const counts = new Map<number, number>();
  for (const { length } of rows) if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
  return Math.max(0, ...counts.values());
}
