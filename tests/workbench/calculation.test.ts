import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { workbookSheets } from '../../src/workbook/workbook';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import { calculateByLibrary } from '../../taskpane/workbench/calculation/dirty';
import { cellData, cellError, type Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { random } from '../random';
import { randomOpenings, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';

let engine: Engine;
let host: WorkbenchHost;
beforeEach(() => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
});
afterEach(() => engine.univer.dispose());

type Typed = string | number | boolean | null;

async function type(address: string, rows: readonly (readonly Typed[])[], sheet = 'Sheet1') {
  valueOf(await host.writeCells(sheet, address, rows, true));
  await engine.settled();
}
const cells = async (sheet = 'Sheet1') => valueOf(await host.readSheet(sheet))!.rows;

/**
 * Figures to the digits that both keep: the library takes away what it holds for an error of the binary fraction, and joins
 * 17 digits to a text where spreadsheets join 15.
 */
async function figures(sheet: string) {
  const rows = await cells(sheet);
  const kept = (figure: number) => Number(figure.toPrecision(12));
  return rows.map((row) =>
    row.map((cell) =>
      typeof cell === 'number'
        ? kept(cell)
        : typeof cell === 'string'
          ? cell.replace(/\d+\.\d{9,}/g, (digits) => String(kept(Number(digits))))
          : cell,
    ),
  );
}

/** Values of every kind, and formulas of every rule that is kept here. */
const VALUES: Typed[][] = [
  [3, 'Oak', true, 12.5],
  [-1.25, 'oak', false, null],
  [0, '', null, 7],
  [null, 'Ash', 40, 0.125],
  [8, 'Elm', 'x', 3],
];
const FORMULAS = [
  ...['A1+A2*D1-D3/A1', 'A1/A3', '-A2', '50%*A5', 'A4+1', 'C1+1', 'B1+1', 'A1=3', 'B1=B2', 'B1="ash"', 'A4=0', 'A4=""'],
  ...[
    'B3=""',
    'A1<>A2',
    'A1<A5',
    'A5>=8',
    '"<"&A1&B1&C1&"|"&A4',
    'IF(A1>2,"more","less")',
    'IF(A3,1)',
    'IF(C1,1,2)',
    'IF(A1>0,D2,1)',
  ],
  ...['IFERROR(A1/A3,"none")', 'IFERROR(VLOOKUP("fir",B1:D5,3,FALSE),-1)', 'VLOOKUP("ASH",B1:D5,3,FALSE)'],
  ...[
    'VLOOKUP(8,A1:D5,2,FALSE)',
    'VLOOKUP("fir",B1:D5,2,FALSE)',
    'MATCH("elm",B1:B5,0)',
    'INDEX(A1:D5,2,4)',
    'INDEX(A1:A5,3)',
  ],
  ...['INDEX(A1:A5,9)', 'SUM(A1:D5)', 'SUM(A1:A5,D1:D5,2)', 'MAX(A1:A5)', 'MIN(A1:D5)', 'MAX(A4)', 'COUNT(A1:D5)'],
  ...[
    'COUNTIF(B1:B5,"oak")',
    'COUNTIF(A1:A5,0)',
    'COUNTIF(B1:B5,"")',
    'ROUND(A2,1)',
    'ROUND(2.675,2)',
    'ROUND(-0.5,0)',
  ],
  ...['SUMPRODUCT(--(B1:B5="oak"))', 'SUMPRODUCT(--(A1:A5>0),D1:D5)', 'SUMPRODUCT(--(COUNTIF(B1:B5,B1:B2)=2))'],
  ...[
    'SUMPRODUCT(--ISFORMULA(A1:F1))',
    'ISERROR(A1/A3)',
    'ISNUMBER(A1)',
    'NOT(A3)',
    'AND(A1>0,C1)',
    'OR(A3,C2)',
    'N(B1)',
    'N(C1)',
  ],
  ...[
    'TEXTJOIN("|",FALSE,A1:D3)',
    'TEXTJOIN(", ",TRUE,B1:B5,A1)',
    'TRIM(TEXT(ROUND(A2*16,0)/16,"# ??/??"))',
    'ABS(A2)',
    'SQRT(A5+1)',
  ],
  ...['SUM(ARCH.PLIES(1.25,0.75))', 'TEXTJOIN(", ",TRUE,ARCH.PLIES(1.25,0.75))', 'COUNT(ARCH.PLIES(1.25,0.75))'],
];

/** The formulas down column F, and their values. */
async function formulasOf(list: readonly string[]) {
  await type(
    'F1',
    list.map((formula) => [`=${formula}`]),
  );
  return async () => (await cells()).slice(0, list.length).map((row, at) => [list[at], row[5]]);
}

describe('what is calculated here is what the library calculates', () => {
  it.each([
    ['as typed', [] as [string, Typed][]],
    [
      'after numbers change',
      [
        ['A1', 5],
        ['D4', 2],
        ['A3', 4],
      ] as [string, Typed][],
    ],
    [
      'after words change',
      [
        ['B1', 'Fir'],
        ['B5', 'oak'],
        ['C5', true],
      ] as [string, Typed][],
    ],
    [
      'after cells are cleared',
      [
        ['A1', null],
        ['B2', null],
      ] as [string, Typed][],
    ],
  ])('%s', async (_when, edits) => {
    await type('A1', VALUES);
    const read = await formulasOf(FORMULAS);
    for (const [address, value] of edits) await type(address, [[value]]);
    const ours = await read();
    expect(engine.calculation.handedOver).toBeNull();
    await calculateByLibrary(engine, { forceCalculation: true });
    expect(ours).toEqual(await read());
  });

  it('of a whole takeoff, after a span, a setting and a cleared rise', async () => {
    const openings = randomOpenings(12, random(5));
    valueOf(
      await host.writeSheets(workbookSheets(scheduleOf(openings), takeoff(openings, defaultStandards())), {
        replace: [],
      }),
    );
    await engine.settled();
    await type('F6', [[44]], 'Takeoff');
    await type('B8', [[0.25]], 'Standards');
    await type('G7', [[null]], 'Takeoff');
    const sheets = ['Takeoff', 'Stock', 'Standards', 'Schedule'];
    const ours = await Promise.all(sheets.map(figures));
    expect(engine.calculation.handedOver).toBeNull();
    await calculateByLibrary(engine, { forceCalculation: true });
    expect(ours).toEqual(await Promise.all(sheets.map(figures)));
  });
});

describe('a change in how formulas lie', () => {
  it('is followed: a formula typed over, one typed anew, one taken out', async () => {
    await type('A1', [[1], ['=A1+1'], ['=A2*10']]);
    expect(await cells()).toEqual([[1], [2], [20]]);
    await type('A2', [[7]]);
    expect(await cells()).toEqual([[1], [7], [70]]);
    await type('A2', [['=A1+2']]);
    await type('A1', [[4]]);
    expect(await cells()).toEqual([[4], [6], [60]]);
    await type('A2', [[null]]);
    expect((await cells())[2]).toEqual([0]);
  });

  it('leaves a formula that only its own calculation tells what it reads to the library, with all that follow', async () => {
    await type('A1', [[1], [2], ['=OFFSET(A1,1,0)'], ['=A3*10']]);
    expect(await cells()).toEqual([[1], [2], [2], [20]]);
    expect(engine.calculation.handedOver).toContain('Sheet1');
    await type('A2', [[5]]);
    expect(await cells()).toEqual([[1], [5], [5], [50]]);
    await type('A3', [['=A2']]);
    await type('A2', [[6]]);
    expect(await cells()).toEqual([[1], [6], [6], [60]]);
    expect(engine.calculation.handedOver).toBeNull();
  });

  it('spills over more cells, fewer, and none where one is in the way', async () => {
    await type('C1', [[1], [2], [3]]);
    await type('A1', [['=C1:C3*10']]);
    await type('E1', [['=SUM(A1:A5)']]);
    expect((await cells()).map(([first]) => first)).toEqual([10, 20, 30]);
    expect((await cells())[0]![4]).toBe(60);
    await type('C2', [[5]]);
    expect((await cells())[0]![4]).toBe(90);
    await type('A2', [['here']]);
    expect((await cells())[0]![0]).toBe('#SPILL!');
    await type('A2', [[null]]);
    expect((await cells())[0]).toMatchObject({ 0: 10, 4: 90 });
    await type('A1', [['=C1:C2*10']]);
    expect((await cells())[0]![4]).toBe(60);
  });

  it('a formula that the library fails at is an error with its sentence, in either way to calculate', async () => {
    await type('A1', [['=BASE(7,2,5000000000)'], ['=A1'], ['=1+1'], ['=IFERROR(A1,"none")'], ['=REPT("x",C1)']]);
    await type('C1', [[5_000_000_000]]);
    expect(engine.calculation.handedOver).toBeNull();
    expect((await cells()).map(([first]) => first)).toEqual(['#VALUE!', '#VALUE!', 2, 'none', '#VALUE!']);
    const cell = cellData(engine, engine.workbook.getSheetBySheetName('Sheet1')!, 0, 0);
    expect(cellError(cell)).toBe("The formula couldn't be worked out: Invalid array length.");
    await type('B1', [['=OFFSET(A3,0,0)'], ['=BASE(B1,2,5000000000)'], ['=B1*2']]);
    expect(engine.calculation.handedOver).not.toBeNull();
    expect((await cells()).slice(0, 3).map(([, second]) => second)).toEqual([2, '#VALUE!', 4]);
  });
});

it.each(['=1+', '=SUM(A1', '="open', '=1)'])(
  '%s can not be read: an error in its cell, and no more',
  async (formula) => {
    await type('A1', [[2], [formula], ['=A1*2'], ['=A2+1']]);
    expect(await cells()).toEqual([[2], ['#VALUE!'], [4], ['#VALUE!']]);
    expect(engine.calculation.handedOver).toBeNull();
  },
);

it('a name that stands for an empty text shows nothing', async () => {
  await type('A1', [[null], ['=IF(A1="","","x")'], ['=Word'], ['=A1'], ['=Word=""'], ['=Word&"y"']]);
  engine.api.getActiveWorkbook()!.insertDefinedName('Word', 'Sheet1!$A$2');
  await engine.settled();
  expect((await cells()).map(([first]) => first ?? null)).toEqual([null, null, null, 0, true, 'y']);
  expect(cellData(engine, engine.workbook.getSheetBySheetName('Sheet1')!, 2, 0)?.v).toBe('');
});

describe('as spreadsheets have it, where the library has it otherwise or not at all', () => {
  it.each([
    ['0.1+0.2=0.3', true],
    ['0.1+0.2>0.3', false],
    ['0.1+0.2<=0.3', true],
    ['A1+A2<>A3', false],
    ['0.1+0.2-0.3', 0],
    ['SUM(A1+A2,-A3)', 0],
    ['1.00000000000001=1', false],
    ['COUNTIF(D1:D2,0.3)', 2],
    ['MATCH(A1+A2,A1:A3,0)', 3],
    ['AND(A9,TRUE)', true],
    ['AND(A9,B1)', '#VALUE!'],
    ['AND(A1:A9)', true],
    ['AND(A1:B3,C1)', false],
    ['AND(B1,TRUE)', true],
    ['AND("text",TRUE)', '#VALUE!'],
    ['AND("true",TRUE)', true],
    ['OR(A9,A8)', '#VALUE!'],
    ['OR(A9,C1)', false],
    ['OR(A7:B9,A1)', true],
    ['OR(C1,A1/0)', '#DIV/0!'],
    ['IF(AND(A9,A1),"both","not")', 'both'],
    ['Gone!A1', '#REF!'],
    ['Gone!A1+1', '#REF!'],
    ['Gone!A1&""', '#REF!'],
    ['SUM(Gone!A1:A3)', '#REF!'],
    ['SUM(Gone!A:A)', '#REF!'],
    ['ARCH.RADIUS(Gone!A1,6)', '#REF!'],
    ['IFERROR(Gone!A1,"none")', 'none'],
  ] as const)('%s is %s', async (formula, expected) => {
    await type('A1', [
      [0.1, 'text', false, '=A1+A2'],
      [0.2, '', null, 0.3],
      [0.3, null, null, null],
    ]);
    await type('F1', [[`=${formula}`]]);
    expect(engine.calculation.handedOver).toBeNull();
    expect((await cells())[0]![5]).toBe(expected);
  });

  it('a sheet that is put in under the name of one that was missing brings the figures; taken out it leaves #REF!', async () => {
    await type('A1', [['=Stock!A1*2'], ['=SUM(Stock!A1:A2)'], ['=Stock!A2']]);
    expect(await cells()).toEqual([['#REF!'], ['#REF!'], ['#REF!']]);
    const book = engine.api.getActiveWorkbook()!;
    book.create('Stock', 5, 5);
    await type('A1', [[7], [8]], 'Stock');
    expect(await cells()).toEqual([[14], [15], [8]]);
    book.deleteSheet(book.getSheetByName('Stock')!);
    await engine.settled();
    expect(await cells()).toEqual([['#REF!'], ['#REF!'], ['#REF!']]);
  });

  it.each([
    ['typed over', 5, 5],
    ['typed over with text', 'here', 0],
    ['cleared', null, 0],
    ['given another formula', '=C3', 3],
    ['given one that spills over less', '=C2:C3*1', 5, 3],
  ] as [string, Typed, number, number?][])(
    "a spill's first cell %s takes the spill away from all that reads it",
    async (_how, typed, sum, second = 0) => {
      await type('C1', [[1], [2], [3]]);
      await type('A1', [['=C1:C3*10']]);
      await type('E1', [['=SUM(A1:A5)'], ['=A2+0'], ['=COUNT(A1:A5)']]);
      expect((await cells()).map((row) => row[4])).toEqual([60, 20, 3]);
      await type('A1', [[typed]]);
      const after = await cells();
      expect(after.map((row) => row[4])).toEqual([sum, second, second > 0 ? 2 : sum > 0 ? 1 : 0]);
      expect(after.slice(1).map(([first]) => first ?? 0)).toEqual([second, 0]);
    },
  );
});

it('changes made one upon another end with the figures of the last, and say nothing on the console', async () => {
  const said = [vi.spyOn(console, 'error'), vi.spyOn(console, 'warn')];
  const openings = randomOpenings(30, random(6));
  valueOf(
    await host.writeSheets(workbookSheets(scheduleOf(openings), takeoff(openings, defaultStandards())), {
      replace: [],
    }),
  );
  for (const span of [40, 41, 42]) {
    void host.writeCells('Takeoff', 'F6', [[span]], true);
    void host.writeCells('Standards', 'B8', [[span / 100]], true);
    await Promise.resolve();
  }
  await engine.settled();
  const ours = await figures('Takeoff');
  expect(ours[5]![5]).toBe(42);
  await calculateByLibrary(engine, { forceCalculation: true });
  expect(ours).toEqual(await figures('Takeoff'));
  for (const spy of said) {
    expect(spy).not.toHaveBeenCalled();
    spy.mockRestore();
  }
});

it('a figure typed over a formula while all are being read stays, and the others follow', async () => {
  // Each of a form of its own, so that they take more than one turn to read.
  const count = 3000;
  const first = Array.from({ length: count }, (_, at) => [`=$A$1*${at + 1}+${at}`, at === 1500 ? '=C1501*2' : null]);
  await type('A1', [[2]]);
  void host.writeCells('Sheet1', 'C1', first, true);
  await new Promise((resolve) => setTimeout(resolve, 1));
  await new Promise((resolve) => setTimeout(resolve, 1));
  await type('C1501', [[7]]);
  const rows = await cells();
  expect([rows[1500]![2], rows[1500]![3], rows[2999]![2]]).toEqual([7, 14, 2 * 3000 + 2999]);
});
