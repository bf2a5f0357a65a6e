import { describe, expect, test } from 'vitest';
import type { Cell, Sheet } from '../../../src/workbook/sheet';
import { MemoryHost } from '../../../taskpane/memory/host';

const cell = (value: Cell['value'], more: Partial<Cell> = {}): Cell => ({ value, ...more });

function sheet(rows: Sheet['rows'], more: Partial<Sheet> = {}): Sheet {
  return { name: 'Takeoff', rows, widths: [10], frozenRows: 0, frozenColumns: 0, home: 'A1', ...more };
}

describe('the workbook in memory', () => {
  test('gives back what was written, formulas with their =', async () => {
    const host = new MemoryHost();
    expect(
      (await host.writeSheets([sheet([[cell('R'), cell(30, { formula: 'ARCH.RADIUS(36,6)' })]])], { replace: [] })).ok,
    ).toBe(true);
    expect(host.cell('Takeoff', 'B1')).toEqual({ value: 30, formula: '=ARCH.RADIUS(36,6)' });
    expect(await host.readFormulas('Takeoff')).toMatchObject({ value: { rows: [['R', '=ARCH.RADIUS(36,6)']] } });
    expect(await host.sheetNames()).toEqual({ ok: true, value: ['Sheet1', 'Takeoff'] });
  });

  test('a single selected cell stands for the filled region around it', async () => {
    const host = new MemoryHost({
      Job: [['title'], [], [null, 'Mark', 'Width'], [null, 'A1', 36], [], [null, 'apart']],
    });
    host.select('Job', 'C4');
    expect(await host.readSelection()).toEqual({
      ok: true,
      value: {
        single: true,
        name: 'Job',
        firstRow: 3,
        rows: [
          ['Mark', 'Width'],
          ['A1', 36],
        ],
      },
    });
    host.select('Job', 'E9');
    expect((await host.readSelection()).ok).toBe(false);
  });

  test.each<[string, Sheet]>([
    ['a number that is none', sheet([[cell(NaN)]])],
    ['an infinite number', sheet([[cell(Infinity)]])],
    ['a formula with =', sheet([[cell(1, { formula: '=1' })]])],
    ['a formula with undefined in it', sheet([[cell(1, { formula: 'SUM(A1,undefined)' })]])],
    ['a formula in a stored spelling', sheet([[cell(1, { formula: '_xldudf_ARCH_RADIUS(1,1)' })]])],
    ['an undefined cell', sheet([[undefined as never]])],
    ['text longer than a cell holds', sheet([[cell('x'.repeat(40_000))]])],
    ['a name that looks like a cell', sheet([[cell(1)]], { names: [{ name: 'AB12', ref: 'Takeoff!$A$1' }] })],
    ['a name that points nowhere', sheet([[cell(1)]], { names: [{ name: 'Shop_x', ref: 'Nowhere!$A$1' }] })],
    ['a home that is no cell', sheet([[cell(1)]], { home: 'top' })],
    ['a column wider than Excel has', sheet([[cell(1)]], { widths: [300] })],
    [
      'choices longer than Excel keeps',
      sheet([[cell(1)]], {
        validations: [{ range: 'A1', rule: { kind: 'list', choices: ['x'.repeat(256)] }, message: '' }],
      }),
    ],
  ])('refuses %s, in words and without writing', async (_, faulty) => {
    const host = new MemoryHost();
    const refused = await host.writeSheets([faulty], { replace: [] });
    expect(refused.ok).toBe(false);
    expect(!refused.ok && refused.message.length).toBeGreaterThan(10);
    expect(await host.sheetNames()).toEqual({ ok: true, value: ['Sheet1'] });
  });

  test('a filled sheet is replaced only where that was allowed', async () => {
    const host = new MemoryHost({ Takeoff: [['mine']] });
    expect((await host.writeSheets([sheet([[cell(1)]])], { replace: [] })).ok).toBe(false);
    expect(host.cell('Takeoff', 'A1')?.value).toBe('mine');
    expect((await host.writeSheets([sheet([[cell(1)]])], { replace: ['Takeoff'] })).ok).toBe(true);
    expect(host.cell('Takeoff', 'A1')?.value).toBe(1);
  });

  test('a failure or a stop between two sheets leaves everything as it was', async () => {
    const stock = sheet([[cell(2)]], { name: 'Stock' });
    const host = new MemoryHost();
    host.faults.failAfterSheets = 1;
    expect((await host.writeSheets([sheet([[cell(1)]]), stock], { replace: [] })).ok).toBe(false);
    host.faults.failAfterSheets = undefined;
    const stop = new AbortController();
    const stopped = await host.writeSheets([sheet([[cell(1)]]), stock], {
      replace: [],
      signal: stop.signal,
      onProgress: () => stop.abort(),
    });
    expect(stopped.ok).toBe(false);
    expect(await host.sheetNames()).toEqual({ ok: true, value: ['Sheet1'] });
  });

  test('a cell being edited and a protected sheet refuse in words', async () => {
    const host = new MemoryHost();
    host.faults.editing = true;
    expect(await host.writeCells('Sheet1', 'A1', [[1]], false)).toMatchObject({
      ok: false,
      message: expect.stringContaining('edited') as string,
    });
    host.faults.editing = false;
    host.faults.protectedSheets = ['Sheet1'];
    expect(await host.writeCells('Sheet1', 'A1', [[1]], false)).toMatchObject({
      ok: false,
      message: expect.stringContaining('protected') as string,
    });
  });

  test('cells are written only over empty ones unless told to, and only as a rectangle', async () => {
    const host = new MemoryHost({ Sheet1: [[1]] });
    expect((await host.writeCells('Sheet1', 'A1', [[2]], false)).ok).toBe(false);
    expect((await host.writeCells('Sheet1', 'A1', [[2], [3, 4]], true)).ok).toBe(false);
    expect((await host.writeCells('Sheet1', 'A1', [[2, '=A1']], true)).ok).toBe(true);
    expect(host.cell('Sheet1', 'B1')).toEqual({ value: null, formula: '=A1' });
  });

  test('listeners hear of selections and edits until they are taken off', () => {
    const host = new MemoryHost();
    const heard: string[] = [];
    const stops = [host.onSelect(() => heard.push('select')), host.onEdit((name) => heard.push(`edit ${name}`))];
    host.select('Sheet1', 'B2');
    host.edit('Sheet1', 'B2', 5);
    for (const stop of stops) stop();
    host.select('Sheet1', 'B3');
    expect(heard).toEqual(['select', 'edit Sheet1']);
  });
});
