import { describe, expect, it } from 'vitest';
import { readSchedule } from '../../src/schedule';
import { readCsv } from '../../src/schedule/csv';
import { plainFigure } from '../../src/schedule/plainFigure';
import { defaultStandards } from '../../src/standards';
import { valueOf } from '../value';

describe('a figure with words about it', () => {
  it.each([
    ['36 (VIF)', '36', null],
    ['1.200 (VIF)', '1.200', null],
    ['~36', '36', ['36']],
    ['36 nom.', '36', ['36']],
  ])('%s is %s', (cell, figure, choices) => expect(plainFigure(cell, 'Rise')).toMatchObject({ cell: figure, choices }));

  it.each([
    ['1.200 (VIF)', '1200', null],
    ['1.200,5 V.I.F.', '1200.5', null],
    ['1.2 (VIF)', '1.2', ['12', '1.2']],
    ['~1.200', '1200', ['1200']],
    ['1.200 mm approx.', '1200 mm', ['1200 mm']],
    ['~1.2', '1.2', ['12', '1.2']],
    ['~36', '36', ['36']],
  ])('%s is %s in a list with decimal commas', (cell, figure, choices) =>
    expect(plainFigure(cell, 'Rise', true)).toMatchObject({ cell: figure, choices }),
  );

  it.each(['?', '??', 'nom.', '(max)'])('%s alone is no figure, and stays as it was written', (text) => {
    expect(plainFigure(text, 'Rise')).toEqual({ cell: text, said: null, choices: null, manner: null });
  });

  it('is as long as the same figure without them', () => {
    const rows = ['W1;segmental;2800,5;1.200', 'W2;segmental;2800,5;1.200 (VIF)', 'W3;segmental;2800,5;900'];
    const text = ['Mark;Head;Width;Rise', ...rows].join('\n');
    const table = valueOf(readCsv('list.csv', new TextEncoder().encode(text)));
    const { openings } = valueOf(readSchedule(table, defaultStandards('mm'), {}, { unit: 'mm' }));
    expect(openings.map(({ rise }) => rise)).toEqual([1200, 1200, 900]);
  });
});
