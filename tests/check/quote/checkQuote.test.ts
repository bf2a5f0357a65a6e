import { describe, expect, it } from 'vitest';
import { summaryText, type QuoteCheck } from '../../../src/check/quote';
import { moneyOf } from '../../../src/check/quote/checkQuote';
import type { Opening } from '../../../src/schedule/opening';
import { defaultStandards, withSettings } from '../../../src/standards';
import { takeoff, type Takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { valueOf } from '../../value';
import { checkRows } from './example';

const HEADINGS = ['Mark', 'Description', 'Qty', 'Radius', 'Length', 'Unit price', 'Extension'];

/** Span 36, rise 6: radius 30, turn 4·atan(1/3), long point 3-1/2 + 3/16 outside; inside radius 30-3/16. */
const LONG_POINT = 33.6875 * 4 * Math.atan(1 / 3);

function taken(...given: Partial<Opening>[]): Takeoff {
  const openings = given.map((one, at) =>
    opening({ head: 'segmental', span: 36, rise: 6, row: at + 2, mark: `W${at + 1}`, ...one }),
  );
  return takeoff(openings, defaultStandards());
}

const unitPrice = (from: Takeoff, place = 0) => from.openings[place]!.cost!.unitPrice;
const texts = (check: QuoteCheck, line = 0) => check.lines[line]!.findings.map(({ text }) => text).join(' | ');
const verdicts = (check: QuoteCheck) => check.lines.map(({ verdict }) => verdict);

describe('a figure that two mistakes explain', () => {
  it('is said to be either: 36 is the chord of a 36 × 6 arch and a whole number of feet', () => {
    const from = taken({});
    const check = checkRows([HEADINGS, ['W1', '', 1, 30.1875, 36, unitPrice(from), unitPrice(from)]], from);
    const length = check.lines[0]!.findings.find(({ about }) => about === 'length')!;
    expect(length.mistakes).toEqual(['chord, not arc', 'rounded to whole feet']);
    expect(length.text).toContain('chord, not arc or rounded to whole feet');
  });

  it('is said to be either: one of two pieces is a piece for a pair, and a quantity of one', () => {
    const from = taken({ quantity: 2 });
    const check = checkRows([HEADINGS, ['W1', '', 1, 30.1875, LONG_POINT, unitPrice(from), unitPrice(from)]], from);
    expect(check.lines[0]!.findings[0]!.mistakes).toEqual(['one piece counted for a pair', 'quantity of one']);
  });

  it('can’t be called wrong where it may be all pieces together: twice the length for a pair', () => {
    const from = taken({ quantity: 2 });
    const price = unitPrice(from);
    const check = checkRows([HEADINGS, ['W1', '', 2, 30.1875, 2 * LONG_POINT, price, 2 * price]], from);
    expect(verdicts(check)).toEqual(["can't tell"]);
    expect(texts(check)).toContain('all pieces together, or the head counted twice');
    const total = [...HEADINGS.slice(0, 4), 'Total length', ...HEADINGS.slice(5)];
    expect(verdicts(checkRows([total, ['W1', '', 2, 30.1875, 2 * LONG_POINT, price, 2 * price]], from))).toEqual([
      'agrees',
    ]);
  });
});

describe('nothing is called wrong that can’t be known', () => {
  it('a line without a length, a radius or a price says which is not given', () => {
    const from = taken({});
    const check = checkRows([HEADINGS, ['W1', 'casing', 1, '', '', '', '']], from);
    expect(verdicts(check)).toEqual(['agrees']);
    for (const name of ['radius', 'length', 'price']) expect(texts(check)).toContain(`can't tell: no ${name} given`);
    expect(check.causes).toEqual([]);
  });

  it('a line without a mark is not matched by guess', () => {
    const from = taken({});
    const check = checkRows([HEADINGS, ['', 'segmental casing 36 x 6', 1, 30.1875, LONG_POINT, 99, 99]], from);
    expect(verdicts(check)).toEqual(["can't tell"]);
    expect(check.lines[0]!.places).toEqual([]);
  });

  it('an opening without a line is not missing for certain while a line names none', () => {
    const from = taken({}, {});
    const price = unitPrice(from);
    const check = checkRows(
      [
        HEADINGS,
        ['W1', '', 1, 30.1875, LONG_POINT, price, price],
        ['', 'segmental casing 36 x 6', 1, 30.1875, LONG_POINT, price, price],
      ],
      from,
    );
    expect(check.notQuoted.map(({ finding }) => [finding.text, finding.dollars])).toEqual([
      ["can't tell: whether W2 is quoted: no line can be told to be its own, and row 3 could be", null],
    ]);
    expect(check.causes).toEqual([]);
    expect(texts(check, 1)).toContain('by its size it may be W2, which has no other line');
    expect(summaryText(check)).not.toContain('not quoted');
  });

  it('a line under a strange mark may be for an opening of its size that has no line; of another size it is for none', () => {
    const from = taken({}, {});
    const price = unitPrice(from);
    const of = (length: number) =>
      checkRows(
        [HEADINGS, ['W1', '', 1, '', LONG_POINT, price, price], ['X-2', '', 1, '', length, price, price]],
        from,
      );
    expect(verdicts(of(LONG_POINT))).toEqual(['agrees', "can't tell"]);
    expect(of(LONG_POINT).causes).toEqual([]);
    expect(verdicts(of(80))).toEqual(['agrees', 'differs']);
    expect(of(80).causes.map(({ cause }) => cause)).toContain('openings not quoted');
  });

  it('a lump sum that names no opening may hold those without a line', () => {
    const from = taken({}, {});
    const price = unitPrice(from);
    const check = checkRows(
      [
        HEADINGS,
        ['W1', '', 1, 30.1875, LONG_POINT, price, price],
        ['', 'Balance of the casing', '1 lot', '', '', '', 400],
      ],
      from,
    );
    expect(verdicts(check)).toEqual(['agrees', "can't tell"]);
    expect(check.notQuoted.map(({ finding }) => finding.verdict)).toEqual(["can't tell"]);
  });

  it('a radius of an elliptical head is one of several: right where it is one of them, else open', () => {
    const from = taken({ head: 'elliptical', span: 72, rise: 24 });
    const { crown, haunch } = from.openings[0]!.own!;
    const of = (radius: number) => {
      const check = checkRows([HEADINGS, ['W1', '', 1, radius, '', '', '']], from);
      return check.lines[0]!.findings.find(({ about }) => about === 'radius')!.verdict;
    };
    expect([crown!.ring.inside, haunch!.ring.inside, 40].map(of)).toEqual(['agrees', 'agrees', "can't tell"]);
  });

  it('an opening that needs something first leaves its line open', () => {
    const from = taken({ span: null, problems: [{ row: 2, field: 'span', message: 'Width is missing.' }] });
    const check = checkRows([HEADINGS, ['W1', '', 1, 30.1875, 43, 90, 90]], from);
    expect(verdicts(check)).toEqual(["can't tell"]);
    expect(texts(check)).toContain('Width is missing');
  });

  it('a total over an amount that can’t be read is not judged', () => {
    const from = taken({}, {});
    const check = checkRows(
      [HEADINGS, ['W1', '', 1, '', '', 90, 90], ['W2', '', 1, '', '', '', 'call'], ['', 'Total', '', '', '', '', 500]],
      from,
    );
    expect(check.sums[0]!.finding.text).toBe("can't tell: no amount is known for row 3");
  });
});

describe('headings decide what a figure is of', () => {
  it('an inside length and an opening radius are right under their own headings', () => {
    const from = taken({});
    const headings = ['Mark', 'Qty', 'Opening radius', 'Inside length', 'Unit price'];
    const inside = 30.1875 * 4 * Math.atan(1 / 3);
    expect(verdicts(checkRows([headings, ['W1', 1, 30, inside, unitPrice(from)]], from))).toEqual(['agrees']);
    const check = checkRows([headings, ['W1', 1, 30, LONG_POINT, unitPrice(from)]], from);
    expect(texts(check)).toContain('outside (long-point) length');
  });

  it('a width under its heading is compared with the span, a size only where it is the opening’s', () => {
    const from = taken({});
    const price = unitPrice(from);
    const width = checkRows(
      [
        ['Mark', 'Width', 'Amount'],
        ['W1', 38, price],
      ],
      from,
    );
    expect(texts(width)).toContain('rough opening for the opening');
    const size = checkRows(
      [
        ['Mark', 'Size', 'Amount'],
        ['W1', '3/4 x 3-1/2', price],
      ],
      from,
    );
    expect(texts(size)).toContain('casing width 3 1/2 agrees | thickness 3/4 agrees');
  });
});

describe('several lines for one opening', () => {
  const row = (quantity: number, from: Takeoff, mark = 'W1', description = '') => {
    const price = unitPrice(from);
    return [mark, description, quantity, 30.1875, LONG_POINT, price, Math.round(quantity * price * 100) / 100];
  };

  it('may divide its pieces between them', () => {
    const from = taken({ quantity: 2 });
    expect(verdicts(checkRows([HEADINGS, row(1, from, 'W1', 'left'), row(1, from, 'W1', 'right')], from))).toEqual([
      'agrees',
      'agrees',
    ]);
  });

  it('are one too many where the first has them all', () => {
    const from = taken({ quantity: 2 });
    const check = checkRows([HEADINGS, row(2, from), row(2, from)], from);
    expect(verdicts(check)).toEqual(['agrees', 'differs']);
    expect(check.causes).toMatchObject([
      { cause: 'quoted twice', dollars: expect.closeTo(2 * unitPrice(from), 6) as number },
    ]);
  });

  it('may be the head and its legs, whose prices are judged together', () => {
    const from = taken({ ends: 'legs', leg: 60 });
    const price = from.openings[0]!.cost!.price;
    const length = from.openings[0]!.own!.curve.length;
    const lines = (head: number, legs: number) => [
      HEADINGS,
      ['W1', 'Arch head casing', 1, 30.1875, length, head, head],
      ['W1', 'Straight legs', 2, '', 60, legs / 2, legs],
    ];
    const right = checkRows(lines(price - 60, 60), from);
    expect(right.lines[0]!.verdict).toBe('agrees');
    expect(right.causes).toEqual([]);
    expect(checkRows(lines(price * 2, 60), from).causes).toMatchObject([
      { cause: 'price above our own by more than the band' },
    ]);
  });
});

describe('an alternate', () => {
  it('is no second line for its opening, and the total may hold it or not', () => {
    const from = taken({});
    const price = unitPrice(from);
    for (const total of [price, price + 200]) {
      const check = checkRows(
        [
          HEADINGS,
          ['W1', 'Arch casing', 1, 30.1875, LONG_POINT, price, price],
          ['', 'Alternate: W1 in red oak', '', '', '', '', 200],
          ['', 'Total', '', '', '', '', total],
        ],
        from,
      );
      expect(verdicts(check)).toEqual(['agrees', "can't tell"]);
      expect(check.sums.map(({ finding }) => finding.verdict)).toEqual(['agrees']);
    }
  });
});

describe('one line for several openings', () => {
  it('has their pieces and their price together', () => {
    const from = taken({ quantity: 2 }, {}, { span: 60, rise: 10 });
    const sum = from.openings[0]!.cost!.price + from.openings[1]!.cost!.price;
    const check = checkRows([HEADINGS, ['', 'Casing W1 and W2', 3, 30.1875, LONG_POINT, sum / 3, sum]], from);
    expect(verdicts(check)).toEqual(['agrees']);
    expect(check.lines[0]!.places).toEqual([0, 1]);
    expect(check.notQuoted.map(({ place }) => place)).toEqual([2]);
    const short = checkRows([HEADINGS, ['', 'Casing W1-W3', 3, '', 43, sum / 3, sum]], from);
    expect(texts(short)).toContain('quantity 3 quoted, 4 right');
    expect(texts(short)).toContain('W1, W2, W3 have different lengths');
  });
});

describe('money', () => {
  it('is put down to the length where the price is off the same way, and adds up to the difference', () => {
    const from = taken({ quantity: 2 });
    const ours = unitPrice(from);
    const price = Math.round(ours * 80) / 100;
    const check = checkRows([HEADINGS, ['W1', '', 1, 30.1875, 38.8514, price, price]], from);
    expect(check.causes.map(({ cause }) => cause)).toContain('measured along the inside edge');
    const sum = check.causes.reduce((total, { dollars }) => total + (dollars ?? 0), 0);
    expect(sum).toBeCloseTo(price - 2 * ours, 8);
  });

  it('follows the tolerance and the band of the Standards', () => {
    const wide = valueOf(withSettings(defaultStandards(), { tolerance: 1, priceBand: 0.5 }));
    const from = takeoff([opening({ head: 'segmental', span: 36, rise: 6 })], wide);
    const price = unitPrice(from) * 1.4;
    const rows = [HEADINGS, ['W1', '', 1, 30.9, LONG_POINT - 0.9, price, price]];
    expect(verdicts(checkRows(rows, from))).toEqual(['agrees']);
    expect(
      verdicts(checkRows(rows, takeoff([opening({ head: 'segmental', span: 36, rise: 6 })], defaultStandards()))),
    ).toEqual(['differs']);
  });

  it('of a quote by the foot is compared by the line', () => {
    const from = taken({ quantity: 2 });
    const price = from.openings[0]!.cost!.price;
    const check = checkRows(
      [
        ['Mark', 'Qty', 'Unit price', 'Amount'],
        ['W1', '7.3 LF', `${(price / 7.3).toFixed(4)}/lf`, price],
      ],
      from,
    );
    expect(texts(check)).toContain('priced by the foot');
    expect(check.causes).toEqual([]);
  });
});

describe('the sums of a quote', () => {
  const from = taken({}, {});
  const sumOf = (...rows: (string | number)[][]) =>
    checkRows([['Mark', 'Description', 'Amount'], ['W1', '', 100], ['W2', '', 200], ...rows], from).sums.map(
      ({ finding }) => `${finding.verdict}: ${finding.mistakes.join(' or ')}`,
    );

  it.each<[string, (string | number)[][], string[]]>([
    ['is right', [['', 'Total', 300]], ['agrees: ']],
    ['leaves a line out', [['', 'Total', 200]], ['differs: row 2 is left out']],
    ['counts a line twice', [['', 'Total', 500]], ['differs: row 3 is counted twice']],
    ['is far off', [['', 'Total', 30]], ['differs: a tenth of it']],
    [
      'has two digits changed',
      [
        ['W9', '', 13.45],
        ['', 'Total', 313.54],
      ],
      ['differs: two digits changed places'],
    ],
    [
      'counts the subtotal in',
      [
        ['', 'Subtotal', 300],
        ['', 'Total', 600],
      ],
      ['agrees: ', 'differs: the subtotal of row 4 is counted in'],
    ],
    [
      'adds the discount',
      [
        ['', 'Discount', -30],
        ['', 'Total', 330],
      ],
      ['agrees: ', 'differs: the discount of row 4 is added, not taken off'],
    ],
    [
      'takes the discount off, however it is written',
      [
        ['', 'Discount 10%', 30],
        ['', 'Total', 270],
      ],
      ['agrees: ', 'agrees: '],
    ],
    [
      'comes before the tax and again after it',
      [
        ['', 'Total', 300],
        ['', 'Sales tax 7%', 21],
        ['', 'Grand total', 321],
      ],
      ['agrees: ', 'agrees: ', 'agrees: '],
    ],
    [
      'is followed by a deposit and what is left',
      [
        ['', 'Total', 300],
        ['', '50% deposit', 150],
        ['', 'Balance due', 150],
      ],
      ['agrees: ', 'agrees: ', 'agrees: '],
    ],
    [
      'leaves the tax out',
      [
        ['', 'Sales tax 7%', 21],
        ['', 'Total', 300],
      ],
      ['agrees: ', 'differs: the tax of row 4 is left out'],
    ],
    [
      'has a tax above its rate',
      [
        ['', 'Sales tax 7%', 27],
        ['', 'Total', 327],
      ],
      ['differs: figured at another rate: 9%', 'agrees: '],
    ],
    [
      'follows, with the discount and the tax, from a subtotal that is wrong',
      [
        ['', 'Subtotal', 320],
        ['', 'Discount 5%', -16],
        ['', 'Sales tax 7%', 21.28],
        ['', 'Total', 325.28],
      ],
      ['differs: ', 'agrees: ', 'agrees: ', 'agrees: '],
    ],
    [
      'is right though the subtotal is not',
      [
        ['', 'Subtotal', 320],
        ['', 'Discount 5%', -15],
        ['', 'Total', 285],
      ],
      ['differs: ', 'agrees: ', 'agrees: '],
    ],
    [
      'is wrong beside a subtotal that is wrong',
      [
        ['', 'Subtotal', 320],
        ['', 'Total', 407],
      ],
      ['differs: ', 'differs: '],
    ],
    [
      'has a tax on part of the quote',
      [
        ['', 'Sales tax 7%', 7],
        ['', 'Total', 307],
      ],
      ["can't tell: ", 'agrees: '],
    ],
  ])('a total that %s', (_what, rows, expected) => {
    expect(sumOf(...rows)).toEqual(expected);
  });
});

describe('the money of a quote', () => {
  it('is compared like with like: lines with our price for the same openings, charges for themselves', () => {
    const from = taken({ quantity: 2 }, {}, {});
    const [pair, one] = [from.openings[0]!.cost!.price, unitPrice(from, 1)];
    const check = checkRows(
      [
        HEADINGS,
        ['W1', '', 2, 30.1875, LONG_POINT, '', pair - 10],
        ['W2', '', 1, 30.1875, LONG_POINT, '', one],
        ['', 'Alternate: W2 in red oak', '', '', '', '', 500],
        ['', 'Trip to the site', 1, '', '', '', 75],
        ['', 'Sales tax', '', '', '', '', 20],
        ['', 'Total', '', '', '', '', pair + one + 85],
      ],
      from,
    );
    expect(check.compared).toEqual({
      quoted: expect.closeTo(pair + one - 10, 6) as number,
      ours: expect.closeTo(pair + one, 6) as number,
      otherLines: 0,
      charges: [
        { charge: 'other charge', amount: 75, checked: false },
        { charge: 'tax', amount: 20, checked: false },
      ],
      total: pair + one + 85,
    });
    const text = summaryText(check);
    expect(text).toMatch(/Lines for openings that both price: quoted \$[\d.]+, ours \$[\d.]+: \$10\.00 less\./);
    expect(text).toContain('Charges, not compared: other charge $75.00, tax $20.00.');
  });
});

describe('one wrong subtotal', () => {
  it('is said once, with its money once', () => {
    const from = taken({}, {});
    const [one, two] = [unitPrice(from), unitPrice(from, 1)].map((price) => Math.round(price * 100) / 100);
    const stated = one! + two! + 20;
    const check = checkRows(
      [
        ['Mark', 'Description', 'Amount'],
        ['W1', '', one!],
        ['W2', '', two!],
        ['', 'Subtotal', stated],
        ['', 'Discount 10%', -Math.round(stated * 10) / 100],
        ['', 'Total', stated - Math.round(stated * 10) / 100],
      ],
      from,
    );
    expect(check.causes).toMatchObject([
      { cause: 'subtotal is not the sum', dollars: expect.closeTo(20, 2) as number },
    ]);
    expect(check.sums[1]!.finding.text).toContain('10% by the subtotal of row 4 as stated');
    expect(check.sums[2]!.finding.text).toContain('follows from the subtotal of row 4 as stated');
  });
});

describe('causes', () => {
  it('come in the order of the money they show, and hold the money of a line once', () => {
    const from = taken({ quantity: 2 }, { quantity: 1, span: 60, rise: 9 }, { span: 48, rise: 8 });
    const price = from.openings.map((_row, place) => unitPrice(from, place));
    const check = checkRows(
      [
        HEADINGS,
        ['W1', '', 2, 30.1875, 38.8514, price[0]! * 0.82, price[0]! * 1.64],
        ['W2', '', 1, '', 60, price[1]!, price[1]!],
        ['W3', '', 1, '', '', price[2]! * 1.5, price[2]! * 1.5],
      ],
      from,
    );
    const shown = check.causes.map(moneyOf);
    expect(shown).toEqual([...shown].sort((one, other) => other - one));
    const inside = check.causes.find(({ cause }) => cause === 'measured along the inside edge')!;
    expect(inside.stake).toBeCloseTo(1.64 * price[0]!, 2);
    expect(inside.dollars).toBeCloseTo(-0.36 * price[0]!, 2);
  });
});

describe('a length as it is quoted', () => {
  it('is said with all its decimals: 3.613 is feet read as inches, not "3 5/8"', () => {
    const from = taken({});
    const check = checkRows([HEADINGS, ['W1', '', 1, '', 3.613, '', '']], from);
    expect(texts(check)).toContain('length 3.613 quoted, 43 3/8 right at the long point: feet read as inches');
  });

  it('in millimeters may be off ten times: centimeters', () => {
    const standards = defaultStandards('mm');
    const from = takeoff([opening({ head: 'half round', span: 900, mark: 'W1' })], standards);
    const length = from.openings[0]!.own!.curve.length;
    const check = checkRows([HEADINGS, ['W1', '', 1, '', (length / 10).toFixed(2), '', '']], from);
    expect(texts(check)).toContain('centimeters read as millimeters');
  });
});

describe('whatever a quote holds', () => {
  it('the check gives words and figures, never NaN', () => {
    const from = taken(
      { quantity: 2 },
      { head: 'round', span: 30, rise: null },
      { head: 'straight', span: 32, rise: null },
    );
    const cells = [0, -1, 1e12, '', '=1+1', '#REF!', '<b>x</b>', '½', '2 pr', '1 lot', 'incl.', '3068', true, null];
    for (let first = 0; first < cells.length; first++) {
      const cell = (at: number) => cells[(first * (at + 1) + at) % cells.length] as string;
      const rows = ['W1', 'W2', 'W3', 'W9', ''].map((mark) => [
        mark,
        cell(0),
        cell(1),
        cell(2),
        cell(3),
        cell(4),
        cell(5),
      ]);
      const check = checkRows([HEADINGS, ...rows, ['', 'Total', '', '', '', '', cell(6)]], from);
      const { items, passedOver } = check.quote;
      expect(items.length + passedOver.length).toBe(rows.length + 2);
      expect(summaryText(check) + JSON.stringify(check.lines) + JSON.stringify(check.causes)).not.toMatch(
        /NaN|undefined|Infinity/,
      );
    }
  });

  it('an empty quote of headings only has no lines and every opening is not quoted', () => {
    const from = taken({}, {});
    const check = checkRows([HEADINGS], from);
    expect(check.lines).toEqual([]);
    expect(check.notQuoted).toHaveLength(2);
  });
});
