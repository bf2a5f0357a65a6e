import { describe, expect, it } from 'vitest';
import { JOB_FIELDS, type JobField } from '../../../../src/job/fields';
import { takeSheet } from '../../../../taskpane/pane/deeds/chooseList';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { loadJob, setJobField, writeProposal } from '../../../../taskpane/pane/deeds/job';
import {
  reviseBySelection,
  reviseBySheet,
  reviseByText,
  takeOver,
  tellApart,
  writeRevision,
} from '../../../../taskpane/pane/deeds/revision';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { benchOn, inputCell, noticeOf, readList, settingRow } from '../bench';
import { refusalOf, valueOf } from '../../../value';

const LIST = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
  ['W1', 2, 'segmental', 36, 6],
  ['W2', 1, 'segmental', 40, 8],
  ['W3', 1, 'segmental', 48, 9],
];
const REVISED = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
  ['W0', 1, 'segmental', 72, 9],
  ['W3', 1, 'segmental', 48, 9],
  ['W1', 2, 'segmental', 36, 7],
  ['W22', 1, 'segmental', 40, 8],
];
const ALL = ['Takeoff', 'Stock', 'Setups', 'Schedule', 'Standards'] as const;
const field = (key: string) => (JOB_FIELDS as readonly JobField[]).find((one) => one.key === key)!;
const sheetOf = async (host: MemoryHost, name: string) => valueOf(await host.readSheet(name))!.rows;
/** Mark and number of every row of the Takeoff. */
const numbers = async (host: MemoryHost) =>
  Object.fromEntries(
    (await sheetOf(host, 'Takeoff')).flatMap(([no, mark]) => (typeof no === 'number' ? [[String(mark), no]] : [])),
  );

describe('the job in the pane', () => {
  it('is kept with the workbook, stands on its Standards sheet and survives filling again', async () => {
    const { host, bench } = await readList();
    valueOf(await setJobField(bench, field('customer'), 'A builder'));
    valueOf(await setJobField(bench, field('taxRate'), '6.25'));
    valueOf(await setJobField(bench, field('terms'), 'Half down\nNet 30'));
    await fill(bench, []);
    const row = await settingRow(host, 'Customer');
    expect((await sheetOf(host, 'Standards'))[row - 1]![1]).toBe('A builder');
    // Changed on the sheet, it is the sheet's that holds.
    valueOf(await host.writeCells('Standards', `B${row}`, [['Another builder']], true));
    await fill(bench, [...ALL]);
    expect((await sheetOf(host, 'Standards'))[row - 1]![1]).toBe('Another builder');
    const again = benchOn(host);
    expect(await loadJob(again)).toBe(true);
    expect(again.store.get().job).toMatchObject({
      customer: 'Another builder',
      taxRate: 0.0625,
      terms: ['Half down', 'Net 30'],
    });
  });

  it('refuses a field that can’t be used, in a sentence, and changes nothing', async () => {
    const { bench } = await readList();
    expect(refusalOf(await setJobField(bench, field('taxRate'), '625'))).toBe(
      'Tax must be from 0% to 100%; got "625%".',
    );
    expect(bench.store.get().job.taxRate).toBe(0);
  });

  it('is written as a proposal only beside a filled Takeoff, and never over one unasked; filling leaves it', async () => {
    const host = new MemoryHost({ List: LIST });
    const bench = benchOn(host);
    await takeSheet(bench, 'List');
    expect(await writeProposal(bench, false)).toBe(false);
    expect(noticeOf(bench)).toContain('Fill the workbook first');
    await fill(bench, []);
    expect(await writeProposal(bench, false)).toBe(false);
    expect(noticeOf(bench)).toContain('The Proposal sheet is written');
    const lines = (await sheetOf(host, 'Proposal')).filter((row) => /^W\d/.test(String(row[0])));
    expect(lines.map(([mark, quantity]) => [mark, quantity])).toEqual([
      ['W1', 2],
      ['W2', 1],
      ['W3', 1],
    ]);
    const prices = (await sheetOf(host, 'Takeoff')).filter(([no]) => typeof no === 'number').map((row) => row[9]);
    expect(lines.map((row) => row[4])).toEqual(prices);
    expect(await writeProposal(bench, false)).toBe(true);
    await fill(bench, [...ALL]);
    expect(bench.store.get().inTheWay).toBeNull();
    expect((await sheetOf(host, 'Proposal')).length).toBeGreaterThan(5);
  });
});

describe('a revised list in the pane', () => {
  async function compared() {
    const host = new MemoryHost({ List: LIST, Revised: REVISED });
    const bench = benchOn(host);
    await takeSheet(bench, 'List');
    await fill(bench, []);
    return { host, bench };
  }

  it('is told by mark and figures: added, dropped, changed, renamed', async () => {
    const { bench } = await compared();
    await reviseBySheet(bench, 'Revised');
    const { revision } = bench.store.get().revised!;
    expect(revision.added.map(({ mark }) => mark)).toEqual(['W0']);
    expect(revision.renamed.map(({ old, new: now, asked }) => [old.mark, now.mark, asked])).toEqual([
      ['W2', 'W22', true],
    ]);
    expect(revision.changed.map(({ new: now, figures }) => [now.mark, figures])).toEqual([
      ['W1', [{ figure: 'rise', from: 6, to: 7 }]],
    ]);
    expect(await writeRevision(bench, false)).toBe(false);
    expect(await writeRevision(bench, false)).toBe(true);
    await tellApart(bench, 'W2', 'W22');
    const apart = bench.store.get().revised!.revision;
    expect([apart.renamed, apart.dropped.map(({ mark }) => mark)]).toEqual([[], ['W2']]);
  });

  it('may be pasted, or be selected cells; what a viewer broke into lines is refused', async () => {
    const { host, bench } = await compared();
    const changes = () => bench.store.get().revised!.revision.changed.map(({ new: now }) => now.mark);
    await reviseByText(bench, REVISED.map((row) => row.join('\t')).join('\n'));
    expect(changes()).toEqual(['W1']);
    host.select('Revised', 'A1');
    await reviseBySelection(bench);
    expect([changes(), bench.store.get().revised!.schedule.name]).toEqual([['W1'], 'Revised']);
    await reviseByText(bench, '  ');
    expect(noticeOf(bench)).toContain('Nothing was pasted');
  });

  it('taken over keeps numbers and the changes by hand that still apply, and names the others', async () => {
    const { host, bench } = await compared();
    const before = await numbers(host);
    // Typed into the first opening, W1: a face the lists don't give, and a rise that the revised list changes itself.
    valueOf(await host.writeCells('Takeoff', inputCell(host, 'face'), [[4.5]], true));
    valueOf(await host.writeCells('Takeoff', inputCell(host, 'rise'), [[6.5]], true));
    await reviseBySheet(bench, 'Revised');
    await takeOver(bench);
    await fill(bench, [...ALL]);
    const after = await numbers(host);
    expect([after['W1'], after['W3'], after['W22']]).toEqual([before['W1'], before['W3'], before['W2']]);
    expect(Object.values(before)).not.toContain(after['W0']);
    const said = bench.store.get().filled!.said.join('\n');
    expect(said).toContain('W1: kept casing width 4.5 from the workbook');
    expect(said).toContain('W1: rise 6.5 from the workbook is not kept: the revised list changed it from 6 to 7.');
    const keys = host.written.get('Takeoff')!.columnKeys!;
    const row = (await sheetOf(host, 'Takeoff')).find((cells) => cells[1] === 'W1')!;
    expect([row[keys.indexOf('face')], row[keys.indexOf('rise')]]).toEqual([4.5, 7]);
    // Filled once more, all stays as it is.
    await fill(bench, [...ALL]);
    expect(await numbers(host)).toEqual(after);
  });
});
