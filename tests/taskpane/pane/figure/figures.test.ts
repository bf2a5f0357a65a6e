import { describe, expect, it } from 'vitest';
import { readArgument } from '../../../../taskpane/pane/cell/argument';
import { callsIn } from '../../../../src/workbook/formulas/calls';
import { firstAsk, readAsk, type OpeningAsk } from '../../../../taskpane/pane/figure/ask';
import { figuresOf } from '../../../../taskpane/pane/figure/figures';
import { HEAD_SHAPES, type HeadShape } from '../../../../src/head/head';
import { SHAPES } from '../../../../src/head/shapes';
import { takeOne } from '../../../../taskpane/pane/openingFigures';
import { call } from '../../../../functions/call';
import { defaultStandards } from '../../../../src/standards';

/** Sizes that the head can have, as they are typed. */
function sizesOf(head: HeadShape): { readonly span: string; readonly rise: string } {
  const { span, rise } = SHAPES[head].example;
  return { span: String(span), rise: rise === null ? '' : String(rise) };
}

function figures(changes: Partial<OpeningAsk>, unit: 'in' | 'mm' = 'in') {
  const shop = defaultStandards(unit);
  const { opening, refused } = readAsk({ ...firstAsk(shop), ...changes }, shop);
  expect(refused).toEqual({});
  const taken = takeOne(opening, shop);
  if (!taken?.inputs || !taken.own) throw new Error(`no figures: ${taken?.needs.join(' ')}`);
  return figuresOf(taken.inputs, taken.own, shop);
}

describe('the figures of one opening', () => {
  it('give the radius of a 36 by 6 segment, in words that show how', () => {
    const radius = figures({}).find((figure) => figure.key === 'radius');
    expect(radius?.value).toBe(30);
    expect(radius?.words).toContain('(18² + 6²) ÷ (2 × 6)');
  });

  // The workbook's own functions are asked for each figure that the pane would write as a formula.
  it.each(HEAD_SHAPES.flatMap((head) => (['radial', 'level', 'legs'] as const).map((ends) => [head, ends] as const)))(
    'of a %s head with %s ends are what their formulas give',
    (head, ends) => {
      const all = figures({ head, ends, ...sizesOf(head) });
      expect(all.length).toBeGreaterThan(3);
      for (const figure of all) {
        const answer = evaluate(figure.formula);
        expect(answer, `${figure.key}: ${figure.formula}`).toBeCloseTo(figure.value, 9);
      }
    },
  );

  it('are in millimeters where the workbook is', () => {
    const radius = figures({ span: '914.4', rise: '152.4' }, 'mm').find((figure) => figure.key === 'radius');
    expect(radius?.value).toBeCloseTo(762, 9);
  });
});

/** A number, or an ARCH call, alone or in INDEX, with lengths added to it. */
function evaluate(formula: string): number {
  const [written] = callsIn(`=${formula}`);
  if (!written) return Number(formula);
  const args = written.args.map((text) => {
    const argument = readArgument(text);
    if (argument.kind !== 'value') throw new Error(`${text} is no value`);
    return argument.value;
  });
  const answer = call(written.name, args);
  if ('error' in answer) throw new Error(`${formula}: ${answer.message}`);
  const place = /^INDEX\(.*\),(\d+),(\d+)\)/.exec(formula);
  const cell =
    place && Array.isArray(answer.value) ? answer.value[Number(place[1]) - 1]?.[Number(place[2]) - 1] : answer.value;
  const tail = formula.slice(formula.lastIndexOf(')') + 1);
  const added = tail === '' ? 0 : tail.split('+').reduce((sum, part) => sum + Number(part), 0);
  return Number(cell) + added;
}
