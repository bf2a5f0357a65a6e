import { describe, expect, it } from 'vitest';
import { openingInRow } from '../../../../taskpane/pane/cell/takeoffRow';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { readList } from '../bench';

describe('a row of the Takeoff sheet', () => {
  it('is read back as the opening it stands for, with what was changed there', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    const sheet = host.written.get('Takeoff');
    const row = sheet?.body?.[0] ?? 0;
    const column = sheet?.columnKeys?.indexOf('span') ?? -1;
    host.edit('Takeoff', `${String.fromCharCode(65 + column)}${row}`, 40);
    const table = await host.readSheet('Takeoff');
    expect(table.ok && table.value && openingInRow(table.value, row, 'in')).toMatchObject({
      mark: 'W1',
      span: 40,
      rise: 6,
      quantity: 2,
    });
    // The workbook may be about to change to millimeters, and the sheet not filled again yet.
    const metric = table.ok && table.value ? openingInRow(table.value, row, 'mm') : null;
    expect(metric?.span).toBeCloseTo(1016, 9);
    expect(metric?.rise).toBeCloseTo(6 * 25.4, 9);
    // A blank is the shop's standard.
    expect(metric).toMatchObject({ mark: 'W1', quantity: 2, reveal: null });
    expect(table.ok && table.value && openingInRow(table.value, 1, 'in')).toBeNull();
    expect(table.ok && table.value && openingInRow(table.value, row - 1, 'in')).toBeNull();
  });
});
