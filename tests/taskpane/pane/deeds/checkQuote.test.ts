import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  checkFile,
  checkSelection,
  checkSheet,
  checkText,
  chooseQuoteMeaning,
  writeCheck,
} from '../../../../taskpane/pane/deeds/checkQuote';
import { takeExample, takeSheet } from '../../../../taskpane/pane/deeds/chooseList';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { benchOn, noticeOf } from '../bench';

const LIST = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
  ['W1', 2, 'segmental', 36, 6],
  ['W2', 1, 'half round', 40, null],
];
const QUOTE = [
  ['Mark', 'Qty', 'Length', 'Unit price', 'Extension'],
  ['W1', 1, 36, 95, 95],
  ['W2', 1, 74.4375, 180, 180],
  ['', '', '', 'Total', 275],
];

describe('a quote in the pane', () => {
  it('is asked for a list first', async () => {
    const bench = benchOn(new MemoryHost({ Quote: QUOTE }));
    await checkSheet(bench, 'Quote');
    expect(noticeOf(bench)).toContain('Choose the list of openings first');
    expect(bench.store.get().quote).toBeNull();
  });

  it('on a sheet or in the selected cells is checked line by line', async () => {
    const host = new MemoryHost({ List: LIST, Quote: QUOTE });
    const bench = benchOn(host);
    await takeSheet(bench, 'List');
    host.select('Quote', 'A2');
    for (const check of [() => checkSheet(bench, 'Quote'), () => checkSelection(bench)]) {
      await check();
      const { quote } = bench.store.get();
      expect(quote!.lines.map(({ line }) => [line.row, line.mark])).toEqual([
        [2, 'W1'],
        [3, 'W2'],
      ]);
      expect(quote!.lines[0]!.findings.flatMap(({ mistakes }) => mistakes)).toContain('chord, not arc');
      expect(quote!.sums.map(({ finding }) => finding.verdict)).toEqual(['agrees']);
    }
  });

  it('from the example file is written to a Check sheet only beside a filled Takeoff, and never over one unasked', async () => {
    const host = new MemoryHost();
    const bench = benchOn(host);
    await takeExample(bench);
    await checkFile(bench, new File([readFileSync('examples/quote.csv')], 'quote.csv'));
    expect(bench.store.get().quote!.counts).toEqual({ agrees: 4, differs: 17, "can't tell": 1 });
    expect(await writeCheck(bench, false)).toBe(false);
    expect(noticeOf(bench)).toContain('Fill the workbook first');

    await fill(bench, []);
    expect(await writeCheck(bench, false)).toBe(false);
    expect(noticeOf(bench)).toContain('The Check sheet is written');
    const written = await host.readSheet('Check');
    expect(written.ok && written.value?.rows[0]?.[0]).toBe('Check');
    // It is there now: writing again has to be asked for.
    expect(await writeCheck(bench, false)).toBe(true);
    expect(await writeCheck(bench, true)).toBe(false);
  });

  it('is read from pasted rows', async () => {
    const bench = benchOn(new MemoryHost({ List: LIST }));
    await takeSheet(bench, 'List');
    await checkText(bench, QUOTE.map((row) => row.join('\t')).join('\n'));
    expect(bench.store.get().quote!.lines.map(({ line }) => line.length)).toEqual([36, 74.4375]);
    expect(bench.store.get().quoteTable!.rows).toHaveLength(4);
  });

  it('has a column that no reading fits, which can be set by hand and put back', async () => {
    const odd = QUOTE.map((row, at) => [
      at === 0 ? 'Zorp' : 48.5,
      ...row.map((cell) => (cell === 'Length' ? 'Blurb' : cell)),
    ]);
    const bench = benchOn(new MemoryHost({ List: LIST, Quote: odd }));
    await takeSheet(bench, 'List');
    await checkSheet(bench, 'Quote');
    const read = () => bench.store.get().quote!;
    expect(
      read()
        .quote.setAside.filter(({ understood }) => !understood)
        .map(({ name }) => name),
    ).toContain('column "Zorp"');
    expect(read().counts.agrees).toBe(0);
    await chooseQuoteMeaning(bench, 0, 'aside');
    expect(read().quote.meaning[0]).toBe('aside');
    expect(read().lines.map(({ line }) => line.unread)).toEqual([['column "Blurb"'], ['column "Blurb"']]);
    await chooseQuoteMeaning(bench, 3, 'length');
    expect(read().quote.lines.map(({ length }) => length)).toEqual([36, 74.4375]);
    expect(read().lines[1]!.agreesIn).toContain('length');
    await chooseQuoteMeaning(bench, 0, null);
    expect(bench.store.get().quoteChoices).toEqual({ 3: 'length' });
    expect(read().lines[1]!.line.unread).toEqual(['column "Zorp"']);
  });

  it('without headings that can be told is refused, and read once its columns are set by hand', async () => {
    const bare = [
      ['Dear sir', 'we offer', 'as follows'],
      ['W1', 'two of', '36'],
      ['W2', 'one of', '74.4375'],
    ];
    const bench = benchOn(new MemoryHost({ List: LIST, Quote: bare }));
    await takeSheet(bench, 'List');
    await checkSheet(bench, 'Quote');
    expect(noticeOf(bench)).toMatch(/^No headings were found/);
    expect([bench.store.get().quote, bench.store.get().quoteTable!.rows.length]).toEqual([null, 3]);
    await chooseQuoteMeaning(bench, 0, 'mark');
    await chooseQuoteMeaning(bench, 2, 'length');
    const { lines } = bench.store.get().quote!;
    expect(lines.filter(({ places }) => places.length > 0).map(({ line }) => [line.mark, line.length])).toEqual([
      ['W1', 36],
      ['W2', 74.4375],
    ]);
  });

  it('that is none is refused in a sentence', async () => {
    const bench = benchOn(new MemoryHost({ List: LIST }));
    await takeSheet(bench, 'List');
    await checkFile(bench, new File(['Dear builder\nwe can do it for 900\n'], 'letter.csv'));
    expect(noticeOf(bench)).toMatch(/^No headings were found in "letter\.csv"/);
    expect(bench.store.get().quote).toBeNull();
  });
});
