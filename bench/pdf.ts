/**
 * Schedules read from PDFs: `npm run bench -- pdf`. Pages with a table laid out at random, a plan sheet full of lines and
 * dimensions, and a set of 100 pages of which one holds a schedule. The files are written first; each kind is read in a process
 * of its own, so that each has its own peak of memory.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { SCHEDULE } from '../src/pdf/scheduleKind';
import { readPdf } from '../src/pdf/readPdf';
import { drawLayout } from '../tests/pdf/draw';
import { layoutOf } from '../tests/pdf/layout';
import { pdfLibrary } from '../tests/pdf/library';
import { drawn, type Sheet } from '../tests/pdf/plan';
import { random } from '../tests/random';

const RANDOM_TABLES = 40;
const PLAN_SHEETS = 3;
const PAGES = 100;

const ROWS = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
  ...Array.from({ length: 24 }, (_, row) => [`W${row + 1}`, '2', 'Segmental', `${36 + row} 1/2`, '8']),
];

/** Walls, dimension lines and what is written beside them. */
function plan(sheet: Sheet, seed: number, lines: number, texts: number): void {
  const from = random(seed);
  for (let line = 0; line < lines; line += 1) {
    const [x, y, length] = [from.between(10, 500), from.between(10, 590), from.between(2, 60)];
    if (line % 2 === 0) sheet.line(x, y, x + length, y);
    else sheet.line(x, y, x, Math.min(600, y + length));
  }
  for (let text = 0; text < texts; text += 1)
    sheet.say(
      from.pick(['12\'-4 1/2"', 'BEDROOM 2', 'SEE 4/A501', 'W12']),
      from.between(10, 480),
      from.between(10, 590),
      4,
    );
}

const MAKERS: Readonly<Record<string, () => Promise<Uint8Array[]>>> = {
  'pages with a table': () =>
    Promise.all(
      Array.from({ length: RANDOM_TABLES }, (_, seed) => drawLayout({ ...layoutOf(seed), rowsOnPage: 1000 }, seed)),
    ),
  'plan sheets': () =>
    Promise.all(
      Array.from({ length: PLAN_SHEETS }, (_, seed) =>
        drawn((sheet) => {
          plan(sheet, seed, 6_000, 1_500);
          sheet.table(ROWS, 560, 60, [40, 30, 70, 50, 35]);
        }),
      ),
    ),
  '100 pages with one schedule': async () => [
    await drawn(
      ...Array.from({ length: PAGES }, (_, page) => (sheet: Sheet) => {
        plan(sheet, page, 1_500, 400);
        if (page === 56) sheet.table(ROWS, 560, 60, [40, 30, 70, 50, 35]);
      }),
    ),
  ],
};

/** Reads the files of a folder; prints seconds by page, all seconds and the peak of memory. */
export async function child(folder: string): Promise<void> {
  const library = await pdfLibrary();
  const pages: number[] = [];
  let tables = 0;
  const start = performance.now();
  for (const file of readdirSync(folder)) {
    let since = 0;
    const lap = () => {
      if (since > 0) pages.push((performance.now() - since) / 1000);
      since = performance.now();
    };
    const read = await readPdf(library, file, new Uint8Array(readFileSync(join(folder, file))), SCHEDULE, lap);
    lap();
    if (read.ok) tables += read.value.tables.length;
  }
  const seconds = (performance.now() - start) / 1000;
  const sorted = pages.sort((one, other) => one - other);
  const figures = { median: sorted[sorted.length >> 1], worst: sorted.at(-1), pages: pages.length, seconds, tables };
  console.log(JSON.stringify({ ...figures, peakMb: process.resourceUsage().maxRSS / 1000 }));
}

/** The reader as the product has it, in one script: a loader of sources takes more memory than the reading. */
const READER = 'artifacts/bench-pdf.mjs';

export async function run(): Promise<void> {
  const { dirname, filename } = import.meta;
  const contents = `import { child } from ${JSON.stringify(filename)}; await child(process.argv[2]);`;
  await build({
    ...{ stdin: { contents, resolveDir: dirname }, outfile: READER },
    ...{ bundle: true, platform: 'node', format: 'esm', packages: 'external', logLevel: 'error' },
  });
  for (const [name, make] of Object.entries(MAKERS)) {
    const folder = mkdtempSync(join(tmpdir(), 'bench-pdf-'));
    try {
      (await make()).forEach((bytes, index) => writeFileSync(join(folder, `${index}.pdf`), bytes));
      const said = execFileSync(process.execPath, [READER, folder], { encoding: 'utf8' });
      const { median, worst, pages, seconds, tables, peakMb } = JSON.parse(said) as Record<string, number>;
      console.log(
        `${name.padEnd(29)}${pages} pages, ${tables} tables found: ${seconds!.toFixed(1)} s, a page ${median!.toFixed(3)} s, at most ${worst!.toFixed(2)} s; peak ${peakMb!.toFixed(0)} MB`,
      );
    } finally {
      rmSync(folder, { recursive: true });
    }
  }
}
