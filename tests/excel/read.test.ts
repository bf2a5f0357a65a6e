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
