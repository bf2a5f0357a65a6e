import { describe, expect, it } from 'vitest';
import { MemoryHost } from '../../taskpane/memory/host';
import {
  takeExample,
  takeFile,
  takeSelection,
  takeSheet,
  takeText,
  chooseMeaning,
} from '../../taskpane/pane/deeds/chooseList';
import { stop } from '../../taskpane/pane/deeds/bench';
import { fill } from '../../taskpane/pane/deeds/fill';
import { fixOpening } from '../../taskpane/pane/deeds/fixOpening';
import { freeze, reenter } from '../../taskpane/pane/deeds/formulas';
import { putInCell, putOver } from '../../taskpane/pane/deeds/putFigure';
import { listGuides } from '../../taskpane/pane/deeds/guideBoards';
import { changeUnit, loadShop, loadShopFile, setSetting } from '../../taskpane/pane/deeds/shop';
import { SETTINGS } from '../../src/standards';
import { openingInRow } from '../../taskpane/pane/cell/takeoffRow';
import { benchOn, noticeOf } from './bench';

const LIST = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
  ['W1', 2, 'segmental', 36, 6],
  ['W2', 1, 'half round', '3\'-0"', null],
  ['W3', 1, 'segmental', 48, null],
];
const CSV = LIST.map((row) =>
  row.map((cell) => (cell === null ? '' : `"${String(cell).replaceAll('"', '""')}"`)).join(','),
).join('\n');

async function read(host = new MemoryHost({ List: LIST })) {
  const bench = benchOn(host);
  await takeSheet(bench, 'List');
  return { host, bench };
}

describe('choosing the list', () => {
  it('reads the region round the selected cell', async () => {
    const host = new MemoryHost({ List: LIST });
    const bench = benchOn(host);
    host.select('List', 'B2');
    await takeSelection(bench);
    expect(bench.store.get()).toMatchObject({ step: 'headings', work: null });
    expect(bench.store.get().schedule?.openings.map((one) => one.mark)).toEqual(['W1', 'W2', 'W3']);
  });

  it('reads the example in one step', async () => {
    const bench = benchOn(new MemoryHost());
    await takeExample(bench);
    expect(bench.store.get().step).toBe('headings');
    expect(bench.store.get().schedule?.openings.length).toBeGreaterThan(10);
  });

  it('reads pasted text, with commas or tabs', async () => {
    for (const text of [CSV, LIST.map((row) => row.join('\t')).join('\n')]) {
      const bench = benchOn(new MemoryHost());
      await takeText(bench, text);
      expect(bench.store.get().schedule?.openings.length, noticeOf(bench)).toBe(3);
    }
  });

  it.each([
    ['an empty file', '', 'empty'],
    ['a file without headings', 'a,b\n1,2\n', 'No headings were found'],
    ['a picture with a schedule’s name', '\x89PNG\r\n\x1a\n\0\0\0', ''],
  ])('says why %s cannot be read, and stays where it was', async (_what, content, why) => {
    const bench = benchOn(new MemoryHost());
    await takeFile(bench, new File([content], 'list.csv'));
    expect(bench.store.get().step).toBe('list');
    expect(bench.store.get().notice?.tone).toBe('error');
    expect(noticeOf(bench)).toContain(why);
  });

  it('refuses a broken workbook file in words', async () => {
    const bench = benchOn(new MemoryHost());
    await takeFile(bench, new File(['PK\x03\x04 broken'], 'list.xlsx'));
    expect(bench.store.get()).toMatchObject({ step: 'list', work: null });
    expect(noticeOf(bench)).not.toBe('');
  });

  it('refuses a file over 20 MB before it reads a byte', async () => {
    const bench = benchOn(new MemoryHost());
    const file = new File([], 'large.csv');
    Object.defineProperty(file, 'size', { value: 20 * 1024 * 1024 + 1 });
    Object.defineProperty(file, 'arrayBuffer', { value: () => Promise.reject(new Error('read')) });
    await takeFile(bench, file);
    expect(noticeOf(bench)).toBe('large.csv is 20.0 MB; files up to 20 MB can be read.');
  });

  it('says so when a file was moved or changed before it could be read, and stays where it was', async () => {
    const bench = benchOn(new MemoryHost());
    const file = new File(['x'], 'gone.csv');
    const gone = new DOMException('A requested file could not be found.', 'NotFoundError');
    Object.defineProperty(file, 'arrayBuffer', { value: () => Promise.reject(gone) });
    await takeFile(bench, file);
    expect(bench.store.get()).toMatchObject({ step: 'list', work: null });
    expect(noticeOf(bench)).toMatch(/gone\.csv.* failed: A requested file could not be found/);
  });

  it('tells in words that a cell is being edited', async () => {
    const host = new MemoryHost({ List: LIST });
    const bench = benchOn(host);
    await takeSheet(bench, 'List');
    host.faults.editing = true;
    await fill(bench, []);
    expect(noticeOf(bench)).toContain('A cell is being edited');
    expect(await host.sheetNames()).toEqual({ ok: true, value: ['List'] });
  });

  it('reads the list again when a column means something else', async () => {
    const { bench } = await read();
    await chooseMeaning(bench, 3, 'roughWidth');
    expect(bench.store.get().schedule?.openings[0]?.span).toBe(34);
  });
});

describe('filling the workbook', () => {
  it('writes the sheets, shows progress and says where to look', async () => {
    const { host, bench } = await read();
    const seen: number[] = [];
    bench.store.listen(() => seen.push(bench.store.get().work?.done ?? 0));
    await fixOpening(bench, 2, 'rise', '8');
    await fill(bench, []);
    expect(Math.max(...seen)).toBeGreaterThan(0);
    const { filled, firstUse } = bench.store.get();
    expect(filled?.needs).toEqual([]);
    expect(filled).toMatchObject({ openings: 3, priced: 3 });
    expect(filled?.price).toBeGreaterThan(0);
    expect(firstUse).toBe(false);
    expect(host.written.has('Takeoff')).toBe(true);
  });

  it('points at the row of an opening that still needs something', async () => {
    const { host, bench } = await read();
    await fill(bench, []);
    expect(bench.store.get().filled).toMatchObject({ openings: 3, priced: 2 });
    const [need] = bench.store.get().filled?.needs ?? [];
    expect(need?.mark).toBe('W3');
    expect(need?.need).toContain('Rise is missing');
    expect(host.cell('Takeoff', need?.address ?? '')?.value).toBe('W3');
  });

  it('asks before it writes over a sheet that holds something', async () => {
    const { host, bench } = await read(new MemoryHost({ List: LIST, Takeoff: [['mine']] }));
    await fill(bench, []);
    expect(bench.store.get().inTheWay).toEqual(['Takeoff']);
    expect(host.cell('Takeoff', 'A1')?.value).toBe('mine');
    await fill(bench, ['Takeoff']);
    expect(host.cell('Takeoff', 'A1')?.value).not.toBe('mine');
  });

  it('keeps an input that was changed by hand in the takeoff, and says so', async () => {
    const { host, bench } = await read();
    await fill(bench, []);
    const sheet = host.written.get('Takeoff');
    const rise = `${String.fromCharCode(65 + (sheet?.columnKeys?.indexOf('rise') ?? 0))}${sheet?.body?.[0]}`;
    host.edit('Takeoff', rise, 9);
    await fill(bench, [...host.written.keys()] as never);
    expect(host.cell('Takeoff', rise)?.value).toBe(9);
    expect(bench.store.get().filled?.said[0]).toContain('W1: kept rise 9');
  });

  it('does not go on where the takeoff can’t be read: what was changed there by hand would be lost', async () => {
    const { host, bench } = await read();
    await fill(bench, []);
    const before = await host.readFormulas('Takeoff');
    host.readFormulas = async () => ({ ok: false, message: 'Reading "Takeoff": Excel broke off the work.' });
    await fill(bench, [...host.written.keys()] as never);
    expect(noticeOf(bench)).toBe('Reading "Takeoff": Excel broke off the work.');
    expect(await MemoryHost.prototype.readFormulas.call(host, 'Takeoff')).toEqual(before);
  });

  it('takes the settings of the Standards sheet as they stand when it fills again', async () => {
    const { host, bench } = await read();
    await fill(bench, []);
    const table = await host.readSheet('Standards');
    const at = table.ok ? table.value!.rows.findIndex((row) => row[0] === 'Reveal') + 1 : 0;
    host.edit('Standards', `B${at}`, 0.5);
    await fill(bench, [...host.written.keys()] as never);
    expect(host.cell('Standards', `B${at}`)?.value).toBe(0.5);
  });

  it.each([
    ['at once', 'Filling the workbook'],
    ['while it is worked out', 'Working out 3 openings'],
    ['while it is written', 'Writing the sheets'],
  ])('leaves the workbook as it was when it is stopped %s', async (_, when) => {
    const { host, bench } = await read();
    bench.store.listen(() => {
      if (bench.store.get().work?.what === when) stop();
    });
    await fill(bench, []);
    expect(noticeOf(bench)).toContain('Stopped');
    expect(await host.sheetNames()).toEqual({ ok: true, value: ['List'] });
    expect(bench.store.get()).toMatchObject({ work: null, filled: null });
  });

  it('tells what the host refused, and leaves nothing half written', async () => {
    const { host, bench } = await read();
    host.faults.failAfterSheets = 1;
    await fill(bench, []);
    expect(noticeOf(bench)).toContain('could not be written');
    expect(await host.sheetNames()).toEqual({ ok: true, value: ['List'] });
  });
});

describe('a row of the Takeoff sheet', () => {
  it('is read back as the opening it stands for, with what was changed there', async () => {
    const { host, bench } = await read();
    await fill(bench, []);
    const sheet = host.written.get('Takeoff');
    const row = sheet?.body?.[0] ?? 0;
    const column = sheet?.columnKeys?.indexOf('span') ?? -1;
    host.edit('Takeoff', `${String.fromCharCode(65 + column)}${row}`, 40);
    const table = await host.readSheet('Takeoff');
    expect(table.ok && table.value && openingInRow(table.value, row)).toMatchObject({
      mark: 'W1',
      span: 40,
      rise: 6,
      quantity: 2,
    });
    expect(table.ok && table.value && openingInRow(table.value, 1)).toBeNull();
    expect(table.ok && table.value && openingInRow(table.value, row - 1)).toBeNull();
  });
});

describe('a figure into a cell', () => {
  it('goes into an empty one at once', async () => {
    const host = new MemoryHost({ List: LIST });
    const bench = benchOn(host);
    host.select('List', 'H9');
    expect(await putInCell(bench, '=ARCH.RADIUS(36,6)')).toBeNull();
    expect(host.cell('List', 'H9')?.formula).toBe('=ARCH.RADIUS(36,6)');
  });

  it('waits where the cell holds something, and goes over it only when told to', async () => {
    const host = new MemoryHost({ List: LIST });
    const bench = benchOn(host);
    host.select('List', 'A2');
    const waiting = await putInCell(bench, 30);
    expect(waiting).toMatchObject({ sheet: 'List', address: 'A2', holds: 'W1' });
    expect(host.cell('List', 'A2')?.value).toBe('W1');
    if (waiting) await putOver(bench, waiting);
    expect(host.cell('List', 'A2')?.value).toBe(30);
  });
});

describe('the pairs of guides', () => {
  it('are those of the workbook, with what was changed there by hand', async () => {
    const { host, bench } = await read();
    const radii = async () => (await listGuides(bench))?.map((setup) => setup.insideRadius);
    // W1 is 36 by 6, its radius 30; W2 a half round of 36. The reveal is 3/16.
    expect(await radii()).toEqual([18.1875, 30.1875]);
    await fill(bench, []);
    const sheet = host.written.get('Takeoff');
    const rise = `${String.fromCharCode(65 + (sheet?.columnKeys?.indexOf('rise') ?? 0))}${sheet?.body?.[0]}`;
    host.edit('Takeoff', rise, 12);
    expect(await radii()).toEqual([18.1875, 19.6875]);
  });
});

describe('the shop’s standards', () => {
  const reveal = SETTINGS.find((setting) => setting.key === 'reveal')!;

  it('are kept with the workbook and found again', async () => {
    const host = new MemoryHost({ List: LIST });
    expect(await setSetting(benchOn(host), reveal, '1/4')).toEqual({ ok: true, value: undefined });
    const later = benchOn(host);
    await loadShop(later);
    expect(later.store.get().standards.reveal).toBe(0.25);
    expect(later.store.get().firstUse).toBe(false);
  });

  it('are those of the Standards sheet where there is one, and a change goes there too', async () => {
    const { host, bench } = await read();
    await fill(bench, []);
    await setSetting(bench, reveal, '1/4');
    const later = benchOn(host);
    await loadShop(later);
    expect(later.store.get().standards.reveal).toBe(0.25);
    const sheet = await host.readSheet('Standards');
    expect(sheet.ok && sheet.value?.rows.find((row) => row[0] === 'Reveal')?.[1]).toBe(0.25);
  });

  it('change with the list read again, and what was typed into its openings stays', async () => {
    const { bench } = await read();
    await fixOpening(bench, 2, 'rise', '8');
    expect(await setSetting(bench, reveal, '1/4')).toEqual({ ok: true, value: undefined });
    const { schedule, originals } = bench.store.get();
    expect(schedule?.openings[2]).toMatchObject({ rise: 8, problems: [] });
    expect(originals[2]).toMatchObject({ rise: null });
  });

  it('follow the Standards sheet into the list: a rough opening is read by the allowance there', async () => {
    const host = new MemoryHost({
      List: [
        ['Mark', 'Head', 'RO Width', 'Rise'],
        ['W1', 'segmental', 38, 6],
      ],
    });
    const { bench } = await read(host);
    await fill(bench, []);
    const span = bench.store.get().schedule!.openings[0]!.span!;
    const rough = SETTINGS.find((setting) => setting.key === 'roughWidth')!;
    const table = await host.readSheet('Standards');
    const at = table.ok ? table.value!.rows.findIndex((row) => row[0] === rough.label) + 1 : 0;
    host.edit('Standards', `B${at}`, 1);
    await fill(bench, [...host.written.keys()] as never);
    expect(bench.store.get().schedule!.openings[0]!.span).not.toBe(span);
    expect(bench.store.get().schedule!.openings[0]!.span).toBe(37);
  });

  it('in another unit leave typed figures and those changed by hand in the workbook as long as they were', async () => {
    const { host, bench } = await read();
    await fixOpening(bench, 2, 'rise', '8');
    await fill(bench, []);
    const sheet = host.written.get('Takeoff');
    const rise = `${String.fromCharCode(65 + (sheet?.columnKeys?.indexOf('rise') ?? 0))}${sheet?.body?.[0]}`;
    host.edit('Takeoff', rise, 9);
    await changeUnit(bench, 'mm');
    expect(bench.store.get().schedule!.openings[2]!.rise).toBeCloseTo(203.2, 9);
    await fill(bench, [...host.written.keys()] as never);
    expect(host.cell('Takeoff', rise)?.value).toBeCloseTo(228.6, 9);
  });

  it('in another unit, or from a file, go before those of the Standards sheet until the workbook is filled again', async () => {
    const { host, bench } = await read();
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
    const { host, bench } = await read();
    await fill(bench, []);
    host.faults.protectedSheets = ['Standards'];
    const refused = await setSetting(bench, reveal, '1/4');
    expect(!refused.ok && refused.message).toContain('"Standards" is protected');
    expect(bench.store.get().standards.reveal).toBe(0.1875);
  });

  it('that can’t be read from the Standards sheet stop a filling', async () => {
    const { host, bench } = await read();
    await fill(bench, []);
    const table = await host.readSheet('Standards');
    const at = table.ok ? table.value!.rows.findIndex((row) => row[0] === reveal.label) + 1 : 0;
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

describe('the formulas of a whole workbook', () => {
  it('become their figures when they are frozen, and text stays text', async () => {
    const { host, bench } = await read();
    await fill(bench, []);
    const before = await host.readSheet('Takeoff');
    await freeze(bench);
    const formulas = await host.readFormulas('Takeoff');
    const left = formulas.ok
      ? formulas.value!.rows.flat().filter((cell) => typeof cell === 'string' && cell.startsWith('='))
      : [];
    expect(left).toEqual([]);
    const blank = (table: typeof before) =>
      table.ok ? table.value!.rows.map((row) => row.map((cell) => cell ?? '')) : [];
    expect(blank(await host.readSheet('Takeoff'))).toEqual(blank(before));
    expect(noticeOf(bench)).toContain('Plain figures now:');
  });

  it('are entered again where they came back in stored form', async () => {
    const host = new MemoryHost({ List: [['=_xldudf_ARCH_RADIUS(36,6)', 'W1']] });
    const bench = benchOn(host);
    await reenter(bench);
    expect(host.cell('List', 'A1')?.formula).toBe('=ARCH.RADIUS(36,6)');
    expect(noticeOf(bench)).toBe('Entered again: 1 ARCH formula.');
  });
});
