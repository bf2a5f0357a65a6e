import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Opening } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { workbookSheets } from '../../src/workbook/workbook';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { differences, liveTakeoff } from './differences';

/** A user's own formulas, beside ours and on a sheet of their own: their values are right, and so are ours beside them. */

const STANDARDS = defaultStandards();
const OPENINGS: readonly Opening[] = [1, 2, 3, 4, 5, 6].map((no) =>
  opening({ no, row: no + 1, mark: `M${no}`, head: 'segmental', span: 30 + no, rise: 5, quantity: no }),
);
/** With spans such as 31 … 36 in F6:F11. */
const OWN: readonly (readonly [formula: string, value: (spans: readonly number[]) => string | number])[] = [
  ['=LET(x,Takeoff!F6,y,x*2,y+1)', ([first]) => first! * 2 + 1],
  ['=LAMBDA(x,x*2)(Takeoff!F6)', ([first]) => first! * 2],
  ['=OFFSET(Takeoff!F6,1,0)', ([, second]) => second!],
  ['=SUM(OFFSET(Takeoff!F6,0,0,3,1))', ([one, two, three]) => one! + two! + three!],
  ['=INDIRECT("Takeoff!F"&6)', ([first]) => first!],
  ['=SUM(INDIRECT("Takeoff!F6:F8"))', ([one, two, three]) => one! + two! + three!],
  ['=SUM(SORT(Takeoff!F6:F11,1,-1))', (spans) => spans.reduce((sum, span) => sum + span, 0)],
  ['=INDEX(SORT(Takeoff!F6:F11,1,-1),1)', (spans) => Math.max(...spans)],
  // SORT stands before these in order, over the same cells.
  ['=SUM(CHOOSEROWS(Takeoff!F6:F11,2))', ([, second]) => second!],
  ['=SUM(TAKE(Takeoff!F6:F11,2))', ([one, two]) => one! + two!],
  ['=XLOOKUP("M3",Takeoff!B6:B11,Takeoff!F6:F11)', ([, , third]) => third!],
  ['=SUM(MAP(Takeoff!F6:F8,LAMBDA(x,x+1)))', ([one, two, three]) => one! + two! + three! + 3],
  ['=REDUCE(0,Takeoff!F6:F8,LAMBDA(a,b,a+b))', ([one, two, three]) => one! + two! + three!],
  ['=LET(r,ARCH.RADIUS(Takeoff!F6,5),r)', ([span]) => (span! ** 2 / 4 + 25) / 10],
  // Beyond the grid's library: an error, and no figure.
  ['=LET(x,1,LAMBDA(y,y+x)(Takeoff!F6))', () => '#NAME?'],
];

let engine: Engine;
let host: WorkbenchHost;
let openings = OPENINGS;
beforeAll(async () => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  const sheets = workbookSheets(scheduleOf(OPENINGS), takeoff(OPENINGS, STANDARDS));
  valueOf(await host.writeSheets(sheets, { replace: [] }));
  await engine.settled();
}, 60_000);
afterAll(() => engine.univer.dispose());

const write = (sheet: string, address: string, rows: (string | number | null)[][]) =>
  host.writeCells(sheet, address, rows, true).then(valueOf);
const table = async (name: string) => valueOf(await host.readSheet(name))!.rows;
const takeoffSheet = () => engine.api.getActiveWorkbook()!.getSheetByName('Takeoff')!;

it('a range typed beside the table, or on another sheet, follows rows that are deleted, put in and undone', async () => {
  // The first row, one within and the last row of the range.
  await write('Takeoff', 'AM3', [['=SUM(J6:J11)', '=SUM($J$7:$J$9)', '=J9', '=COUNT(F7:F10)']]);
  await write('Sheet1', 'A1', [['=SUM(Takeoff!J6:J11)'], ['=SUM(Takeoff!$J$7:$J$9)'], ['=Takeoff!J9']]);
  await engine.settled();
  const prices = async () => (await table('Takeoff')).slice(5, 11).map((row) => (row[0] === 'Total' ? null : row[9]));
  const alike = async (nos: readonly number[], within: readonly number[]) => {
    await engine.settled();
    const rows = await table('Takeoff');
    const price = (no: number) => rows.find((row, at) => at > 4 && row[0] === no)![9] as number;
    const sum = (list: readonly number[]) => list.reduce((total, no) => total + price(no), 0);
    const beside = rows[2]!.slice(38, 41) as number[];
    const apart = (await table('Sheet1')).map(([first]) => first as number);
    for (const [all, some, one] of [beside, apart]) {
      expect(all).toBeCloseTo(sum(nos), 8);
      expect(some).toBeCloseTo(sum(within), 8);
      expect(one).toBeCloseTo(price(4), 8);
    }
  };
  await alike([1, 2, 3, 4, 5, 6], [2, 3, 4]);
  const before = await prices();
  takeoffSheet().activate();
  takeoffSheet().deleteRow(6);
  await alike([1, 3, 4, 5, 6], [3, 4]);
  takeoffSheet().deleteRow(5);
  await alike([3, 4, 5, 6], [3, 4]);
  takeoffSheet().deleteRow(8);
  await alike([3, 4, 5], [3, 4]);
  takeoffSheet().insertRowAfter(5);
  await alike([3, 4, 5], [3, 4]);
  for (let steps = 0; steps < 4; steps++) await engine.api.undo();
  await alike([1, 2, 3, 4, 5, 6], [2, 3, 4]);
  expect(await prices()).toEqual(before);
  await write('Takeoff', 'AM3', [[null, null, null, null]]);
  await write('Sheet1', 'A1', [[null], [null], [null]]);
});

it('LET, LAMBDA, OFFSET, INDIRECT, SORT and their like have their values after edits, or an error, and ours stay right', async () => {
  await write(
    'Sheet1',
    'A1',
    OWN.map(([formula]) => [formula]),
  );
  for (const [at, span] of [
    [0, 40],
    [2, 52],
    [5, 33.5],
  ] as const) {
    await write('Takeoff', `F${6 + at}`, [[span]]);
    openings = openings.map((each, index) => (index === at ? { ...each, span } : each));
    await engine.settled();
    const spans = openings.map((each) => each.span!);
    const own = await table('Sheet1');
    for (const [row, [formula, value]] of OWN.entries()) {
      const expected = value(spans);
      if (typeof expected === 'number') expect(own[row]![0], formula).toBeCloseTo(expected, 9);
      else expect(own[row]![0], formula).toBe(expected);
    }
    expect(await differences(host, [liveTakeoff(openings, STANDARDS, OPENINGS, STANDARDS)], 1e-9)).toEqual([]);
  }
  // Why an edit takes longer now is told by the formula's place.
  expect(engine.calculation.handedOver).toContain('Sheet1!A1');
  await write(
    'Sheet1',
    'A1',
    OWN.map(() => [null]),
  );
  await write('Takeoff', 'F6', [[31]]);
  await engine.settled();
  expect(engine.calculation.handedOver).toBeNull();
});
