import { describe, expect, it } from 'vitest';
import { cellsOf, readArgument } from '../../taskpane/pane/cell/argument';
import { callsIn } from '../../taskpane/pane/cell/callIn';
import { explain } from '../../taskpane/pane/cell/explain';

describe('the ARCH calls of a formula', () => {
  it.each([
    ['=ARCH.RADIUS(B2, -3)', [{ name: 'RADIUS', args: ['B2', '-3'] }]],
    ['=_xldudf_ARCH_RADIUS(36,6)', [{ name: 'RADIUS', args: ['36', '6'] }]],
    ['=arch.radius(36,,6)', [{ name: 'RADIUS', args: ['36', '', '6'] }]],
    ['=ARCH.HEADLENGTH("a,b",B2)', [{ name: 'HEADLENGTH', args: ['"a,b"', 'B2'] }]],
    ["=ARCH.RADIUS('It''s, here'!B2,6)", [{ name: 'RADIUS', args: ["'It''s, here'!B2", '6'] }]],
    ['=ARCH.RADIUS()', [{ name: 'RADIUS', args: [] }]],
    [
      '=ROUND(ARCH.SPAN(6,ARCH.RADIUS(A1,{1,2})),2)',
      [
        { name: 'SPAN', args: ['6', 'ARCH.RADIUS(A1,{1,2})'] },
        { name: 'RADIUS', args: ['A1', '{1,2}'] },
      ],
    ],
    ['="ARCH.RADIUS(1,2)"', []],
    ['=SUM(A1:A3)', []],
  ])('in %s', (formula, calls) => {
    expect(callsIn(formula)).toEqual(calls);
  });

  it('ends with the formula where a parenthesis was never closed', () => {
    expect(callsIn('=ARCH.RADIUS(36,"6')).toEqual([{ name: 'RADIUS', args: ['36', '"6'] }]);
  });
});

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
