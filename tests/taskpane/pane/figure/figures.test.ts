import { describe, expect, it } from 'vitest';
import { readArgument } from '../../../../taskpane/pane/cell/argument';
import { callsIn } from '../../../../src/workbook/formulas/calls';
import { firstAsk, readAsk, type OpeningAsk } from '../../../../taskpane/pane/figure/ask';
import { numbersApart } from '../../../../taskpane/pane/figure/apart';
import { ENDS, HEAD_SHAPES, type HeadShape } from '../../../../src/head/head';
import { SHAPES } from '../../../../src/head/shapes';
import { takeOne } from '../../../../taskpane/pane/openingFigures';
import { call } from '../../../../functions/call';
import { figureNamed } from '../../../../src/takeoff/figures';
import { defaultStandards } from '../../../../src/standards';

/** Sizes that the head can have, as they are typed. */
function sizesOf(head: HeadShape, inch = 1): { readonly span: string; readonly rise: string } {
  const { span, rise } = SHAPES[head].example;
  return { span: String(span * inch), rise: rise === null ? '' : String(rise * inch) };
}

function figures(changes: Partial<OpeningAsk>, unit: 'in' | 'mm' = 'in') {
  const shop = defaultStandards(unit);
  const { opening, refused } = readAsk({ ...firstAsk(shop), ...changes }, shop);
  expect(refused).toEqual({});
  const taken = takeOne(opening, shop);
  if (!taken?.own) throw new Error(`no figures: ${taken?.needs.join(' ')}`);
  return numbersApart(taken, shop, 'en-US');
}

describe('the figures of one opening', () => {
  it('give the radius of a 36 by 6 segment under its own heading, in words that show how', () => {
    const radius = figures({}).find(({ name }) => name === 'radius');
    expect(radius?.figure).toBe(30);
    expect(radius?.heading).toBe(figureNamed('radius')?.heading);
    expect(radius?.how).toContain('(18² + 6²) ÷ (2 × 6)');
  });

  const endsOf = (head: HeadShape) => (head === 'straight' ? ENDS : (['radial', 'level', 'legs'] as const));
  // The workbook's own functions are asked for each figure that the pane would write as a formula.
  it.each(
    (['in', 'mm'] as const).flatMap((unit) =>
      HEAD_SHAPES.flatMap((head) => endsOf(head).map((ends) => [head, ends, unit] as const)),
    ),
  )('of a %s head with %s ends in %s are what their formulas give', (head, ends, unit) => {
    const { span, rise } = sizesOf(head, unit === 'in' ? 1 : 25.4);
    const all = figures({ head, ends, span, rise }, unit);
    const written = all.filter(({ formula }) => formula !== null);
    expect(written.length).toBeGreaterThan(3);
    for (const { name, formula, figure } of written) {
      expect(evaluate(formula!), `${name}: ${formula}`).toBeCloseTo(figure as number, 8);
    }
  });

  it('are those of every ring, a quarter of an ellipse has three, each under a heading of its own', () => {
    const headings = figures({ head: 'quarter ellipse', ...sizesOf('quarter ellipse') }).map(({ heading }) => heading);
    expect(headings).toContain('Haunch: blank width');
    expect(headings).toContain('Second haunch: blank width');
    expect(new Set(headings).size).toBe(headings.length);
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
  const product = (part: string) => part.split('*').reduce((all, each) => all * Number(each), 1);
  const added =
    tail === ''
      ? 0
      : tail
          .slice(1)
          .split('+')
          .reduce((sum, part) => sum + product(part), 0);
  return Number(cell) + added;
}
