import { describe, expect, it } from 'vitest';
import { explain } from '../../../../taskpane/pane/cell/explain';

describe('why a cell shows an error', () => {
  const lookup = async (sheet: string | null) =>
    sheet === null || sheet === 'List'
      ? {
          firstRow: 1,
          rows: [
            ['x', 36],
            ['x', null],
            ['x', 'abc'],
          ],
        }
      : null;

  it('gives the function’s own sentence and the arguments it saw', async () => {
    const [radius] = await explain('=ARCH.RADIUS(B1,-3)', null, lookup);
    expect(radius?.sentence).toContain('rise must be');
    expect(radius?.sentence).toContain('-3');
    expect(radius?.args.map(({ name, written, saw }) => ({ name, written, saw }))).toEqual([
      { name: 'span', written: 'B1', saw: '36' },
      { name: 'rise', written: '-3', saw: '-3' },
    ]);
  });

  it('says that a cell is blank', async () => {
    const [radius] = await explain('=ARCH.RADIUS(List!B1,List!B2)', null, lookup);
    expect(radius?.args[1]?.saw).toBe('nothing: blank');
    expect(radius?.sentence).toContain('rise');
  });

  it('quotes the text it could not read', async () => {
    const [radius] = await explain('=ARCH.RADIUS(36,B3)', null, lookup);
    expect(radius?.args[1]?.saw).toBe('“abc”');
    expect(radius?.sentence).toContain('"abc"');
  });

  it('takes the host’s sentence where an argument is worked out inside the formula', async () => {
    const [radius] = await explain('=ARCH.RADIUS(36,B2*2)', 'rise must be more than 0; got 0', lookup);
    expect(radius?.sentence).toBe('rise must be more than 0; got 0');
    expect(radius?.args[1]?.saw).toBeNull();
  });

  it('has no sentence against arguments that give a figure', async () => {
    const [radius] = await explain('=ARCH.RADIUS(36,6)', null, lookup);
    expect(radius?.sentence).toBeNull();
  });

  it('names a function there is not', async () => {
    const [none] = await explain('=ARCH.RADIUSS(36,6)', null, lookup);
    expect(none?.sentence).toBe('There is no function ARCH.RADIUSS. Check its spelling.');
  });
});
