import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { Deflate, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { chooseTable, readSchedule, readTables, type Schedule } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import { HEADINGS, sheetXml, simpleWorkbook, workbookParts, zipParts } from './workbookFile';

/** What comes of a file: a schedule, or the one sentence that refuses it. Nothing may throw. */
async function read(name: string, bytes: Uint8Array): Promise<Schedule | string> {
  const tables = await readTables(name, bytes);
  if (!tables.ok) return tables.message;
  const table = chooseTable(tables.value);
  if (table === null) return 'no tables';
  const schedule = readSchedule(table, defaultStandards());
  return schedule.ok ? schedule.value : schedule.message;
}

function sayings(schedule: Schedule): string {
  return [
    ...schedule.remarks,
    ...schedule.openings.flatMap(({ notes, problems }) => [...notes, ...problems.map(({ message }) => message)]),
    ...schedule.passedOver.map(({ why }) => why),
  ].join('\n');
}

const inputs = ({ openings }: Schedule) =>
  openings.map(({ mark, quantity, head, span, rise }) => [mark, quantity, head, span, rise]);

/** The two openings that nearly every file of the corpus holds. */
const USUAL = [
  ['A', 2, 'segmental', 36, 6],
  ['B', 1, 'half round', 40, 20],
];

interface Expectation {
  refused?: string;
  openings?: unknown[][];
  says?: string[];
}

const folder = new URL('hostile/', import.meta.url);
const expected = JSON.parse(readFileSync(new URL('expected.json', folder), 'utf8')) as Record<string, Expectation>;

describe('an odd or hostile file is read rightly or refused in one sentence', () => {
  it.each(Object.keys(expected))('%s', async (file) => {
    const got = await read(file, readFileSync(new URL(file, folder)));
    const { refused, openings = USUAL, says = [] } = expected[file]!;
    if (refused !== undefined) {
      expect(got).toContain(refused);
      return;
    }
    if (typeof got === 'string') throw new Error(got);
    expect(inputs(got)).toEqual(openings);
    for (const sentence of says) expect(sayings(got)).toContain(sentence);
    if (says.length === 0) expect(got.remarks).toEqual([]);
  });

  it('every file of the corpus has an expectation', () => {
    const files = readdirSync(folder).filter((file) => !/\.(?:ts|json)$/.test(file));
    expect(files.sort()).toEqual(Object.keys(expected).sort());
  });
});

/** No reading may take longer than this, whatever the file. */
const LONGEST_SECONDS = 10;

async function timed(name: string, bytes: Uint8Array): Promise<Schedule | string> {
  // Processor time: the reader never waits, and a busy machine must not fail the test.
  const start = process.cpuUsage();
  // Other files' tests share the memory; what counts is what this reading takes.
  const { rss } = process.memoryUsage();
  const got = await read(name, bytes);
  const { user, system } = process.cpuUsage(start);
  expect((user + system) / 1e6).toBeLessThan(LONGEST_SECONDS);
  expect(process.memoryUsage().rss - rss).toBeLessThan(1e9);
  return got;
}

const csv = (lines: readonly string[]) => new TextEncoder().encode(lines.join('\n'));
const HEADING_LINE = HEADINGS.join(',');

describe('large and degenerate files stay within 10 s and 1 GB', () => {
  it('40,000 rows are 40,000 openings', async () => {
    const lines = Array.from({ length: 40_000 }, (_, index) => `W${index},1,segmental,36,${4 + (index % 8)}`);
    const got = await timed('many.csv', csv([HEADING_LINE, ...lines]));
    if (typeof got === 'string') throw new Error(got);
    expect(got.openings).toHaveLength(40_000);
    expect(got.openings.every(({ problems }) => problems.length === 0)).toBe(true);
  }, 60_000);

  it('an open quotation mark in the first of 10,000 rows costs only its row', async () => {
    const lines = Array.from({ length: 10_000 }, (_, index) => `W${index},1,segmental,36,6`);
    lines[0] = 'W0,1,segmental,"36,6';
    const got = await timed('open.csv', csv([HEADING_LINE, ...lines]));
    if (typeof got === 'string') throw new Error(got);
    expect(got.openings).toHaveLength(10_000);
    expect(got.openings.filter(({ problems }) => problems.length > 0).map(({ row }) => row)).toEqual([2]);
  }, 60_000);

  it('10,000 rows that each start a field with an inch mark stay 10,000 rows', async () => {
    const lines = Array.from({ length: 10_000 }, (_, index) => `W${index},1,segmental,"36,6`);
    const got = await timed('inches.csv', csv([HEADING_LINE, ...lines]));
    if (typeof got === 'string') throw new Error(got);
    expect(got.openings).toHaveLength(10_000);
  }, 60_000);

  it('a field of 1 MB is kept as it is', async () => {
    const field = 'x'.repeat(1_000_000);
    const got = await timed(
      'long.csv',
      csv([`${HEADING_LINE},Remarks`, `A,2,segmental,36,6,"${field}"`, 'B,1,half round,40,,']),
    );
    if (typeof got === 'string') throw new Error(got);
    expect(inputs(got)).toEqual(USUAL);
    expect(got.openings[0]!.source[5]).toBe(field);
  });

  it.each([
    ['digits', '1'.repeat(4e5) + 'x'],
    ['spaces', `a${' '.repeat(4e5)}b`],
    ['one word over and over', 'arch'.repeat(100_000)],
    ['brackets', '('.repeat(4e5)],
    ['crosses', ' x '.repeat(130_000)],
    ['commas and points', '1,'.repeat(200_000) + '.'],
  ])('cells of 400 kB of %s take no longer than others', async (_, text) => {
    const all = 'Mark,Qty,Head,Size,Width,Rise,Casing,Reveal,Wood,Ends,Remarks'.split(',');
    const rows = [all.join('\t'), all.map(() => text).join('\t'), 'A\t2\tsegmental\t\t36\t6'];
    const got = await timed('cells.tsv', csv(rows));
    if (typeof got === 'string') throw new Error(got);
    expect(got.openings.length + got.passedOver.length).toBe(3);
    expect(got.openings.at(-1)).toMatchObject({ mark: 'A', quantity: 2, span: 36, rise: 6 });
    for (const { message } of got.openings.flatMap(({ problems }) => problems))
      expect(message.length).toBeLessThan(500);
  });

  it('one line of 5 MB without a line end is refused or read, not hung on', async () => {
    const got = await timed('line.csv', new TextEncoder().encode('Mark,Width,"'.repeat(400_000)));
    expect(typeof got === 'string' || got.openings.length + got.passedOver.length === 1).toBe(true);
  });

  it('a workbook whose sheet unpacks to 160 MB is refused, also where its directory says 5 kB', async () => {
    const parts = { ...workbookParts({ Openings: '' }), 'xl/worksheets/sheet1.xml': null };
    const bomb = packedSpaces(160_000_000);
    const file = (size: number) => withRawPart(zipParts(parts), 'xl/worksheets/sheet1.xml', bomb, size);
    expect(file(0).length).toBeLessThan(1_000_000);
    expect(await timed('bomb.xlsx', file(160_000_000))).toContain('unpacks to more than 100 MB');
    expect(await timed('lying.xlsx', file(5_000))).toContain('larger than the file says');
  }, 60_000);

  it('a workbook of 10,000 rows gives 10,000 openings', async () => {
    const rows = Array.from({ length: 10_000 }, (_, index) => [`W${index}`, 1, 'segmental', 36, 6]);
    const got = await timed('rows.xlsx', simpleWorkbook(rows));
    if (typeof got === 'string') throw new Error(got);
    expect(got.openings).toHaveLength(10_000);
  }, 60_000);

  it('a sheet of scattered far cells is refused once it holds too many', async () => {
    const rows = Array.from(
      { length: 400 },
      (_, index) => `<row r="${index + 1}"><c r="XFD${index + 1}"><v>1</v></c></row>`,
    );
    const sheet = sheetXml([]).replace('<sheetData>', `<sheetData>${rows.join('')}`);
    expect(await timed('wide.xlsx', zipParts(workbookParts({ Wide: sheet })))).toContain('more than 4000000 cells');
  });

  it('20,000 merges over the whole sheet do not slow it down', async () => {
    const merges = Array.from({ length: 20_000 }, () => '<mergeCell ref="A1:E1048576"/>').join('');
    const sheet = sheetXml([HEADINGS, ['A', 2, 'segmental', 36, 6]], { after: `<mergeCells>${merges}</mergeCells>` });
    const got = await timed('merges.xlsx', zipParts(workbookParts({ Openings: sheet })));
    expect(typeof got).toBe('object');
  });

  it('an archive of 60,000 empty parts is refused', async () => {
    const parts = Object.fromEntries(Array.from({ length: 60_000 }, (_, index) => [`${index}.xml`, new Uint8Array(0)]));
    expect(await timed('parts.xlsx', zipSync(parts, { level: 0 }))).toContain('60000 parts');
  }, 60_000);

  it('a workbook cut off anywhere is refused, never read in part', async () => {
    const whole = simpleWorkbook([['A', 2, 'segmental', 36, 6]]);
    for (let length = 1; length < whole.length; length += 97) {
      const got = await read('cut.xlsx', whole.subarray(0, length));
      expect(typeof got, `${length} bytes of ${whole.length}`).toBe('string');
    }
  });
});

describe('a text file beyond the limits is refused within 2 s and 300 MB of its own', () => {
  it.each([
    ['a row of 20 MB of commas', ','.repeat(20e6), 'Row 1 has more than 16384 columns'],
    [
      'a row of tabs below good ones',
      `${HEADING_LINE}\nA,1,segmental,36,6\n${','.repeat(30_000)}`,
      'Row 3 has more than',
    ],
    ['200,000 equal marks', `${HEADING_LINE}\n${'A,1,segmental,36,6\n'.repeat(200_000)}`, 'more than 150000 rows'],
    ['5,000,000 cells', `${HEADING_LINE}\n${`${','.repeat(99)}\n`.repeat(50_000)}`, 'more than 4000000 cells'],
  ])('%s', async (_, text, sentence) => {
    const bytes = new TextEncoder().encode(text);
    const memory = process.memoryUsage().rss;
    const start = process.cpuUsage();
    expect(await read('large.csv', bytes)).toContain(sentence);
    const { user, system } = process.cpuUsage(start);
    expect((user + system) / 1e6).toBeLessThan(2);
    expect(process.memoryUsage().rss - memory).toBeLessThan(300e6);
  });
});

describe('a NUL', () => {
  it('inside a figure is said and the figure asked about; inside a word it is nothing', async () => {
    const got = await read('nul.csv', csv([HEADING_LINE, 'A,2,segm\u0000ental,3\u00006,6', 'B,1,half round,40,']));
    if (typeof got === 'string') throw new Error(got);
    expect(got.remarks.join()).toContain('held 2 NUL characters');
    expect(inputs(got)[0]).toEqual(['A', 2, 'segmental', null, 6]);
    expect(got.openings[0]!.problems[0]!.message).toContain('the cell says "3\ufffd6"');
    expect(inputs(got)[1]).toEqual(['B', 1, 'half round', 40, 20]);
  });
});

describe('damage', () => {
  it('to any bytes of any file of the corpus gives a schedule or a sentence, never a throw', async () => {
    const names = Object.keys(expected);
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...names),
        fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 })), { minLength: 1, maxLength: 12 }),
        async (name, changes) => {
          const bytes = new Uint8Array(readFileSync(new URL(name, folder)));
          for (const [at, byte] of changes) if (bytes.length > 0) bytes[at % bytes.length] = byte;
          const got = await read(name, bytes);
          if (typeof got === 'string') expect(got).toMatch(/^[^\n]+[.!]$/);
        },
      ),
      { numRuns: 200 },
    );
  }, 60_000);
});

/** A raw deflate stream that unpacks to this many spaces, about a thousandth of it. */
function packedSpaces(size: number): Uint8Array {
  const chunks: Uint8Array[] = [];
  const stream = new Deflate({ level: 1 }, (chunk) => void chunks.push(chunk));
  const step = new Uint8Array(4_000_000).fill(32);
  for (let at = 0; at < size; at += step.length) stream.push(step, at + step.length >= size);
  return joined(chunks);
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** The archive with one more part whose packed bytes and declared size are given as they are. */
function withRawPart(archive: Uint8Array, name: string, packed: Uint8Array, size: number): Uint8Array {
  const label = new TextEncoder().encode(name);
  const end = archive.length - 22;
  const endView = new DataView(archive.buffer, archive.byteOffset + end, 22);
  const directory = endView.getUint32(16, true);
  const local = new Uint8Array(30 + label.length);
  const localView = new DataView(local.buffer);
  localView.setUint32(0, 0x04034b50, true);
  localView.setUint16(8, 8, true);
  localView.setUint32(18, packed.length, true);
  localView.setUint32(22, size, true);
  localView.setUint16(26, label.length, true);
  local.set(label, 30);
  const entry = new Uint8Array(46 + label.length);
  const entryView = new DataView(entry.buffer);
  entryView.setUint32(0, 0x02014b50, true);
  entryView.setUint16(10, 8, true);
  entryView.setUint32(20, packed.length, true);
  entryView.setUint32(24, size, true);
  entryView.setUint16(28, label.length, true);
  entryView.setUint32(42, directory, true);
  entry.set(label, 46);
  const tail = archive.slice(end);
  const tailView = new DataView(tail.buffer);
  const count = tailView.getUint16(10, true) + 1;
  tailView.setUint16(8, count, true);
  tailView.setUint16(10, count, true);
  tailView.setUint32(12, end - directory + entry.length, true);
  tailView.setUint32(16, directory + local.length + packed.length, true);
  return joined([archive.subarray(0, directory), local, packed, archive.subarray(directory, end), entry, tail]);
}
