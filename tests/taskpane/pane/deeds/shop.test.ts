import { describe, expect, it } from 'vitest';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { fixOpening } from '../../../../taskpane/pane/deeds/fixOpening';
import { changeUnit, loadShop, loadShopFile, saveShopFile, setSetting } from '../../../../taskpane/pane/deeds/shop';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { isNotSet, SETTINGS } from '../../../../src/standards';
import { benchOn, inputCell, LIST, noticeOf, readList, settingRow } from '../bench';

describe('the shop’s standards', () => {
  const reveal = SETTINGS.find((setting) => setting.key === 'reveal')!;

  it('are shown to be copied where the host program saves no file', async () => {
    const bench = benchOn(new MemoryHost());
    await saveShopFile({ ...bench, options: { ...bench.options, savesFiles: false } });
    const [file, ...others] = bench.store.get().shownFiles;
    expect(others).toEqual([]);
    expect(file).toMatchObject({ name: 'shop-standards.json', type: 'application/json' });
    expect(JSON.parse(file!.content)).toHaveProperty('reveal');
  });

  it('of one machine are set by typing the neutral figure itself, and not set again by clearing it', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    const speed = SETTINGS.find((setting) => setting.key === 'rpm')!;
    const cell = async () => {
      const sheet = await host.readSheet('Standards');
      return sheet.ok && sheet.value?.rows.find((row) => row[0] === 'Spindle speed')?.[1];
    };
    const isSet = () => !isNotSet(bench.store.get().standards, 'rpm');
    expect([await cell(), isSet()]).toEqual([null, false]);
    await setSetting(bench, speed, '6000');
    expect([await cell(), isSet()]).toEqual([6000, true]);
    await setSetting(bench, speed, '');
    expect([await cell(), isSet()]).toEqual([null, false]);
  });

  it('are kept with the workbook and found again', async () => {
    const host = new MemoryHost({ List: LIST });
    expect(await setSetting(benchOn(host), reveal, '1/4')).toEqual({ ok: true, value: undefined });
    const later = benchOn(host);
    await loadShop(later);
    expect(later.store.get().standards.reveal).toBe(0.25);
    expect(later.store.get().firstUse).toBe(false);
  });

  it('are those of the Standards sheet where there is one, and a change goes there too', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    await setSetting(bench, reveal, '1/4');
    const later = benchOn(host);
    await loadShop(later);
    expect(later.store.get().standards.reveal).toBe(0.25);
    const sheet = await host.readSheet('Standards');
    expect(sheet.ok && sheet.value?.rows.find((row) => row[0] === 'Reveal')?.[1]).toBe(0.25);
  });

  it('change with the list read again, and what was typed into its openings stays', async () => {
    const { bench } = await readList();
    await fixOpening(bench, 2, 'rise', '8');
    expect(await setSetting(bench, reveal, '1/4')).toEqual({ ok: true, value: undefined });
    const { schedule, answers } = bench.store.get();
    expect(schedule?.openings[2]).toMatchObject({ rise: 8, problems: [] });
    expect(answers).toEqual({ 'rise@4': { text: '8 in', about: 'Rise of W3' } });
  });

  it('follow the Standards sheet into the list: a rough opening is read by the allowance there', async () => {
    const host = new MemoryHost({
      List: [
        ['Mark', 'Head', 'RO Width', 'Rise'],
        ['W1', 'segmental', 38, 6],
      ],
    });
    const { bench } = await readList(host);
    await fill(bench, []);
    const span = bench.store.get().schedule!.openings[0]!.span!;
    const rough = SETTINGS.find((setting) => setting.key === 'roughWidth')!;
    const at = await settingRow(host, rough.label);
    host.edit('Standards', `B${at}`, 1);
    await fill(bench, [...host.written.keys()] as never);
    expect(bench.store.get().schedule!.openings[0]!.span).not.toBe(span);
    expect(bench.store.get().schedule!.openings[0]!.span).toBe(37);
  });

  it('in another unit leave typed figures and those changed by hand in the workbook as long as they were', async () => {
    const { host, bench } = await readList();
    await fixOpening(bench, 2, 'rise', '8');
    await fill(bench, []);
    const rise = inputCell(host, 'rise');
    host.edit('Takeoff', rise, 9);
    await changeUnit(bench, 'mm');
    expect(bench.store.get().schedule!.openings[2]!.rise).toBeCloseTo(203.2, 9);
    await fill(bench, [...host.written.keys()] as never);
    expect(host.cell('Takeoff', rise)?.value).toBeCloseTo(228.6, 9);
  });

  it('in another unit, or from a file, go before those of the Standards sheet until the workbook is filled again', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    const file = JSON.stringify({ reveal: 0.5 });
    for (const [change, unit, expected] of [
      [() => changeUnit(bench, 'mm'), 'mm', 5],
      [() => loadShopFile(bench, new File([file], 'shop.json')), 'in', 0.5],
    ] as const) {
      await change();
      expect(noticeOf(bench)).toBe('These settings hold now. Fill the workbook again to use them there.');
      await fill(bench, [...host.written.keys()] as never);
      expect(bench.store.get().standards).toMatchObject({ unit, reveal: expected });
      const later = benchOn(host);
      await loadShop(later);
      expect(later.store.get().standards).toMatchObject({ unit, reveal: expected });
    }
  });

  it('stay as they were where the Standards sheet refuses the change', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    host.faults.protectedSheets = ['Standards'];
    const refused = await setSetting(bench, reveal, '1/4');
    expect(!refused.ok && refused.message).toContain('"Standards" is protected');
    expect(bench.store.get().standards.reveal).toBe(0.1875);
  });

  it('that can’t be read from the Standards sheet stop a filling', async () => {
    const { host, bench } = await readList();
    await fill(bench, []);
    const at = await settingRow(host, reveal.label);
    host.edit('Standards', `B${at}`, 99);
    await fill(bench, [...host.written.keys()] as never);
    expect(noticeOf(bench)).toContain('Reveal must be a number from 0 to 6; got 99.');
    expect(bench.store.get().standards.reveal).toBe(0.1875);
  });

  it('refuse a value outside its limits and stay as they were', async () => {
    const bench = benchOn(new MemoryHost());
    const refused = await setSetting(bench, reveal, '9');
    expect(refused).toEqual({ ok: false, message: 'Reveal must be a number from 0 to 6; got 9.' });
    expect(bench.store.get().standards.reveal).toBe(0.1875);
  });
});
