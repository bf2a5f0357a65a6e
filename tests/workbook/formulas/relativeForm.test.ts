import { describe, expect, it } from 'vitest';
import { copiedFormula, relativeForm } from '../../../src/workbook/formulas/relativeForm';

describe('a formula told from its own cell', () => {
  it.each([
    ['B2+$B$2', 1, 2, 'R[0]C[-1]+R1C1'],
    ['SUM(A:A,3:4,$A:B)', 2, 0, 'SUM(C[0]:C[0],R[0]:R[1],C0:C[1])'],
    ['"B2"&Shop_kerf&LOG10(\'B2\'!$B3)', 2, 1, '"B2"&Shop_kerf&LOG10(\'B2\'!R[0]C1)'],
  ])('%s in row %i, column %i', (formula, row, column, form) => {
    expect(relativeForm(formula, row, column)).toBe(form);
  });

  it('differs where a row of the sheet is meant that does not go along', () => {
    expect(relativeForm('SUM(3:3)', 4, 0)).not.toBe(relativeForm('SUM(3:3)', 5, 0));
  });
});

describe('a copied formula', () => {
  it.each([
    ['A1+$A1+A$1+$A$1', 2, 1, 'B3+$A3+B$1+$A$1'],
    ['SUM(A:A,$B:C,3:$4)', 1, 1, 'SUM(B:B,$B:D,4:$4)'],
    ['A1&"A1"', -1, 0, '#REF!&"A1"'],
    ["'A1'!Z9+Sheet1!AA10", 1, 1, "'A1'!AA10+Sheet1!AB11"],
  ])('%s, %i down and %i right', (formula, down, right, copied) => {
    expect(copiedFormula(formula, down, right)).toBe(copied);
  });
});
