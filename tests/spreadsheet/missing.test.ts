import { describe, expect, it } from 'vitest';
import { BLANK_JOB, type Job } from '../../src/job/fields';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { addressOf } from '../../src/workbook/address';
import { quote } from '../../src/formulaText';
import type { Cell, Sheet } from '../../src/workbook/sheet';
import { writeXlsx } from '../../src/workbook/xlsx';
import { exampleCheck } from '../check/quote/example';
import { random } from '../random';
import { randomOpenings, scheduleOf } from '../takeoff/openings';
import { quickSheets } from '../takeoff/quickPlan';
import { valueOf } from '../value';
import { calculated, type Book, type Calculated } from './calc';

/**
 * LibreOffice Calc knows none of our worksheet functions: to it the add-in is missing. (That stored figures stay where nothing
 * calculates it can't show: it calculates the cells of arrays at every opening.)
 */

interface Judged {
  readonly at: string;
  readonly cell: Cell;
  readonly shown: Calculated;
}

/** Every formula of a workbook with what Calc shows there. */
function formulas(sheets: readonly Sheet[], found: Book): Judged[] {
  return sheets.flatMap((sheet) =>
    sheet.rows.flatMap((row, down) =>
      row.flatMap((cell, across) => {
        if (cell?.formula === undefined) return [];
        const at = `${sheet.name}!${addressOf({ row: down, column: across })}`;
        return [{ at, cell, shown: found.get(sheet.name)?.[down]?.[across] ?? '' }];
      }),
    ),
  );
}

const judged = async (sheets: readonly Sheet[]) => formulas(sheets, await calculated(valueOf(writeXlsx(sheets))));

const same = (cell: Cell, shown: Calculated) =>
  typeof shown === 'number' && typeof cell.value === 'number'
    ? Math.abs(shown - cell.value) <= 1e-9 * Math.max(1, Math.abs(cell.value))
    : shown === (cell.value ?? '');
const isError = (shown: Calculated) => /^(#|Err:)/.test(String(shown));
/** A sum; what stands beside one in words is of the same style. */
const isTotal = ({ style, value }: Cell) => style === 'total' && typeof value === 'number';
const tells = (shown: Calculated) => /in error: \d+\. .*ARCH functions are not loaded\.$/.test(String(shown));

/** Cells that are neither as stored, nor an error, nor say what is the matter. */
const untrue = (cells: readonly Judged[]) =>
  cells
    .filter(({ cell, shown }) => !same(cell, shown) && !isError(shown) && !tells(shown))
    .map(({ at, cell, shown }) => `${at}: ${cell.value} became ${shown}`);

/** A job with something in every rule, so that its charges are lines of the proposal. */
const job: Job = {
  ...BLANK_JOB,
  ...{ finishRate: 2, discount: 0.05, minimum: 100, deliveryCharge: 50, taxRate: 0.06 },
  setups: 'on a line of their own',
};

describe.concurrent('where the add-in is missing and everything is made to calculate', () => {
  it('what rests on our functions is an error or says so, and nothing else has changed', async () => {
    const { schedule, takeoff: taken, boards, check } = await exampleCheck();
    const cells = await judged(quickSheets(schedule, taken, { boards, check, job, proposal: true }));
    expect(cells.filter(({ cell }) => cell.formula!.includes('ARCH.')).length).toBeGreaterThan(300);
    expect(untrue(cells)).toEqual([]);
    const totals = cells.filter(({ at, cell }) => isTotal(cell) && at.startsWith('Takeoff'));
    expect(totals.filter(({ shown }) => !isError(shown))).toEqual([]);
    expect(totals.length).toBeGreaterThan(5);
    expect(cells.filter(({ shown }) => tells(shown)).map(({ at }) => at)).toEqual(['Takeoff!D2', 'Check!C2']);
  });

  it('an error in one row, as #BUSY! is while a call is pending, reaches every total and changes no other row', async () => {
    const openings = randomOpenings(40, random(23));
    const sheets = quickSheets(scheduleOf(openings), takeoff(openings, defaultStandards()), { job, proposal: true });
    const pending = /^Takeoff!\w+9$/;
    // What the other calls give stands in for them: Calc can't calculate them.
    const arrived = sheets.map((sheet): Sheet => ({
      ...sheet,
      rows: sheet.rows.map((row, down) =>
        row.map((cell, across) => {
          if (!cell?.formula?.includes('ARCH.')) return cell;
          if (pending.test(`${sheet.name}!${addressOf({ row: down, column: across })}`))
            return { ...cell, formula: 'NA()' };
          const { spill: _spill, value, ...rest } = cell;
          return { ...rest, value, formula: typeof value === 'number' ? String(value) : quote(String(value ?? '')) };
        }),
      ),
    }));
    const cells = await judged(arrived);
    expect(untrue(cells)).toEqual([]);
    const takeoffCells = cells.filter(({ at }) => at.startsWith('Takeoff!'));
    // The rows that wait, and from row 46 on what is summed over all.
    const mayBe = ({ at }: Judged) => /9$|4[678]$/.test(at);
    expect(takeoffCells.filter((one) => isError(one.shown) && !mayBe(one))).toEqual([]);
    const totals = takeoffCells.filter(({ cell }) => isTotal(cell));
    expect(totals.filter(({ shown }) => !isError(shown))).toEqual([]);
  });
});
