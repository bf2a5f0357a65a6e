import { OfficeMockObject } from 'office-addin-mock';
import { beforeEach, describe, expect, test } from 'vitest';
import { readSchedule } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import { cellValue } from '../../taskpane/excel/cellValue';
import { excelHost } from '../../taskpane/excel/excelHost';
import { FakeWorkbook } from './fakeExcel';
import { install } from './officeJs';

const host = excelHost();
let book: FakeWorkbook;

beforeEach(() => {
  book = new FakeWorkbook({
    Job: [
      [null, null],
      [null, 'Mark', 'Width'],
      [null, 'A1', 36],
      [null, 'A2', '=C3*2'],
    ],
    Other: [],
  });
  install(book);
});

describe('reading from Excel', () => {
  test('one selected cell stands for the filled region around it', async () => {
    book.selected = 'B3';
    expect(await host.readSelection()).toEqual({
      ok: true,
      value: {
        single: true,
        name: 'Job',
        firstRow: 2,
        rows: [
          ['Mark', 'Width'],
          ['A1', 36],
          ['A2', '=C3*2'],
        ],
      },
    });
  });

  test('a selected block is read as it is, and a whole column only as far as it is filled', async () => {
    book.selected = 'C2:C3';
    expect(await host.readSelection()).toMatchObject({ value: { firstRow: 2, rows: [['Width'], [36]] } });
    book.selected = 'B1:C1048576';
    expect(await host.readSelection()).toMatchObject({ value: { firstRow: 2, rows: { length: 3 } } });
  });

  test('the region round one cell ends at a blank row, as in Excel', async () => {
    book.sheet('Job').cells.set('B6', 'A3');
    book.selected = 'B3';
    expect(await host.readSelection()).toMatchObject({ value: { rows: { length: 3 } } });
    expect(await host.readSheet('Job')).toMatchObject({ value: { rows: { length: 5 } } });
  });

  test('rows that a filter hides are named, whether some are shown or none', async () => {
    book.selected = 'B2:C4';
    expect(await host.readSelection()).not.toHaveProperty('value.hiddenRows');
    book.sheet('Job').hiddenRows.add(2);
    expect(await host.readSelection()).toMatchObject({ value: { hiddenRows: [3], rows: { length: 3 } } });
    for (const row of [1, 3]) book.sheet('Job').hiddenRows.add(row);
    expect(await host.readSelection()).toMatchObject({ value: { hiddenRows: [2, 3, 4] } });
  });

  test('a cell with a data type is read as its plain value', async () => {
    book.sheet('Job').results.set('C3', { type: 'FormattedNumber', basicValue: 36.5, numberFormat: '0.0' });
    const read = await host.readSheet('Job');
    expect(read.ok && read.value?.rows[1]).toEqual([null, 'A1', 36.5]);
  });

  test('a formula that comes back with @ in front of our names reads as it was written', async () => {
    book.sheet('Job').cells.set('C3', '=@ARCH.RADIUS(36,@Shop_reveal)+@mine');
    const read = await host.readFormulas('Job');
    expect(read.ok && read.value?.rows[1]?.[2]).toBe('=ARCH.RADIUS(36,Shop_reveal)+@mine');
  });

  test('whether a sheet is filled is asked without its cells', async () => {
    expect(await host.isFilled('Job')).toEqual({ ok: true, value: true });
    expect(await host.isFilled('Other')).toEqual({ ok: true, value: false });
    expect(await host.isFilled('Nowhere')).toEqual({ ok: true, value: false });
    expect(JSON.stringify(book.requests)).not.toMatch(/values|formulas/i);
  });

  test('a large sheet comes in blocks of rows, each answer under 5 MB, also where rows grow on the way', async () => {
    const rows = Array.from({ length: 3000 }, (_, row) => [row, 'x'.repeat(row < 1500 ? 20 : 6000), '=A1']);
    book = new FakeWorkbook({ Large: rows });
    install(book);
    const read = await host.readSheet('Large');
    expect(read.ok && read.value?.rows).toEqual(rows);
    expect(Math.max(...book.syncs.map(({ answer }) => answer))).toBeGreaterThan(5_000_000); // refused, then asked for less
    expect(book.syncs.length).toBeLessThan(20);
  });

  test('an empty selection is refused in words', async () => {
    book.selected = 'F9:G10';
    expect(await host.readSelection()).toEqual({ ok: false, message: expect.stringContaining('are empty') });
  });

  test('a sheet is read from column A on, with its first filled row', async () => {
    expect(await host.readSheet('Job')).toMatchObject({
      value: {
        firstRow: 2,
        rows: [
          [null, 'Mark', 'Width'],
          [null, 'A1', 36],
          [null, 'A2', '=C3*2'],
        ],
      } as object,
    });
  });

  test('an empty sheet has no rows, and a missing one is null', async () => {
    expect(await host.readSheet('Other')).toEqual({ ok: true, value: { name: 'Other', firstRow: 1, rows: [] } });
    expect(await host.readSheet('Nowhere')).toEqual({ ok: true, value: null });
  });

  test('the cell at hand gives its formula, or none for a constant', async () => {
    book.selected = 'C4';
    expect(await host.cellAt()).toMatchObject({
      value: { sheet: 'Job', address: 'C4', row: 3, column: 2, formula: '=C3*2' },
    });
    book.selected = 'B3';
    expect(await host.cellAt()).toMatchObject({ value: { formula: '', value: 'A1' } });
  });

  test('only visible sheets are named', async () => {
    book.sheet('Other').visibility = 'Hidden';
    expect(await host.sheetNames()).toEqual({ ok: true, value: ['Job'] });
  });

  test('a note is kept with the workbook', async () => {
    expect(await host.readSetting('unit')).toEqual({ ok: true, value: null });
    await host.saveSetting('unit', 'mm');
    expect(await host.readSetting('unit')).toEqual({ ok: true, value: 'mm' });
  });

  test('showing a sheet that is gone is refused in words', async () => {
    expect(await host.show('Nowhere', 'A1')).toEqual({ ok: false, message: 'There is no sheet "Nowhere".' });
    expect((await host.show('Other', 'B2')).ok).toBe(true);
    expect([book.active, book.selected]).toEqual(['Other', 'B2']);
  });
});

describe('against an independent mock of Office.js', () => {
  test('the cell at hand is loaded and synced before it is read', async () => {
    const cell = {
      address: 'Job!B2',
      rowIndex: 1,
      columnIndex: 1,
      formulas: [['=ARCH.RADIUS(36,6)']],
      values: [[30]],
      worksheet: { name: 'Job' },
    };
    const mock = new OfficeMockObject({
      context: {
        workbook: {
          range: {
            cell,
            getCell() {
              return (this as unknown as { cell: unknown }).cell;
            },
          },
          getSelectedRange() {
            return (this as unknown as { range: unknown }).range;
          },
        },
      },
      run: async function (this: { context: unknown }, visit: (context: unknown) => Promise<unknown>) {
        return visit(this.context);
      },
    } as never);
    Object.assign(globalThis, { Excel: mock });
    expect(await host.cellAt()).toEqual({
      ok: true,
      value: { sheet: 'Job', address: 'B2', row: 1, column: 1, formula: '=ARCH.RADIUS(36,6)', value: 30, error: null },
    });
  });
});

describe('a number that a spreadsheet shows as a date', () => {
  // 2 January 2025 is day 45659 (checked in LibreOffice Calc): what a program makes of a typed 1/2.
  test('is the day it stands for, and a plain number stays one', () => {
    expect(cellValue(45659, 'd-mmm')).toEqual(new Date(Date.UTC(2025, 0, 2)));
    expect(cellValue(45659, 'General')).toBe(45659);
    expect(cellValue(36.5, '# ??/16')).toBe(36.5);
  });

  test('is recognized as a fraction in a range that is read as a schedule', async () => {
    book = new FakeWorkbook({
      Job: [
        ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Reveal'],
        ['W1', 1, 'segmental', 36, 6, 45659],
      ],
    });
    book.sheet('Job').formats.set('F2', 'd-mmm');
    install(book);
    const table = await host.readSheet('Job');
    const schedule = table.ok && table.value ? readSchedule(table.value, defaultStandards()) : null;
    expect(schedule).toMatchObject({ ok: true, value: { openings: [{ mark: 'W1', reveal: null }] } });
    expect(JSON.stringify(schedule)).toContain('what a spreadsheet program makes of 1/2');
  });
});
