import { describe, expect, it } from 'vitest';
import { cellsOf, readArgument } from '../../../../taskpane/pane/cell/argument';

describe('an argument as written', () => {
  it.each([
    ['36', { kind: 'value', value: 36 }],
    ['-3.5', { kind: 'value', value: -3.5 }],
    ['"3\'-0"""', { kind: 'value', value: '3\'-0"' }],
    ['', { kind: 'value', value: null }],
    ['TRUE', { kind: 'value', value: true }],
    ['$B$2', { kind: 'cells', sheet: null, range: 'B2', single: true }],
    ["'My sheet'!B2:C4", { kind: 'cells', sheet: 'My sheet', range: 'B2:C4', single: false }],
    ['B2+1', { kind: 'expression' }],
    ['Shop_reveal', { kind: 'expression' }],
  ])('%s', (text, argument) => {
    expect(readArgument(text)).toEqual(argument);
  });

  it('finds its cells by the sheet’s own rows, blanks beyond what is used', () => {
    const rows = [
      [1, 2],
      [3, 4],
    ];
    expect(cellsOf('B3:C5', rows, 3)).toEqual([
      [2, null],
      [4, null],
      [null, null],
    ]);
    expect(cellsOf('A1', rows, 3)).toEqual([[null]]);
  });
});
