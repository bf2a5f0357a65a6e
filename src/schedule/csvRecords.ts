import Papa from 'papaparse';

/** One record of a delimited file. */
export interface CsvRecord {
  readonly fields: readonly string[];
  /** What had to be repaired, or looks wrong; null where nothing. */
  readonly remark: string | null;
}

/** A quoted field longer than this many lines is taken for a quotation mark that was never closed. */
const LONGEST_FIELD_LINES = 500;

/**
 * Records of a delimited text. Builders write inches with the very mark that quotes a field in CSV, so a field that starts
 * with one swallows what follows. A quotation mark counts as quoting only while the records come out as wide as the
 * others; else it is taken as typed and the record says so.
 */
export function csvRecords(text: string, delimiter: string): CsvRecord[] {
  const lines = text.replace(/\r\n?/g, '\n').split('\n');
  if (lines.at(-1) === '') lines.pop();
  const usual = usualWidth(lines, delimiter);
  const records: CsvRecord[] = [];
  for (let index = 0; index < lines.length;) {
    const line = lines[index] ?? '';
    if (!line.includes('"')) {
      records.push({ fields: line.split(delimiter), remark: null });
      index += 1;
      continue;
    }
    const end = recordEnd(lines, index, delimiter);
    const record = end === null ? null : parse(lines.slice(index, end + 1).join('\n'), delimiter);
    if (record !== null && end !== null && isBelieved(record, lines.slice(index, end + 1), delimiter, usual)) {
      records.push({ fields: record.fields, remark: runsOver(lines.slice(index, end + 1), delimiter, usual) });
      index = end + 1;
      continue;
    }
    records.push({
      fields: splitLoosely(line, delimiter),
      remark: 'A quotation mark in this row encloses no text, so it was read as it stands.',
    });
    index += 1;
  }
  return records;
}

/** The commonest number of fields among the lines, those without quotation marks first. */
function usualWidth(lines: readonly string[], delimiter: string): number {
  const counts = new Map<number, number>();
  const count = (width: number) => counts.set(width, (counts.get(width) ?? 0) + 1);
  for (const line of lines) if (!line.includes('"') && line !== '') count(line.split(delimiter).length);
  if (counts.size === 0) for (const line of lines) if (line !== '') count(splitLoosely(line, delimiter).length);
  let best = 0;
  let most = 0;
  for (const [width, times] of counts)
    if (width > 1 && (times > most || (times === most && width > best))) [best, most] = [width, times];
  return best;
}

/** The line on which the record that starts at `start` ends by the rules of CSV, or null where its quotes never close. */
function recordEnd(lines: readonly string[], start: number, delimiter: string): number | null {
  let quoted = false;
  for (let index = start; index < Math.min(lines.length, start + LONGEST_FIELD_LINES); index += 1) {
    const line = lines[index] ?? '';
    let position = 0;
    while (position <= line.length) {
      if (!quoted) {
        if (line[position] === '"') {
          quoted = true;
          position += 1;
          continue;
        }
        const next = line.indexOf(delimiter, position);
        if (next < 0) break;
        position = next + delimiter.length;
        continue;
      }
      const close = line.indexOf('"', position);
      if (close < 0) break;
      if (line[close + 1] === '"') position = close + 2;
      else if (close + 1 === line.length || line.startsWith(delimiter, close + 1)) {
        quoted = false;
        position = close + 1 + delimiter.length;
        if (close + 1 === line.length) break;
      } else position = close + 1;
    }
    if (!quoted) return index;
  }
  return null;
}

interface Parsed {
  readonly fields: readonly string[];
  /** Without a quotation mark out of place. */
  readonly clean: boolean;
}

function parse(record: string, delimiter: string): Parsed | null {
  const parsed = Papa.parse<string[]>(record, {
    delimiter,
    newline: '\n',
    quoteChar: '"',
    header: false,
    dynamicTyping: false,
  });
  const fields = parsed.data[0];
  if (fields === undefined || parsed.data.length !== 1) return null;
  if (parsed.errors.some(({ code }) => code === 'MissingQuotes')) return null;
  return { fields, clean: parsed.errors.length === 0 };
}

/** A record that does close its quotes may still have swallowed fields or lines; then the widths give it away. */
function isBelieved({ fields, clean }: Parsed, lines: readonly string[], delimiter: string, usual: number): boolean {
  const isUsual = (line: string) => splitLoosely(line, delimiter).length === usual;
  const swallowed = !clean || fields.some((field) => field.startsWith(delimiter));
  const first = lines[0] ?? '';
  if (lines.length === 1) return clean && !(swallowed && usual > 1 && fields.length !== usual && isUsual(first));
  if (usual > 1 && lines.every(isUsual) && (swallowed || fields.length !== usual)) return false;
  return fields.length === usual || !isUsual(first);
}

/** A remark for a well-formed cell that runs over lines each of which could be a row. */
function runsOver(lines: readonly string[], delimiter: string, usual: number): string | null {
  const rows = usual > 1 && lines.length > 1 && lines.every((line) => line.split(delimiter).length === usual);
  if (!rows) return null;
  return `A cell in this row runs over ${lines.length} lines that look like rows of their own; please check its quotation marks.`;
}

/** Fields of one line; a quotation mark quotes only where its field closes within the line and does not begin with the delimiter. */
function splitLoosely(line: string, delimiter: string): string[] {
  const fields: string[] = [];
  let position = 0;
  for (;;) {
    if (line[position] === '"' && !line.startsWith(delimiter, position + 1)) {
      const close = closing(line, position + 1, delimiter);
      if (close !== null) {
        fields.push(line.slice(position + 1, close).replace(/""/g, '"'));
        if (close + 1 >= line.length) return fields;
        position = close + 1 + delimiter.length;
        continue;
      }
    }
    const next = line.indexOf(delimiter, position);
    if (next < 0) {
      fields.push(line.slice(position));
      return fields;
    }
    fields.push(line.slice(position, next));
    position = next + delimiter.length;
  }
}

function closing(line: string, from: number, delimiter: string): number | null {
  for (let position = from; ;) {
    const quote = line.indexOf('"', position);
    if (quote < 0) return null;
    if (line[quote + 1] === '"') position = quote + 2;
    else if (quote + 1 === line.length || line.startsWith(delimiter, quote + 1)) return quote;
    else position = quote + 1;
  }
}
