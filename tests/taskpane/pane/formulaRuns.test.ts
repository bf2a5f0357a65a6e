import { describe, expect, it } from 'vitest';
import { columnRuns, reentered } from '../../../taskpane/pane/formulaRuns';

describe('an ARCH formula as it must be entered again', () => {
  it.each([
    ['=_xldudf_ARCH_RADIUS(A2,B2)', '=ARCH.RADIUS(A2,B2)'],
    ['=ARCH.RADIUS(A2,B2)', '=ARCH.RADIUS(A2,B2)'],
    ['=IF(A1="","",_xldudf_ARCH_RADIUS(A2,_xldudf_ARCH_RISE(1,2)))', '=IF(A1="","",ARCH.RADIUS(A2,ARCH.RISE(1,2)))'],
  ])('%s', (content, formula) => {
    expect(reentered(content)).toBe(formula);
  });

  it.each(['=SUM(A1:A3)', 'ARCH.RADIUS(1,2)', 'search.results(x)', 'W3'])('leaves %s alone', (content) => {
    expect(reentered(content)).toBeUndefined();
  });
});

describe('cells to be written', () => {
  it('come as runs down each column, broken where a cell stays', () => {
    const rows = [['=a', 'x'], ['=b', '=c'], ['y', '=d'], ['=e']];
    const change = (cell: unknown) => (typeof cell === 'string' && cell.startsWith('=') ? cell.slice(1) : undefined);
    expect(columnRuns(rows, change)).toEqual([
      { row: 0, column: 0, cells: ['a', 'b'] },
      { row: 3, column: 0, cells: ['e'] },
      { row: 1, column: 1, cells: ['c', 'd'] },
    ]);
  });
});
