import { describe, expect, it } from 'vitest';
import type { Table } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff } from '../../src/takeoff/takeoff';
import { readFactors } from '../../src/workbook/planBlock';
import { renewPlan } from '../../src/workbook/renewPlan';
import type { Sheet } from '../../src/workbook/sheet';
import { takeoffWithEdits } from '../../src/workbook/withEdits';
import { workbookSheets } from '../../src/workbook/workbook';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';

const STANDARDS = defaultStandards();
const LIST = [
  opening({ row: 2, mark: 'W1', head: 'segmental', span: 36, rise: 6 }),
  opening({ row: 3, mark: 'W2', head: 'half round', span: 40, quantity: 3 }),
];
const HELD = new Map([['poplar 0.8125', 2]]);

function tableOf({ name, rows }: Sheet): Table {
  return { name, firstRow: 1, rows: rows.map((row) => row.map((cell) => cell?.value ?? null)) };
}

/** A filled workbook whose wood factor is held for a job already quoted. */
const { taken, boards } = planTakeoff(takeoff(LIST, STANDARDS), {}, HELD);
const SHEETS = workbookSheets(scheduleOf(LIST), taken, { boards, held: HELD });
const table = (name: string) => tableOf(SHEETS.find((sheet) => sheet.name === name)!);

describe('a wood factor that is held', () => {
  it('is another than the plan has, and so are the prices', () => {
    const [factor] = readFactors(table('Stock'));
    expect(factor).toMatchObject({ held: 2, factor: 2 });
    expect(planTakeoff(takeoff(LIST, STANDARDS)).taken.totals.price).not.toBe(taken.totals.price);
  });

  it('stays, with its prices, when the plan is renewed', () => {
    const inputs = { takeoff: table('Takeoff'), standards: table('Standards'), stock: table('Stock'), plain: false };
    const { sheets, said } = valueOf(renewPlan(inputs));
    expect(readFactors(tableOf(sheets.find(({ name }) => name === 'Stock')!))).toMatchObject([{ held: 2, factor: 2 }]);
    expect(said).toEqual([]);
  });

  it('stays when the workbook is filled again', () => {
    const before = {
      ...{ values: table('Takeoff'), formulas: table('Takeoff') },
      ...{ schedule: table('Schedule'), stock: table('Stock') },
    };
    const again = takeoffWithEdits({ schedule: scheduleOf(LIST), standards: STANDARDS, before });
    expect(again.taken.totals.price).toBe(taken.totals.price);
    expect([...again.held]).toEqual([...HELD]);
  });
});
