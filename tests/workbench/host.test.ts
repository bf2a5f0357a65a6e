import { afterEach, beforeEach, expect, test } from 'vitest';
import { ok } from '../../src/result';
import type { Cell, Sheet } from '../../src/workbook/sheet';
import type { Engine } from '../../taskpane/workbench/engine';
import type { GridFunction } from '../../taskpane/workbench/functions';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';

let calls = 0;
const DOUBLE: GridFunction = {
  name: 'ARCH.DOUBLE',
  description: 'Twice the number.',
  parameters: [{ name: 'number', description: 'any number', optional: false }],
  call: ([number]) => {
    calls++;
    return ok(2 * Number(number));
  },
};

let engine: Engine;
let host: WorkbenchHost;
beforeEach(() => {
  calls = 0;
  engine = startHeadless([DOUBLE]);
  host = new WorkbenchHost(engine);
});
afterEach(() => engine.univer.dispose());

const figure = (value: number, formula: string): Cell => ({ value, formula, style: 'figure', format: '0.00' });
function book(reveal: number, rows: number): Sheet[] {
  const plain = { widths: [10, 10, 10, 10], frozenRows: 1, frozenColumns: 1, home: 'A2' };
  const standards: Sheet = {
    ...plain,
    name: 'Standards',
    rows: [
      [
        { value: 'Setting', style: 'heading' },
        { value: 'Value', style: 'heading' },
      ],
      [{ value: 'Reveal' }, { value: reveal, style: 'input', format: '0.00' }],
    ],
    names: [{ name: 'Shop_reveal', ref: 'Standards!$B$2' }],
  };
  const takeoff: Sheet = {
    ...plain,
    name: 'Takeoff',
    folded: [{ first: 2, last: 2 }],
    rows: [
      ['Mark', 'Span', 'Working', 'Length'].map((value): Cell => ({ value, style: 'heading' })),
      ...Array.from({ length: rows }, (_, index): (Cell | null)[] => {
        const row = index + 2;
        return [
          { value: index === 0 ? '1/2' : index === 1 ? '=A1' : `W${index}`, style: 'input' },
          { value: index + 10, style: 'input', format: '0.00' },
          figure(2 * (index + 10), `ARCH.DOUBLE(B${row})`),
          figure(2 * (index + 10) + reveal, `C${row}+Shop_reveal`),
        ];
      }),
      [null, null, null, figure(rows * (2 * 10 + rows - 1 + reveal), `SUM(D2:D${rows + 1})`)],
    ],
  };
  return [standards, takeoff];
}
const rowsOf = async (name: string) => {
  const read = await host.readSheet(name);
  return read.ok ? (read.value?.rows ?? null) : null;
};

test('sheets read back as they were given: values exact, text as text, formulas with =', async () => {
  expect(await host.writeSheets(book(0.1 + 0.2, 3), { replace: [] })).toEqual({ ok: true, value: undefined });
  expect(await rowsOf('Takeoff')).toEqual([
    ['Mark', 'Span', 'Working', 'Length'],
    ['1/2', 10, 20, 20 + 0.1 + 0.2],
    ['=A1', 11, 22, 22 + (0.1 + 0.2)],
    ['W2', 12, 24, 24 + (0.1 + 0.2)],
    [null, null, null, 3 * (20 + 2 + 0.1 + 0.2)],
  ]);
  const formulas = await host.readFormulas('Takeoff');
  expect(formulas.ok && formulas.value?.rows[1]).toEqual(['1/2', 10, '=ARCH.DOUBLE(B2)', '=C2+Shop_reveal']);
  expect(await host.sheetNames()).toEqual({ ok: true, value: ['Sheet1', 'Standards', 'Takeoff'] });
});

test('a written workbook is live: a setting changed by its cell is followed to the total', async () => {
  await host.writeSheets(book(1, 3), { replace: [] });
  await host.writeCells('Standards', 'B2', [[5]], true);
  await engine.settled();
  expect((await rowsOf('Takeoff'))!.map((row) => row[3])).toEqual(['Length', 25, 27, 29, 81]);
});

test('only what follows from an edited cell is calculated again', async () => {
  await host.writeSheets(book(1, 200), { replace: [] });
  await engine.settled();
  calls = 0;
  await host.writeCells('Takeoff', 'B5', [[100]], true);
  await engine.settled();
  expect(calls).toBe(1);
  expect((await rowsOf('Takeoff'))![4]).toEqual(['W3', 100, 200, 201]);
});

test('a sheet that holds something is refused unless it may be replaced, and then nothing is written', async () => {
  await host.writeSheets([book(1, 3)[1]!], { replace: [] });
  const refused = await host.writeSheets(book(2, 5), { replace: ['Standards'] });
  expect(refused).toEqual({ ok: false, message: 'The sheet "Takeoff" already holds something. Nothing was written.' });
  expect(await host.sheetNames()).toEqual({ ok: true, value: ['Sheet1', 'Takeoff'] });
});

test('replacing keeps the place of each sheet, and one undo brings the old ones back', async () => {
  await host.writeSheets(book(1, 3), { replace: [] });
  await host.writeCells('Sheet1', 'A1', [['=Takeoff!D2']], true);
  await engine.settled();
  await host.writeSheets(book(2, 4), { replace: ['Standards', 'Takeoff'] });
  await engine.settled();
  expect(await host.sheetNames()).toEqual({ ok: true, value: ['Sheet1', 'Standards', 'Takeoff'] });
  expect((await rowsOf('Takeoff'))!.length).toBe(6);
  expect(await rowsOf('Sheet1')).toEqual([[22]]);

  await engine.api.undo();
  await engine.settled();
  expect(await host.sheetNames()).toEqual({ ok: true, value: ['Sheet1', 'Standards', 'Takeoff'] });
  expect((await rowsOf('Takeoff'))!.map((row) => row[3])).toEqual(['Length', 21, 23, 25, 69]);
  expect(await rowsOf('Sheet1')).toEqual([[21]]);
});

test('a workbook of nothing but the written sheets can be written again', async () => {
  await host.writeSheets(book(1, 3), { replace: [] });
  engine.api.getActiveWorkbook()!.deleteSheet('first');
  expect(await host.sheetNames()).toEqual({ ok: true, value: ['Standards', 'Takeoff'] });
  expect(await host.writeSheets(book(2, 3), { replace: ['Standards', 'Takeoff'] })).toMatchObject({ ok: true });
  await engine.settled();
  expect(await host.sheetNames()).toEqual({ ok: true, value: ['Standards', 'Takeoff'] });
  expect((await rowsOf('Takeoff'))!.at(-1)).toEqual([null, null, null, 72]);
});

test('a stop leaves the workbook as it was', async () => {
  const stop = new AbortController();
  const seen: number[] = [];
  const stopped = await host.writeSheets(book(1, 1000), {
    replace: [],
    signal: stop.signal,
    onProgress: (done, of) => {
      seen.push(done / of);
      if (done / of > 0.5) stop.abort();
    },
  });
  expect(stopped).toEqual({ ok: false, message: 'Stopped. The workbook is as it was.' });
  expect(seen.at(-1)).toBeGreaterThan(0.5);
  expect(seen.at(-1)).toBeLessThan(1);
  expect(await host.sheetNames()).toEqual({ ok: true, value: ['Sheet1'] });
});

test('cells that hold something are not overwritten unasked', async () => {
  await host.writeCells('Sheet1', 'B2', [['kept']], false);
  expect(
    await host.writeCells(
      'Sheet1',
      'A1',
      [
        [1, 2],
        [3, 4],
      ],
      false,
    ),
  ).toEqual({
    ok: false,
    message: 'Sheet1!B2 already holds something. Nothing was written.',
  });
  expect(await rowsOf('Sheet1')).toEqual([
    [null, null],
    [null, 'kept'],
  ]);
});

test('one selected cell stands for the filled block around it', async () => {
  await host.writeCells(
    'Sheet1',
    'C3',
    [
      ['Mark', 'Span'],
      ['W1', 36],
      [null, 40],
    ],
    false,
  );
  await host.writeCells('Sheet1', 'A9', [['elsewhere']], false);
  await host.show('Sheet1', 'D4');
  expect(await host.readSelection()).toEqual({
    ok: true,
    value: {
      single: true,
      name: 'Sheet1',
      firstRow: 3,
      rows: [
        ['Mark', 'Span'],
        ['W1', 36],
        [null, 40],
      ],
    },
  });
  await host.show('Sheet1', 'D4:D20');
  expect(await host.readSelection()).toMatchObject({
    value: { firstRow: 4, rows: expect.arrayContaining([[36], [40]]) },
  });
  await host.show('Sheet1', 'H30');
  expect(await host.readSelection()).toMatchObject({ ok: false });
});

test('who listens for edits is called once, after what follows from the edit is calculated', async () => {
  await host.writeSheets(book(1, 3), { replace: [] });
  await engine.settled();
  const heard: unknown[] = [];
  const stop = host.onEdit(async (sheet) => heard.push([sheet, (await rowsOf('Takeoff'))![1]![3]]));
  await host.writeCells('Standards', 'B2', [[5]], true);
  await engine.settled();
  await engine.settled();
  expect(heard).toEqual([['Standards', 25]]);
  stop();
  await host.writeCells('Standards', 'B2', [[6]], true);
  await engine.settled();
  await engine.settled();
  expect(heard.length).toBe(1);
});

test('settings are kept with the workbook', async () => {
  expect(await host.readSetting('fill')).toEqual({ ok: true, value: null });
  await host.saveSetting('fill', 'x');
  expect(await host.readSetting('fill')).toEqual({ ok: true, value: 'x' });
  expect(engine.workbook.save().custom).toEqual({ settings: { fill: 'x' } });
});

test('a missing sheet reads as null, and what can not be shown or written says why', async () => {
  expect(await host.readSheet('Nowhere')).toEqual({ ok: true, value: null });
  expect(await host.show('Nowhere', 'A1')).toEqual({ ok: false, message: 'There is no sheet "Nowhere".' });
  expect(await host.writeCells('Sheet1', 'B', [[1]], true)).toMatchObject({ ok: false });
});

test('a number that the grid shows as a date is read as a date, and one shown as a fraction as a number', async () => {
  await host.writeSheets(
    [
      {
        name: 'Schedule',
        rows: [[45659, 'd-mmm'], [0.5, '# ??/16'], [45659]].map(([value, format]) => [
          { value: value ?? null, ...(format === undefined ? {} : { format: String(format) }) },
        ]),
        widths: [10],
        frozenRows: 0,
        frozenColumns: 0,
        home: 'A1',
      },
    ],
    { replace: [] },
  );
  expect(await host.readSheet('Schedule')).toMatchObject({
    value: { rows: [[new Date(Date.UTC(2025, 0, 2))], [0.5], [45659]] },
  });
});
