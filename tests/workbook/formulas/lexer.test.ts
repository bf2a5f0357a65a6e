import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { argumentsAt, partsOf, textOf } from '../../../src/workbook/formulas/lexer';

describe('the parts of a formula', () => {
  it('joined are the formula again, whatever was typed', () => {
    const typed = fc.string({
      unit: fc.constantFrom(...'=ARCH.RADIUS("A1",$B$2:C3)&{1;2}\'My sheet\'!@#%^*+-/ ,;:éx_'.split('')),
    });
    fc.assert(
      fc.property(typed, (formula) => {
        expect(textOf(partsOf(formula))).toBe(formula);
      }),
    );
  });

  it('tells text from what is like a call or a cell in it', () => {
    const kinds = partsOf(`IF('Job "A1" 2'!B2="ARCH.RISE(A1)",LOG10(Shop_kerf),TRUE)`).map(({ kind }) => kind);
    expect(kinds.join(' ')).toBe(
      'call operator sheet operator cells operator text operator call operator name operator operator logical operator',
    );
  });

  it('splits arguments at the commas of their own level, up to the end where nothing closes them', () => {
    const split = (formula: string) => {
      const parts = partsOf(formula);
      const { args, close } = argumentsAt(parts, 1);
      return [args.map(textOf), textOf(parts.slice(close))];
    };
    expect(split('F(A1,{1,2},G(2,3)&",")+1')).toEqual([['A1', '{1,2}', 'G(2,3)&","'], ')+1']);
    expect(split('F()')).toEqual([[''], ')']);
    expect(split('F(A1,G(2')).toEqual([['A1', 'G(2'], '']);
  });
});
