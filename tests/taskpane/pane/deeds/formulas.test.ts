import { describe, expect, it } from 'vitest';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { freeze, reenter } from '../../../../taskpane/pane/deeds/formulas';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { benchOn, noticeOf, readList } from '../bench';

describe('the formulas of a whole workbook', () => {
  it('become their figures when they are frozen, and text stays text', async () => {
    const { host, bench } = await readList();
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
