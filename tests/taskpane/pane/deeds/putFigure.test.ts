import { describe, expect, it } from 'vitest';
import { putInCell, putOver } from '../../../../taskpane/pane/deeds/putFigure';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { benchOn, LIST } from '../bench';

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
