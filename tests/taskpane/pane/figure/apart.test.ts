import { expect, it } from 'vitest';
import { figuresApart } from '../../../../taskpane/pane/figure/apart';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { takeoffOnce } from '../../../../taskpane/pane/deeds/rowAtHand';
import { TAKEOFF_COLUMNS } from '../../../../src/workbook/takeoff/columns';
import { inputCell, readList } from '../bench';

it('takes a row of the filled Takeoff apart, and again after an edit', async () => {
  const { host, bench } = await readList();
  await fill(bench, []);
  const taken = (await takeoffOnce(bench))!;
  const row = taken.openings[0]!;
  const found = figuresApart(taken, row, 'en-US');
  expect(found.find(({ name }) => name === 'radius')).toMatchObject({
    heading: 'Opening radius',
    value: '30″',
    by: 'ARCH.HEADRADIUS',
    how: expect.stringContaining('(18² + 6²) ÷ (2 × 6)'),
    from: [
      { name: 'head', value: 'segmental' },
      { name: 'span', value: '36″' },
      { name: 'rise', value: '6″' },
    ],
  });
  // The plan of the workbook prices it, as it does in the sheet.
  const sheet = host.written.get('Takeoff')!;
  const shown = sheet.rows[sheet.body![0] - 1]![sheet.columnKeys!.indexOf('price')]!.value as number;
  const price = shown.toLocaleString('en-US', { style: 'currency', currency: 'USD' });
  expect(found.find(({ name }) => name === 'price')?.value).toBe(price);
  expect(await takeoffOnce(bench)).toBe(taken);

  await host.writeCells('Takeoff', inputCell(host, 'span'), [[40]], true);
  const again = (await takeoffOnce(bench))!;
  expect(again.openings[0]!.known.span).toBe(40);
});

it('knows the figure in every column that is none of the inputs, but for what tells the age of the plan', () => {
  const without = TAKEOFF_COLUMNS.filter(({ role, shows }) => role === 'figure' && shows === undefined);
  expect(without.map(({ key }) => key)).toEqual(['plan']);
});
