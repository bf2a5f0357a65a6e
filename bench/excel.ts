/**
 * What filling costs on the line to Excel: `npm run bench -- excel [OPENINGS…]`. The adapter runs on Microsoft's office.js; a
 * workbook in memory answers, and refuses what is over 5 MB either way. Counts requests and their bytes for filling; for filling
 * again: looking which sheets are filled, reading the Standards and the Takeoff back, writing all sheets anew; for entering all
 * ARCH formulas again as they come back from a file of another program; and for freezing all formulas to their figures.
 */
import { randomOpenings, scheduleOf } from '../tests/takeoff/openings';
import { random } from '../tests/random';
import { FakeWorkbook } from '../tests/excel/fakeExcel';
import { addressAt } from '../tests/excel/fakeSheet';
import { install } from '../tests/excel/officeJs';
import { benchOn, noticeOf } from '../tests/taskpane/pane/bench';
import type { Result } from '../src/result';
import { defaultStandards } from '../src/standards';
import { takeoff } from '../src/takeoff/takeoff';
import type { Sheet } from '../src/workbook/sheet';
import { workbookSheets } from '../src/workbook/workbook';
import { excelHost } from '../taskpane/excel/excelHost';
import { freeze, reenter } from '../taskpane/pane/deeds/formulas';

export interface Cost {
  readonly requests: number;
  readonly actions: number;
  /** Bytes asked and answered, all together and the largest of one request. */
  readonly asked: number;
  readonly mostAsked: number;
  readonly answered: number;
  readonly mostAnswered: number;
}

/** The workbook of so many openings, made at random but always the same: `kinds` of them, over and over. */
export function sheetsOf(openings: number, kinds = openings): Sheet[] {
  const made = randomOpenings(kinds, random(23));
  const schedule = scheduleOf(
    Array.from({ length: openings }, (_, at) => ({ ...made[at % kinds]!, row: at + 2, mark: `W${at + 1}` })),
  );
  return workbookSheets(schedule, takeoff(schedule.openings, defaultStandards()));
}

type Deed = 'fill' | 'again' | 'reenter' | 'freeze';

export async function fillingCosts(sheets: readonly Sheet[]): Promise<Readonly<Record<Deed, Cost>>> {
  const book = new FakeWorkbook();
  install(book);
  const host = excelHost();
  const names = sheets.map(({ name }) => name);
  done(await host.writeSheets(sheets, { replace: [] }));
  const fill = costOf(book);
  anew(book);
  for (const name of names) done(await host.isFilled(name));
  done(await host.readSheet('Standards'));
  done(await host.readSheet('Takeoff'));
  done(await host.readFormulas('Takeoff'));
  done(await host.writeSheets(sheets, { replace: names }));
  const again = costOf(book);

  calculatedAs(book, sheets);
  for (const { cells } of book.sheets) {
    for (const [address, entry] of cells)
      if (typeof entry === 'string') cells.set(address, entry.replaceAll('ARCH.', '_xldudf_ARCH_'));
  }
  const bench = benchOn(host);
  anew(book);
  await reenter(bench);
  const entered = noticeOf(bench);
  if (!entered.startsWith('Entered again: ')) throw new Error(entered);
  const reentering = costOf(book);

  anew(book);
  await freeze(bench);
  const frozen = noticeOf(bench);
  if (!frozen.startsWith('Plain figures now: ')) throw new Error(frozen);
  return { fill, again, reenter: reentering, freeze: costOf(book) };
}

/** Counting begins again. */
function anew(book: FakeWorkbook): void {
  book.syncs = [];
  book.requests = [];
}

/** What the formulas give: the workbook in memory calculates nothing itself. */
function calculatedAs(book: FakeWorkbook, sheets: readonly Sheet[]): void {
  for (const { name, rows } of sheets) {
    const { results } = book.sheet(name);
    rows.forEach((row, at) =>
      row.forEach((cell, column) => cell?.formula !== undefined && results.set(addressAt(at, column), cell.value)),
    );
  }
}

function done(result: Result<unknown>): void {
  if (!result.ok) throw new Error(result.message);
}

function costOf({ syncs }: FakeWorkbook): Cost {
  const sum = (of: (sync: FakeWorkbook['syncs'][number]) => number) => syncs.reduce((all, sync) => all + of(sync), 0);
  return {
    requests: syncs.length,
    actions: sum(({ actions }) => actions),
    asked: sum(({ bytes }) => bytes),
    mostAsked: Math.max(...syncs.map(({ bytes }) => bytes)),
    answered: sum(({ answer }) => answer),
    mostAnswered: Math.max(...syncs.map(({ answer }) => answer)),
  };
}

const kilobytes = (bytes: number) => (bytes / 1000).toLocaleString('en-US', { maximumFractionDigits: 0 }).padStart(9);

export async function run(args: readonly string[]): Promise<void> {
  const sizes = args.length > 0 ? args.map(Number) : [100, 1000, 5000];
  console.log('openings            requests  actions  KB asked  most one  KB answered  most one');
  for (const openings of sizes) {
    const costs = await fillingCosts(sheetsOf(openings));
    for (const [name, cost] of Object.entries(costs)) {
      const { requests, actions, asked, mostAsked, answered, mostAnswered } = cost;
      console.log(
        `${String(openings).padStart(8)}  ${name.padEnd(8)}${String(requests).padStart(10)}${String(actions).padStart(9)} ` +
          `${kilobytes(asked)} ${kilobytes(mostAsked)}    ${kilobytes(answered)} ${kilobytes(mostAnswered)}`,
      );
    }
  }
}
