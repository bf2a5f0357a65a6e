import { describe, expect, it } from 'vitest';
import { boardsToBuy } from '../../../../src/takeoff/boardsToBuy';
import { planTakeoff } from '../../../../src/takeoff/planned';
import { takeoff } from '../../../../src/takeoff/takeoff';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { drawBoards } from '../../../../taskpane/pane/deeds/plans';
import { noticeOf, readList } from '../bench';

describe('the boards drawn in the pane', () => {
  it('are those of the plan that the workbook holds', async () => {
    const { bench } = await readList();
    await fill(bench, []);
    const { schedule, standards } = bench.store.get();
    const { boards } = planTakeoff(takeoff(schedule!.openings, standards));
    const captions = (await drawBoards(bench))!.map(({ caption }) => Number(/^\d+\. (\d+) ×/.exec(caption)![1]));
    const bought = boardsToBuy(boards, standards).reduce((sum, one) => sum + one.bought, 0);
    expect(bought).toBeGreaterThan(0);
    expect(captions.reduce((sum, count) => sum + count, 0)).toBe(bought);
  });

  it('are not drawn before a workbook is filled', async () => {
    const { bench } = await readList();
    expect(await drawBoards(bench)).toBeUndefined();
    expect(noticeOf(bench)).toContain('Fill the workbook first');
  });
});
