import { describe, expect, it } from 'vitest';
import { takeSheet } from '../../../../taskpane/pane/deeds/chooseList';
import { answer, answersTo, fixOpening, putBack } from '../../../../taskpane/pane/deeds/fixOpening';
import { keepList, resumeList } from '../../../../taskpane/pane/deeds/keepList';
import { setSetting } from '../../../../taskpane/pane/deeds/shop';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { SETTINGS } from '../../../../src/standards';
import { benchOn, readList } from '../bench';

const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Radius', 'Remarks'];
/** W1 contradicts itself, W2 stands twice, W3's remark is asked about and its rise is missing. */
const ASKED = [
  HEADINGS,
  ['W1', 1, 'segmental', 36, 6, 25, null],
  ['W2', 1, 'segmental', 40, 6, null, null],
  ['W2', 1, 'segmental', 40, 8, null, null],
  ['W3', 1, 'segmental', 48, null, null, 'both sides'],
  ['W4', 1, 'segmental', 50, null, null, 'both sides'],
];

async function asked() {
  const { host, bench } = await readList(new MemoryHost({ List: ASKED }));
  const of = () => bench.store.get();
  const opening = (mark: string) => of().schedule?.openings.find((one) => one.mark === mark);
  const at = (mark: string) => of().schedule!.openings.findIndex((one) => one.mark === mark);
  const questions = () => of().schedule!.questions!.map(({ id }) => id);
  return { host, bench, of, opening, at, questions };
}

describe('answers in the pane', () => {
  it('settle what they answer and nothing else', async () => {
    const { bench, opening, at, questions } = await asked();
    expect(questions()).toEqual([expect.stringContaining('remark:both sides'), 'mark:w2', 'rise@2', 'rise@5-6']);
    expect(await fixOpening(bench, at('W3'), 'rise', '8')).toBe(true);
    expect(opening('W3')).toMatchObject({ rise: 8, quantity: null });
    expect(await fixOpening(bench, at('W3'), 'quantity', '1')).toBe(true);
    expect(opening('W3')?.problems).toHaveLength(1);
    expect(questions()).toEqual([expect.stringContaining('remark:both sides'), 'mark:w2', 'rise@2', 'rise@6']);
  });

  it('to several rows at once are given row by row, so that each can be taken back', async () => {
    const { bench, of, opening } = await asked();
    await answer(bench, answersTo('rise@5-6', '8 in', 'Rise is missing.'));
    expect(Object.keys(of().answers)).toEqual(['rise@5', 'rise@6']);
    expect([opening('W3')?.rise, opening('W4')?.rise]).toEqual([8, 8]);
    await putBack(bench, opening('W3')!);
    expect([opening('W3')?.rise, opening('W4')?.rise]).toEqual([null, 8]);
  });

  it('that leave a row out keep the others’ answers where they belong', async () => {
    const { bench, of, opening, at } = await asked();
    await fixOpening(bench, at('W4'), 'rise', '9');
    await answer(bench, answersTo('mark:w2', 'same opening', 'The mark stands twice.'));
    expect(of().schedule?.openings).toHaveLength(4);
    expect(opening('W4')?.rise).toBe(9);
    await answer(bench, { 'mark:w2': null });
    expect(of().schedule?.openings).toHaveLength(5);
  });

  it('of a quantity are those of the line that shows it, also where its heads stand side by side', async () => {
    const rows = [
      ['Mark', 'Qty', 'Head', 'Width', 'Leg', 'Ends', 'Remarks'],
      ['W1', 3, 'half round', 36, 60, 'legs', 'mulled pair'],
    ];
    const { bench } = await readList(new MemoryHost({ List: rows }));
    const counts = () => bench.store.get().schedule!.openings.map(({ quantity }) => quantity);
    const each = '2 heads of the width listed, with a mull casing';
    await answer(bench, answersTo('remark:mulled pair', each, 'Mulled.'));
    expect(counts()).toEqual([6, 3]);
    expect(await fixOpening(bench, 0, 'quantity', '4')).toBe(true);
    expect(counts()).toEqual([4, 3]);
    await putBack(bench, bench.store.get().schedule!.openings[0]!);
    expect(counts()).toEqual([6, 3]);
  });

  it('in millimeters keep what the row had', async () => {
    const { bench, opening, at } = await asked();
    await fixOpening(bench, at('W1'), 'span', '900 mm');
    expect(opening('W1')?.span).toBeCloseTo(900 / 25.4, 9);
    // The list's rise and radius are still there, and still disagree.
    expect(opening('W1')?.problems[0]).toMatchObject({ field: 'rise', choices: ['6', expect.any(String)] });
  });

  it('that can’t be taken say why, by the question they are for', async () => {
    const { bench, of, at } = await asked();
    expect(await fixOpening(bench, at('W3'), 'rise', 'about six')).toBe(false);
    expect(of().refused['rise@5']).toContain('you typed "about six"');
    expect(await fixOpening(bench, at('W3'), 'mark', 'w1')).toBe(false);
    expect(of().refused['mark@5']).toBe('The mark "w1" already stands in row 2; give this opening another.');
  });

  it('stay when the list is read again by other standards, and when it is chosen again they are gone', async () => {
    const { bench, of, opening, at } = await asked();
    await fixOpening(bench, at('W3'), 'rise', '8');
    const reveal = SETTINGS.find((setting) => setting.key === 'reveal')!;
    await setSetting(bench, reveal, '1/4');
    expect(opening('W3')?.rise).toBe(8);
    await takeSheet(bench, 'List');
    expect(of().answers).toEqual({});
  });

  it('are there again after a reload', async () => {
    const { host, bench, of, at } = await asked();
    const stop = keepList(bench);
    await fixOpening(bench, at('W3'), 'rise', '8');
    await answer(bench, answersTo('mark:w2', 'keep both', 'The mark stands twice.'));
    await expect.poll(async () => JSON.stringify(await host.readSetting('archwright.list'))).toContain('keep both');
    stop();
    const later = benchOn(host);
    await resumeList(later);
    expect(later.store.get().answers).toEqual(of().answers);
    expect(later.store.get().schedule?.questions).toEqual(of().schedule?.questions);
    expect(later.store.get().schedule?.openings).toEqual(of().schedule?.openings);
  });
});
