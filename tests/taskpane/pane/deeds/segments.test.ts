import { describe, expect, it } from 'vitest';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { findSegments, takeSegments } from '../../../../taskpane/pane/deeds/segments';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { isTakeoffHeading, readTakeoff } from '../../../../src/workbook/takeoff/read';
import { valueOf } from '../../../value';
import { noticeOf, readList } from '../bench';

/** The quarter round alone costs less out of four segments than out of two. */
const LIST = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Casing'],
  ['W1', 1, 'half round', 80.5, null, 3.5],
  ['W3', 1, 'quarter round', 49, null, 3.5],
];

async function filled() {
  const { bench, host } = await readList(new MemoryHost({ List: LIST }));
  await fill(bench, []);
  return { bench, host };
}

const takeoffOf = async (host: MemoryHost) => valueOf(await host.readSheet('Takeoff'))!;
const wanted = async (host: MemoryHost) =>
  readTakeoff(await takeoffOf(host), null, 'in')!.map(({ no, inputs }) => [no, inputs.segmentsWanted]);

describe('other numbers of segments in the pane', () => {
  it('are found, named on Stock, and written as segments wanted of just these openings', async () => {
    const { bench, host } = await filled();
    const steps: number[] = [];
    bench.store.listen(() => steps.push(bench.store.get().work?.done ?? 0));
    const found = (await findSegments(bench))!;
    expect(found.savings.changes).toMatchObject([{ nos: [2], marks: ['W3'], from: 2, to: 4 }]);
    expect(Math.max(...steps)).toBeGreaterThan(3);
    const stock = valueOf(await host.readSheet('Stock'))!.rows;
    const at = stock.findIndex(([cell]) => cell === 'Other numbers of segments');
    expect(stock[at + 1]).toContain(Number(found.savings.saved.toFixed(2)));
    expect(stock[at + 2]![0]).toBe('W3: 4 segments a ring instead of 2');

    const before = await takeoffOf(host);
    expect(await takeSegments(bench, found)).toBe(true);
    expect(noticeOf(bench)).toBe('Segments wanted are written for 1 opening: W3.');
    expect(await wanted(host)).toEqual([
      [1, null],
      [2, 4],
    ]);
    const column = before.rows.find(isTakeoffHeading)!.indexOf('Segments wanted');
    const changed = (await takeoffOf(host)).rows.flatMap((row, down) =>
      row.flatMap((cell, across) => (cell === before.rows[down]![across] ? [] : [across])),
    );
    expect(changed).toEqual([column]);
  });

  it('are not written once the rows have changed, nor looked for without a workbook', async () => {
    const { bench, host } = await filled();
    const rows = (await takeoffOf(host)).rows;
    const change = { nos: [2], marks: ['W3'], from: 2, to: 4, saved: 1 };
    const found = { savings: { changes: [change], saved: 1 }, rows };
    valueOf(await host.writeCells('Takeoff', 'B7', [['W9']], true));
    expect(await takeSegments(bench, found)).toBe(false);
    expect(noticeOf(bench)).toContain('changed meanwhile');
    expect((await wanted(host)).map(([, segments]) => segments)).toEqual([null, null]);

    const { bench: empty } = await readList();
    expect(await findSegments(empty)).toBeUndefined();
    expect(noticeOf(empty)).toContain('Fill the workbook first');
  });
});
