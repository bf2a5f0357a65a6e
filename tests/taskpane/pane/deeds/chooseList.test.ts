import { describe, expect, it } from 'vitest';
import {
  chooseMeaning,
  takeExample,
  takeFile,
  takePartlyHidden,
  takeSelection,
  takeSheet,
  takeText,
} from '../../../../taskpane/pane/deeds/chooseList';
import { checkFile } from '../../../../taskpane/pane/deeds/checkQuote';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { reviseByFile } from '../../../../taskpane/pane/deeds/revision';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { benchOn, LIST, noticeOf, readList } from '../bench';

const CSV = LIST.map((row) =>
  row.map((cell) => (cell === null ? '' : `"${String(cell).replaceAll('"', '""')}"`)).join(','),
).join('\n');

describe('choosing the list', () => {
  it('reads the region round the selected cell', async () => {
    const host = new MemoryHost({ List: LIST });
    const bench = benchOn(host);
    host.select('List', 'B2');
    await takeSelection(bench);
    expect(bench.store.get()).toMatchObject({ step: 'headings', work: null });
    expect(bench.store.get().schedule?.openings.map((one) => one.mark)).toEqual(['W1', 'W2', 'W3']);
  });

  it('reads the whole list from one cell of it: what lies below a blank row, and the note above one', async () => {
    const note = ['All dimensions in millimeters'];
    const [headings, ...rows] = LIST;
    const below = [
      ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
      ['D1', 1, 'segmental', 914, 150],
    ];
    const host = new MemoryHost({ List: [note, [], headings!, ...rows, [], ['SECOND FLOOR'], [], ...below] });
    const bench = benchOn(host);
    host.select('List', 'B4');
    await takeSelection(bench);
    const { schedule } = bench.store.get();
    expect(schedule?.openings.map((one) => one.mark)).toEqual(['W1', 'W2', 'W3', 'D1']);
    expect(schedule?.openings[3]?.row).toBe(11);
    expect(schedule?.openings[3]?.span).toBeCloseTo(914 / 25.4, 9);
  });

  it('reads no more than the cells that are selected where there are several', async () => {
    const host = new MemoryHost({ List: LIST });
    const bench = benchOn(host);
    host.select('List', 'A1:E2');
    await takeSelection(bench);
    expect(bench.store.get().schedule?.openings.map((one) => one.mark)).toEqual(['W1']);
  });

  it.each([
    [false, ['W1', 'W3'], [2, 4]],
    [true, ['W1', 'W2', 'W3'], [2, 3, 4]],
  ])('asks about hidden rows before it reads any; told %s, it reads %s', async (hiddenToo, marks, rows) => {
    const host = new MemoryHost({ List: LIST });
    host.hiddenRows = [3];
    const bench = benchOn(host);
    host.select('List', 'A1:E4');
    await takeSelection(bench);
    expect(bench.store.get()).toMatchObject({ step: 'list', schedule: null, partlyHidden: { hiddenRows: [3] } });
    await takePartlyHidden(bench, hiddenToo);
    const { schedule, partlyHidden } = bench.store.get();
    expect(schedule?.openings.map((one) => one.mark)).toEqual(marks);
    expect(schedule?.openings.map((one) => one.row)).toEqual(rows);
    expect(partlyHidden).toBeNull();
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

  it.each([
    ['a list', takeFile],
    ['a quote', checkFile],
    ['a revised list', reviseByFile],
  ])('refuses %s over 20 MB before it reads a byte, in a PDF as well', async (_what, take) => {
    const bench = benchOn(new MemoryHost());
    const file = new File([], 'large.pdf');
    const read = () => Promise.reject(new Error('read'));
    Object.defineProperty(file, 'size', { value: 20 * 1024 * 1024 + 1 });
    Object.defineProperty(file, 'arrayBuffer', { value: read });
    Object.defineProperty(file, 'slice', { value: () => ({ arrayBuffer: read }) });
    await take(bench, file);
    expect(noticeOf(bench)).toBe('large.pdf is 20.0 MB; files up to 20 MB can be read.');
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
    const { bench } = await readList();
    await chooseMeaning(bench, 3, 'roughWidth');
    expect(bench.store.get().schedule?.openings[0]?.span).toBe(34);
  });
});
