import { describe, expect, it } from 'vitest';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { listGuides } from '../../../../taskpane/pane/deeds/guideBoards';
import { inputCell, readList } from '../bench';

describe('the pairs of guides', () => {
  it('are those of the workbook, with what was changed there by hand', async () => {
    const { host, bench } = await readList();
    const radii = async () => (await listGuides(bench))?.map((setup) => setup.insideRadius);
    // W1 is 36 by 6, its radius 30; W2 a half round of 36. The reveal is 3/16.
    expect(await radii()).toEqual([18.1875, 30.1875]);
    await fill(bench, []);
    const rise = inputCell(host, 'rise');
    host.edit('Takeoff', rise, 12);
    expect(await radii()).toEqual([18.1875, 19.6875]);
  });
});
