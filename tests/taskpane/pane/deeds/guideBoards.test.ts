import { strFromU8, unzipSync } from 'fflate';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { listGuides, saveAllGuides } from '../../../../taskpane/pane/deeds/guideBoards';
import { inputCell, readList } from '../bench';

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

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

  it('come in one archive, with pictures of all of them and one table of ordinates', async () => {
    const { bench } = await readList();
    const saved: Blob[] = [];
    vi.stubGlobal('document', { createElement: () => ({ click: () => undefined }) });
    vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => String(saved.push(blob as Blob)));
    vi.spyOn(URL, 'revokeObjectURL').mockReturnValue();
    await saveAllGuides(bench, (await listGuides(bench))!);
    const files = unzipSync(new Uint8Array(await saved[0]!.arrayBuffer()));
    expect(Object.keys(files).sort()).toEqual([
      '3.5-x-0.75-Casing-R-18.188-guides.dxf',
      '3.5-x-0.75-Casing-R-18.188-guides.svg',
      '3.5-x-0.75-Casing-R-18.188-overview.svg',
      '3.5-x-0.75-Casing-R-30.188-guides.dxf',
      '3.5-x-0.75-Casing-R-30.188-guides.svg',
      '3.5-x-0.75-Casing-R-30.188-overview.svg',
      'all-guides-ordinates.csv',
      'all-guides-overview.html',
    ]);
    expect(strFromU8(files['all-guides-overview.html']!).match(/<figure>/g)).toHaveLength(2);
    // Both arcs of both pairs.
    const lines = strFromU8(files['all-guides-ordinates.csv']!).trim().split('\r\n').slice(1);
    expect(new Set(lines.map((line) => line.split(',').slice(0, 4).join())).size).toBe(4);
  });
});
