import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Sheet } from '../../src/workbook/sheet';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { watchTyping } from '../../taskpane/workbench/typing';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';

const STANDARDS: Sheet = {
  name: 'Standards',
  rows: [
    [{ value: 'Reveal' }, { value: 0.25, style: 'input', format: '0.000' }],
    [{ value: 'Unit' }, { value: 'in', style: 'input' }],
    [{ value: 'Mark' }, { value: null, style: 'input' }],
    [{ value: 'Radius' }, { value: 30, formula: '36-6', style: 'figure', format: '0.000' }],
    [null, { value: 'Casing width', style: 'heading' }],
    [null, { value: 3.5, style: 'input', format: '# ??/??' }],
  ],
  widths: [],
  frozenRows: 0,
  frozenColumns: 0,
  home: 'A1',
  names: [{ name: 'Shop_unit', ref: 'Standards!$B$2' }],
  validations: [
    { range: 'B1', rule: { kind: 'number', min: 0, max: 6 }, message: 'Reveal is from 0 to 6.' },
    { range: 'B2', rule: { kind: 'list', choices: ['in', 'mm'] }, message: 'Unit is in or mm.' },
  ],
};

let engine: Engine;
let host: WorkbenchHost;
const said: string[] = [];
beforeAll(async () => {
  engine = startHeadless([]);
  host = new WorkbenchHost(engine);
  watchTyping(engine, { refuse: (sentence) => said.push(sentence), accept: () => undefined });
  await host.writeSheets([STANDARDS], { replace: [] });
});
afterAll(() => engine.univer.dispose());

/** What the grid stores when this is typed, by the same door as its cell editor. */
function typed(sheetName: string, row: number, column: number, text: string) {
  const { library, injector, workbook } = engine;
  const sheet = workbook.getSheetBySheetName(sheetName)!;
  const cell = { ...sheet.getCellRaw(row, column), v: text, t: library.core.CellValueType.STRING };
  const stored = injector.get(library.sheets.SheetInterceptorService).onWriteCell(workbook, sheet, row, column, cell);
  return { v: stored?.v, number: stored?.t === library.core.CellValueType.NUMBER, s: stored?.s };
}

test.each([
  ['20 5/16', 20.3125],
  ['3\'-6 1/2"', 42.5],
  ['36-1/2', 36.5],
  ['1/2', 0.5],
  ['6/8', 0.75],
  ['914.4 mm', 36],
])('%s typed into an input that holds a figure is a number of inches', (text, value) => {
  const stored = typed('Standards', 0, 1, text);
  expect(stored.number).toBe(true);
  expect(stored.v).toBeCloseTo(value, 12);
});

test('in a workbook kept in millimeters, dimension text becomes millimeters', async () => {
  await host.writeCells('Standards', 'B2', [['mm']], true);
  expect(typed('Standards', 0, 1, '1/2"').v).toBeCloseTo(12.7, 12);
  expect(typed('Standards', 0, 1, '914 mm').v).toBe(914);
  await host.writeCells('Standards', 'B2', [['in']], true);
});

test('a fraction typed anywhere else is a number shown as a fraction, not a date', () => {
  expect(typed('Sheet1', 0, 0, '1/2')).toMatchObject({ v: 0.5, number: true, s: { n: { pattern: '# ??/??' } } });
  expect(typed('Sheet1', 0, 0, '20 5/16')).toMatchObject({ v: 20.3125, number: true });
});

test('a fraction typed into an input that holds text stays text', () => {
  expect(typed('Standards', 2, 1, '1/2')).toMatchObject({ v: '1/2', number: false });
});

test.each(['W-1', '3\'-6"', '1/0', 'Poplar'])('%s typed into an ordinary cell stays as typed', (text) => {
  expect(typed('Sheet1', 0, 0, text)).toMatchObject({ v: text, number: false });
});

test('a value outside its limits is refused with the sentence that says them', async () => {
  const { library, injector, workbook } = engine;
  const sheet = workbook.getSheetBySheetName('Standards')!;
  const valid = (row: number) =>
    injector.get(library.sheets.SheetInterceptorService).onValidateCell(workbook, sheet, row, 1);
  await host.writeCells('Standards', 'B1', [[7], ['yards']], true);
  said.length = 0;
  expect([await valid(0), await valid(1)]).toEqual([false, false]);
  expect(said).toEqual([
    'Reveal is from 0 to 6. You typed 7; the cell is as it was.',
    'Unit is in or mm. You typed yards; the cell is as it was.',
  ]);
  await host.writeCells('Standards', 'B1', [[0.5], ['in']], true);
  expect([await valid(0), await valid(1)]).not.toContain(false);
});

test.each([
  ['abc', /^Casing width: .*abc/],
  [-5, /^Casing width must not be less than 0; you typed -5/],
  ['6-0', /^Casing width: .*6-0/],
])('%s typed into an input that holds a length is refused under the name of its column', async (typed, sentence) => {
  const { library, injector, workbook } = engine;
  const sheet = workbook.getSheetBySheetName('Standards')!;
  await host.writeCells('Standards', 'B6', [[typed]], true);
  said.length = 0;
  const valid = injector.get(library.sheets.SheetInterceptorService).onValidateCell(workbook, sheet, 5, 1);
  expect(await valid).toBe(false);
  expect(said).toEqual([expect.stringMatching(sentence)]);
});
