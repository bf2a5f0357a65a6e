import { describe, expect, it } from 'vitest';
import { stop } from '../../../../taskpane/pane/deeds/bench';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { fixOpening } from '../../../../taskpane/pane/deeds/fixOpening';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { inputCell, LIST, noticeOf, readList, settingRow } from '../bench';

describe('filling the workbook', () => {
  it('writes the sheets, shows progress and says where to look', async () => {
    const { host, bench } = await readList();
    const seen: number[] = [];
    bench.store.listen(() => seen.push(bench.store.get().work?.done ?? 0));
    await fixOpening(bench, 2, 'rise', '8');
    await fill(bench, []);
    expect(Math.max(...seen)).toBeGreaterThan(0);
    const { filled, firstUse } = bench.store.get();
    expect(filled?.toLookAt.filter(({ said }) => said.includes('missing'))).toEqual([]);
    expect(filled).toMatchObject({ openings: 3, priced: 3 });
    expect(filled?.price).toBeGreaterThan(0);
    expect(firstUse).toBe(false);
    expect(host.written.has('Takeoff')).toBe(true);
  });

  it('points at the row of an opening that still needs something', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    expect(bench.store.get().filled).toMatchObject({ openings: 3, priced: 2 });
    const need = bench.store.get().filled?.toLookAt.find(({ mark }) => mark === 'W3');
    expect(need?.said).toContain('Rise is missing');
    expect(host.cell('Takeoff', need?.address ?? '')?.value).toBe('W3');
  });

  it('asks before it writes over a sheet that holds something', async () => {
    const { host, bench } = await readList(new MemoryHost({ List: LIST, Takeoff: [['mine']] }));
    await fill(bench, []);
    expect(bench.store.get().inTheWay).toEqual(['Takeoff']);
    expect(host.cell('Takeoff', 'A1')?.value).toBe('mine');
    await fill(bench, ['Takeoff']);
    expect(host.cell('Takeoff', 'A1')?.value).not.toBe('mine');
  });

  it('keeps an input that was changed by hand in the takeoff, and says so', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    const rise = inputCell(host, 'rise');
    host.edit('Takeoff', rise, 9);
    await fill(bench, [...host.written.keys()] as never);
    expect(host.cell('Takeoff', rise)?.value).toBe(9);
    expect(bench.store.get().filled?.said[0]).toContain('W1: kept rise 9');
  });

  it('names the figures typed over when it asks, and again once their formulas are written', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    const price = inputCell(host, 'price');
    host.edit('Takeoff', price, 500);
    await fill(bench, []);
    expect(bench.store.get().typedOver).toEqual(['W1 Price']);
    expect(host.cell('Takeoff', price)?.value).toBe(500);
    await fill(bench, [...host.written.keys()] as never);
    expect(host.cell('Takeoff', price)?.formula).toBeDefined();
    expect(bench.store.get().filled?.said).toContainEqual(expect.stringMatching(/^W1: Price had a figure typed over/));
    await fill(bench, []);
    expect(bench.store.get().typedOver).toEqual([]);
  });

  it('does not go on where the takeoff can’t be read: what was changed there by hand would be lost', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    const before = await host.readFormulas('Takeoff');
    host.readFormulas = async () => ({ ok: false, message: 'Reading "Takeoff": Excel broke off the work.' });
    await fill(bench, [...host.written.keys()] as never);
    expect(noticeOf(bench)).toBe('Reading "Takeoff": Excel broke off the work.');
    expect(await MemoryHost.prototype.readFormulas.call(host, 'Takeoff')).toEqual(before);
  });

  it('takes the settings of the Standards sheet as they stand when it fills again', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    const at = await settingRow(host, 'Reveal');
    host.edit('Standards', `B${at}`, 0.5);
    await fill(bench, [...host.written.keys()] as never);
    expect(host.cell('Standards', `B${at}`)?.value).toBe(0.5);
  });

  it.each([
    ['at once', 'Filling the workbook'],
    ['while it is worked out', 'Working out 3 openings'],
    ['while it is written', 'Writing the sheets'],
  ])('leaves the workbook as it was when it is stopped %s', async (_, when) => {
    const { host, bench } = await readList();
    bench.store.listen(() => {
      if (bench.store.get().work?.what === when) stop();
    });
    await fill(bench, []);
    expect(noticeOf(bench)).toContain('Stopped');
    expect(await host.sheetNames()).toEqual({ ok: true, value: ['List'] });
    expect(bench.store.get()).toMatchObject({ work: null, filled: null });
  });

  it('tells what the host refused, and leaves nothing half written', async () => {
    const { host, bench } = await readList();
    host.faults.failAfterSheets = 1;
    await fill(bench, []);
    expect(noticeOf(bench)).toContain('could not be written');
    expect(await host.sheetNames()).toEqual({ ok: true, value: ['List'] });
  });
});
