import { describe, expect, it } from 'vitest';
import { call } from '../../functions/call';
import { defaultStandards } from '../../src/standards';
import { aloneAndWithout } from '../../src/takeoff/alone';
import type { Opening } from '../../src/schedule/opening';
import { FIGURES, figureOf, type Explained } from '../../src/takeoff/figures';
import { MONEY_FIGURES } from '../../src/takeoff/moneyFigures';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff, type OpeningTakeoff } from '../../src/takeoff/takeoff';
import { random } from '../random';
import { opening, randomOpenings } from './openings';

const STANDARDS = defaultStandards();
const TAKEN = takeoff(randomOpenings(60, random(7)), STANDARDS);
const complete = TAKEN.openings.filter(({ cost }) => cost !== null);

/** What a worksheet function gives for the numbers that an explanation names; of a spill the first, or the one it says. */
function called({ by, from }: Explained): unknown {
  const args = from.map(({ value }) => value);
  const answer = call(by.replace(/^.*ARCH\./, ''), args);
  if ('error' in answer) return answer.message;
  return Array.isArray(answer.value)
    ? (answer.value as number[][])[0]![by.startsWith('the second of') ? 1 : 0]
    : answer.value;
}

const isFunction = ({ by }: Explained) => /^(?:the second of )?ARCH\.[A-Z]+$/.test(by);

describe('a figure explained', () => {
  it('comes out of the named function with the very numbers that are told, for 60 random openings', () => {
    const seen = new Set<string>();
    for (const row of complete) {
      for (const figure of FIGURES) {
        const value = figureOf(figure, row, 'in');
        const explained = figure.explain(row, STANDARDS);
        if (value === '' || explained === null || !isFunction(explained)) continue;
        seen.add(figure.name);
        const given = called(explained);
        expect([figure.name, row.known.head, typeof given]).toEqual([figure.name, row.known.head, 'number']);
        expect(given as number, `${figure.name} of ${row.known.head}`).toBeCloseTo(value as number, 8);
      }
    }
    for (const name of [
      'radius',
      'long point',
      'leg miter',
      'head miter',
      'blank width',
      'blank length',
      'haunch blank width',
      'cuts',
    ])
      expect(seen).toContain(name);
  });

  it('is there for every figure that a complete opening has', () => {
    for (const row of complete) {
      const bare = FIGURES.filter(
        (figure) => figureOf(figure, row, 'in') !== '' && figure.explain(row, STANDARDS) === null,
      );
      expect(bare.map(({ name }) => name)).toEqual([]);
    }
  });
});

describe('money explained', () => {
  const planned = planTakeoff(TAKEN).taken;
  const row = planned.openings.find(({ cost }) => cost !== null)!;
  const numbers = (name: string) => {
    const figure = MONEY_FIGURES.find((each) => each.name === name)!;
    const given = Object.fromEntries(figure.explain(row, planned)!.from.map((each) => [each.name, Number(each.value)]));
    return { given, value: figure.value(row)! };
  };

  it('adds up, from wood to price', () => {
    const material = numbers('material');
    expect((material.given['wood']! + material.given['shared wood']!) * material.given['wood factor']!).toBeCloseTo(
      material.value,
      9,
    );
    const cost = numbers('cost');
    expect(cost.given['material']! + cost.given['labor']! + cost.given['share']!).toBeCloseTo(cost.value, 9);
    const unit = numbers('unit price');
    expect((unit.given['cost']! / unit.given['quantity']!) * 1.35).toBeCloseTo(unit.value, 2);
    const price = numbers('price');
    expect(price.given['unit price']! * price.given['quantity']!).toBeCloseTo(price.value, 9);
  });

  it('tells how much of a knife and a set-up is its own', () => {
    const two = takeoff(
      [
        opening({ head: 'segmental', span: 36, rise: 8, quantity: 2 }),
        opening({ head: 'segmental', span: 36, rise: 8 }),
      ],
      STANDARDS,
    );
    const share = MONEY_FIGURES.find(({ name }) => name === 'share')!;
    const { from } = share.explain(two.openings[0] as OpeningTakeoff, two)!;
    expect(from.filter(({ measure }) => measure === 'text').map(({ value }) => value)).toEqual(['2 of 3', '2 of 3']);
    const money = from.filter(({ name }) => !name.startsWith('wood') && !name.includes('through'));
    expect(money.reduce((sum, { value }) => sum + Number(value), 0)).toBeCloseTo(two.openings[0]!.share!.money, 9);
  });
});

describe('an opening alone', () => {
  it('costs what a job of it alone costs, and the job saves less than that where things are shared', () => {
    const openings = [
      opening({ no: 1, head: 'segmental', span: 36, rise: 8, quantity: 2 }),
      opening({ no: 2, head: 'segmental', span: 36, rise: 8 }),
    ];
    const taken = takeoff(openings, STANDARDS);
    const job = { openings, cells: taken.openings.map(({ cells }) => cells), standards: STANDARDS };
    const { price, saved } = aloneAndWithout({ ...job, at: 1 });
    expect(price).toBe(planTakeoff(takeoff([openings[1]!], STANDARDS)).taken.totals.price);
    const whole = planTakeoff(taken).taken.totals.price;
    const others = planTakeoff(takeoff([openings[0]!], STANDARDS)).taken.totals.price;
    expect(saved).toBeCloseTo(whole - others, 9);
    expect(saved).toBeLessThan(price!);

    // A factor that is held counts with the opening and without it; alone it is another job.
    const held = new Map([[taken.openings[1]!.own!.stock.toLowerCase(), 3]]);
    const sold = (of: readonly Opening[]) => planTakeoff(takeoff(of, STANDARDS), {}, held).taken.totals.price;
    const quoted = aloneAndWithout({ ...job, at: 1, held });
    expect(quoted.price).toBe(price);
    expect(quoted.saved).toBeCloseTo(sold(openings) - sold([openings[0]!]), 9);
    expect(quoted.saved).toBeGreaterThan(saved);
  });
});
