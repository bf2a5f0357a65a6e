import { describe, expect, it } from 'vitest';
import { readQuote, type Quote } from '../../src/check/quote';
import { dollars, readMoney } from '../../src/quote/money';
import { readTables } from '../../src/schedule/readTables';
import type { CellValue } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { refusalOf, valueOf } from '../value';

const IN = defaultStandards();

function read(...rows: CellValue[][]): Quote {
  return valueOf(readQuote({ name: 'quote.csv', firstRow: 1, rows }, IN));
}

const HEADINGS = ['Item', 'Description', 'Qty', 'Radius', 'Length', 'Unit Price', 'Extension'];

describe('the columns of a quote', () => {
  it.each<[string, string]>([
    ['Qty', 'quantity'],
    ['QTY.', 'quantity'],
    ['No. of pieces', 'quantity'],
    ['Item #', 'mark'],
    ['Tag', 'mark'],
    ['Description', 'description'],
    ['Size', 'size'],
    ['Width', 'span'],
    ['Radius (in)', 'radius'],
    ['Rad.', 'radius'],
    ['Outside radius', 'outsideRadius'],
    ['Arc Length', 'length'],
    ['LENGTH, FT-IN', 'length'],
    ['Inside length', 'insideLength'],
    ['LF', 'totalLength'],
    ['Lin Ft', 'totalLength'],
    ['Lin. Ft.', 'totalLength'],
    ['Linear Feet', 'totalLength'],
    ['Lineal ft', 'totalLength'],
    ['Footage', 'totalLength'],
    ['Lineal inches', 'totalLength'],
    ['Overall length', 'length'],
    ['OA length', 'length'],
    ['Trim length', 'length'],
    ['Length (long pt.)', 'length'],
    ['Run (long pt.)', 'length'],
    ['L (in)', 'length'],
    ['Length (short point)', 'insideLength'],
    ['Inside R', 'radius'],
    ['Outside R.', 'outsideRadius'],
    ['Dia.', 'diameter'],
    ['Price per LF', 'footPrice'],
    ['Price per ft', 'footPrice'],
    ['Price per foot', 'footPrice'],
    ['$/LF', 'footPrice'],
    ['Rate/ft', 'footPrice'],
    ['Unit Price', 'unitPrice'],
    ['Price Each', 'unitPrice'],
    ['Price/LF', 'footPrice'],
    ['$/lf', 'footPrice'],
    ['Unit price (per foot)', 'footPrice'],
    ['$/ea', 'unitPrice'],
    ['Unit $', 'unitPrice'],
    ['Unit cost ($)', 'unitPrice'],
    ['Ext.', 'extension'],
    ['Ext. Price', 'extension'],
    ['Extended', 'extension'],
    ['Amount', 'extension'],
    ['Line total', 'extension'],
    ['Total ($)', 'extension'],
  ])('headed "%s" are understood as %s', (heading, meaning) => {
    const beside = meaning === 'extension' ? 'Each' : 'Extension';
    const quote = read([heading, beside], ['1', '2']);
    expect(quote.meaning[0]).toBe(meaning);
  });

  it('named by two rows, "Unit" over "Price", are read as one', () => {
    const quote = read(['', '', 'Unit', 'Ext.'], ['Mark', 'Qty', 'Price', 'Price'], ['W1', 2, 90, 180]);
    expect(quote.meaning).toEqual(['mark', 'quantity', 'unitPrice', 'extension']);
    expect(quote.lines).toHaveLength(1);
  });

  it('with one price only give what the line costs, and "Unit" beside a price the unit of measure', () => {
    const quote = read(['Mark', 'Qty', 'Unit', 'Price'], ['W1', 2, 'ea', 180]);
    expect(quote.meaning).toEqual(['mark', 'quantity', 'measure', 'extension']);
    const figures = read(['Mark', 'Qty', 'Unit', 'Ext'], ['W1', 2, 90, 180]);
    expect(figures.meaning).toEqual(['mark', 'quantity', 'unitPrice', 'extension']);
  });

  it('of our own takeoff are understood: the inside radius is the casing’s, the price beside a unit price the amount', () => {
    const headings = ['Mark', 'Quantity', 'Radius', 'Inside radius', 'Cost', 'Unit price', 'Price'];
    const quote = read(headings, ['W1', 2, 30, 30.1875, 70, 95, 190]);
    expect(quote.meaning).toEqual(['mark', 'quantity', null, 'radius', null, 'unitPrice', 'extension']);
    expect(quote.setAside.map(({ name, done }) => `${name} ${done}`)).toEqual([
      'column "Radius" not used: column "Inside radius" is read in its place',
      'column "Cost" not used: column "Unit price" is read in its place',
    ]);
  });

  it('of feet, or of feet and inches, are read in them', () => {
    const feet = read(['Mark', 'Length (ft)', 'Amount'], ['W1', 3.5, 90]);
    expect(feet.lines[0]!.length).toBe(42);
    const both = read(['Mark', 'Length (ft-in)', 'Amount'], ['W1', '3-6 1/2', 90], ['W2', `3'-6"`, 90]);
    expect(both.lines.map(({ length }) => length)).toEqual([42.5, 42]);
    const named = (heading: string) => read(['Mark', heading, 'Amount'], ['W1', 3.5, 90]).lines[0]!.length;
    expect(['Lineal ft', 'Footage', 'Lineal inches'].map(named)).toEqual([42, 42, 3.5]);
    expect(read(['Mark', 'Dia.', 'Amount'], ['W1', 36, 90]).lines[0]).toMatchObject({ radius: 18, byDiameter: true });
  });

  it('are refused in a sentence where there are none', () => {
    const table = (rows: CellValue[][]) => readQuote({ name: 'q.csv', firstRow: 1, rows }, IN);
    expect(refusalOf(table([]))).toBe('"q.csv" is empty.');
    expect(refusalOf(table([['We can do it for $900'], ['thanks']]))).toMatch(/^No headings were found in "q.csv": /);
  });
});

describe('the rows of a quote', () => {
  it('are each a line, a charge, a sum, or passed over with the reason', () => {
    const rows: CellValue[][] = [
      ['Quotation 1042'],
      [],
      HEADINGS,
      ['', '', 'ea', 'in', 'in', '$', '$'],
      ['SECOND FLOOR'],
      ['W1 - W5'],
      ['W1', 'Casing', 2, 18.1875, 68.125, 90, 180],
      HEADINGS,
      ['', 'Less 5% trade discount', '', '', '', '', '(9.00)'],
      ['', 'Estimated freight', 1, '', '', 45, 45],
      ['', 'State sales tax 7%', '', '', '', '', 11.97],
      ['', '', '', '', '', 'Subtotal:', '$180.00'],
      ['', 'GRAND TOTAL', '', '', '', '', '227.97'],
      ['', 'Delivery in three weeks', '', '', '', '', ''],
      ['', 'Thank you for the opportunity', '', '', '', '', ''],
    ];
    const quote = read(...rows);
    expect(
      quote.items.map((item) => [
        item.row,
        item.kind === 'line' ? 'line' : item.kind === 'sum' ? item.sum : item.charge,
      ]),
    ).toEqual([
      [7, 'line'],
      [9, 'discount'],
      [10, 'freight'],
      [11, 'tax'],
      [12, 'subtotal'],
      [13, 'total'],
    ]);
    expect(quote.items.map((item) => (item.kind === 'line' ? item.extension : item.amount))).toEqual([
      180, -9, 45, 11.97, 180, 227.97,
    ]);
    expect(quote.items.length + quote.passedOver.length).toBe(rows.length);
  });

  it('of freight without an amount, and totals with words behind them, are what their words say', () => {
    const quote = read(
      HEADINGS,
      ['W1', 'Casing', 2, 18.1875, 68.125, 90, 180],
      ['', 'Freight', 1, '', '', 'TBD', 'TBD'],
      ['', 'Delivery', 1, '', '', '', ''],
      ['', 'Sales tax 7%', '', '', '', '', 12.6],
      ['', 'Total w/ tax', '', '', '', '', 192.6],
      ['', 'Total before freight:', '', '', '', '', 192.6],
      ['W9', 'Total with care', 1, 18, 68, 90, 90],
    );
    expect(
      quote.items.map((item) => [
        item.row,
        item.kind === 'line' ? 'line' : item.kind === 'sum' ? item.sum : item.charge,
        item.kind === 'line' ? item.extension : item.amount,
      ]),
    ).toEqual([
      [2, 'line', 180],
      [3, 'freight', null],
      [5, 'tax', 12.6],
      [6, 'total', 192.6],
      [7, 'total', 192.6],
      [8, 'line', 90],
    ]);
    expect(quote.passedOver.map(({ row, why }) => [row, why])).toEqual([
      [1, 'headings'],
      [4, 'note'],
    ]);
  });

  it('that only mention freight, tax or a total in a line of molding stay lines', () => {
    const quote = read(
      HEADINGS,
      ['W1', 'Casing, delivered to the site', 1, 18, 68, 90, 90],
      ['W2', 'Total of two pieces, glued', 1, 18, 68, 90, 90],
      ['W3', 'Freight elevator door casing', 1, 18, 68, 90, 90],
    );
    expect(quote.lines).toHaveLength(3);
  });

  it('keep a figure that can’t be read as null and say why, quoting it', () => {
    const [line] = read(HEADINGS, ['W1', 'Casing', 'a few', 'tbd', '3q', 'call', '12..5']).lines;
    expect(line).toMatchObject({ quantity: null, radius: null, length: null, unitPrice: null, extension: null });
    expect(line!.problems.map(({ field }) => field).sort()).toEqual([
      'extension',
      'length',
      'quantity',
      'radius',
      'unitPrice',
    ]);
    for (const quoted of ['"a few"', '"tbd"', '"3q"', '"call"', '"12..5"'])
      expect(line!.problems.some(({ message }) => message.includes(quoted))).toBe(true);
  });

  it.each<[CellValue, CellValue, number | null, string]>([
    [2, 'ea', 2, 'piece'],
    ['2 ea', '', 2, 'piece'],
    ['1 pr', '', 2, 'piece'],
    [2, 'pair', 4, 'piece'],
    ['1 lot', '', null, 'lot'],
    [1, 'LS', null, 'lot'],
    ['86.7 LF', '', 86.7, 'foot'],
    [86.7, 'LF', 86.7, 'foot'],
  ])('of %j %j count %j by the %s', (count, measure, quantity, by) => {
    const [line] = read(['Mark', 'Qty', 'UOM', 'Unit price', 'Amount'], ['W1', count, measure, 10, 20]).lines;
    expect(line).toMatchObject({ quantity, by });
  });

  it.each<[CellValue, CellValue, number, string, number | null]>([
    // A price by the foot: a bare figure is feet where the extension says so, or where it can't be pieces.
    [2, 104.83, 2, 'piece', null],
    [5.7, 82.65, 5.7, 'foot', 14.5],
    [6, 87, 6, 'foot', 14.5],
    ['5.7 LF', null, 5.7, 'foot', 14.5],
    [1, null, 1, 'piece', null],
  ])('of %j at 14.50 the foot for %j count %j by the %s', (count, amount, quantity, by, unitPrice) => {
    for (const [heading, price] of [
      ['Unit price', '14.50/lf'],
      ['Price/LF', 14.5],
    ] as const) {
      const [line] = read(['Mark', 'Qty', heading, 'Amount'], ['W1', count, price, amount]).lines;
      expect(line).toMatchObject({ quantity, by, unitPrice, problems: [] });
    }
  });

  it('from a text file with stray marks, blank lines and a total in another column are read alike', async () => {
    const text = '\ufeffquote;;;\n\nMark;Qty;Length;Price\nW1;1;3\u2032-6\u2033;"$1,090.00"\n;;Total;1090\n';
    const [table] = valueOf(await readTables('quote.csv', new TextEncoder().encode(text)));
    const quote = valueOf(readQuote(table!, IN));
    expect(quote.lines).toMatchObject([{ mark: 'W1', quantity: 1, length: 42, extension: 1090 }]);
    expect(quote.items.at(-1)).toMatchObject({ kind: 'sum', sum: 'total', amount: 1090 });
  });
});

describe('money', () => {
  it.each<[CellValue, number]>([
    [85, 85],
    ['85', 85],
    ['$85.00', 85],
    ['$ 1,234.50', 1234.5],
    ['1,234,567.89', 1234567.89],
    ['USD 12', NaN],
    ['US $12', 12],
    ['(120.00)', -120],
    ['($120)', -120],
    ['-120', -120],
    ['-$120', -120],
    ['120.00-', -120],
    ['12.50 ea', 12.5],
    ['14.50/lf', 14.5],
    ['.75', 0.75],
    ['included', 0],
    ['N/C', 0],
  ])('%j is read as %d, or refused', (cell, amount) => {
    const read = readMoney(cell);
    if (Number.isNaN(amount)) expect(read.ok).toBe(false);
    else expect(valueOf(read)).toBe(amount);
  });

  it.each([
    '',
    'call',
    '12,50',
    '1.234,50',
    '12 34',
    '=1+1',
    '#REF!',
    '1e9',
    '999999999999',
    '--5',
    true,
    Infinity,
    NaN,
  ])('%j is refused, never guessed', (cell) => expect(readMoney(cell).ok).toBe(false));

  it('is written with cents, thousands and the sign in front', () => {
    expect([0, 1234.5, -85, 0.005, -0.001, 1e6].map(dollars)).toEqual([
      '$0.00',
      '$1,234.50',
      '-$85.00',
      '$0.01',
      '$0.00',
      '$1,000,000.00',
    ]);
  });
});
