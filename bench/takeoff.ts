/**
 * A whole takeoff, from the text of a schedule to the bytes of the workbook: `npm run bench -- takeoff [OPENINGS…]`. Beside
 * it exceljs alone writing the same cells as constants, and papaparse alone reading the same text. Every line is a process
 * of its own, so that each has its own peak of memory; a first, small job in the same process warms it up.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import ExcelJS from 'exceljs';
import Papa from 'papaparse';
import { readSchedule, readTables } from '../src/schedule';
import { defaultStandards } from '../src/standards';
import { planBoards } from '../src/takeoff/boards';
import { partsOf } from '../src/takeoff/parts';
import { takeoff } from '../src/takeoff/takeoff';
import type { Result } from '../src/result';
import { workbookSheets, workbookSources } from '../src/workbook/workbook';
import { writeXlsx } from '../src/workbook/xlsx';
import { buildersList } from './lists/buildersList';

const WARM_UP = 50;

/** Seconds of each step, in the order they were taken. */
type Steps = Record<string, number>;

class Watch {
  readonly steps: Steps = {};
  private since = performance.now();

  lap(name: string): void {
    const now = performance.now();
    this.steps[name] = (now - this.since) / 1000;
    this.since = now;
  }
}

const SUBJECTS: Record<string, (openings: number) => Promise<Steps>> = { archwright, exceljs: constants, papaparse };

async function archwright(openings: number): Promise<Steps> {
  const text = csv(openings);
  const watch = new Watch();
  const schedule = await read(text);
  watch.lap('read');
  const taken = takeoff(schedule.openings, defaultStandards());
  watch.lap('compute');
  const boards = planBoards(partsOf(taken), taken.standards);
  watch.lap('boards');
  valueOf(writeXlsx(workbookSources(schedule, taken, { boards })));
  watch.lap('write');
  return watch.steps;
}

async function constants(openings: number): Promise<Steps> {
  const schedule = await read(csv(openings));
  const sheets = workbookSheets(schedule, takeoff(schedule.openings, defaultStandards()));
  const values = sheets.map(({ name, rows }) => ({
    name,
    rows: rows.map((row) => row.map((cell) => cell?.value ?? null)),
  }));
  sheets.length = 0;
  const watch = new Watch();
  const book = new ExcelJS.Workbook();
  for (const { name, rows } of values) book.addWorksheet(name).addRows(rows);
  await book.xlsx.writeBuffer();
  watch.lap('write');
  return watch.steps;
}

async function papaparse(openings: number): Promise<Steps> {
  const text = csv(openings);
  const watch = new Watch();
  Papa.parse(text);
  watch.lap('read');
  return watch.steps;
}

function csv(openings: number): string {
  return buildersList(openings)
    .map((row) => row.map((cell) => cell ?? '').join(','))
    .join('\n');
}

async function read(text: string) {
  const [table] = valueOf(await readTables('list.csv', new TextEncoder().encode(text)));
  if (table === undefined) throw new Error('the list has no table');
  return valueOf(readSchedule(table, defaultStandards()));
}

function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

function measure(subject: string, openings: number): { steps: Steps; peakMb: number } {
  const here = fileURLToPath(import.meta.url);
  const code = `import(${JSON.stringify(here)}).then(({ child }) => child(${JSON.stringify(subject)}, ${openings}))`;
  const said = execFileSync(process.execPath, ['--import', 'tsx', '--eval', code], { encoding: 'utf8' });
  return JSON.parse(said) as { steps: Steps; peakMb: number };
}

/** One measurement, in a process of its own. */
export async function child(subject: string, openings: number): Promise<void> {
  await SUBJECTS[subject]!(WARM_UP);
  const steps = await SUBJECTS[subject]!(openings);
  console.log(JSON.stringify({ steps, peakMb: process.resourceUsage().maxRSS / 1000 }));
}

export function run(args: readonly string[]): void {
  const sizes = args.length > 0 ? args.map(Number) : [100, 1_000, 10_000];
  if (!sizes.every((size) => Number.isInteger(size) && size > 0)) {
    throw new Error(`openings are counted in whole numbers from 1; got ${args.join(' ')}`);
  }
  for (const subject of Object.keys(SUBJECTS)) {
    for (const size of sizes) {
      const { steps, peakMb } = measure(subject, size);
      const times = Object.entries(steps).map(([step, seconds]) => `${step} ${seconds.toFixed(3)} s`);
      console.log(
        `${subject.padEnd(11)}${size.toLocaleString('en-US').padStart(7)}  ${times.join(', ')}; peak ${peakMb.toFixed(0)} MB`,
      );
    }
  }
}
