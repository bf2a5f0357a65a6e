import { beforeAll, describe, expect, it } from 'vitest';
import { summaryText, type QuoteCheck } from '../../../src/check/quote';
import { moneyOf } from '../../../src/check/quote/checkQuote';
import { exampleCheck } from './example';

let check: QuoteCheck;
beforeAll(async () => {
  ({ check } = await exampleCheck());
}, 60_000);

const lineOf = (row: number) => check.lines.find(({ line }) => line.row === row)!;
const found = (row: number, about: string) => lineOf(row).findings.find((one) => one.about === about);

describe('the example quote, one line for each kind of mistake', () => {
  // What was done to each line when the example was written.
  it.each<[number, string, 'quantity' | 'length' | 'radius', string]>([
    [7, 'W1', 'quantity', 'one piece counted for a pair or quantity of one'],
    [8, 'W2', 'length', 'measured along the inside edge'],
    [9, 'W3', 'length', 'reveal left out'],
    [11, 'W5', 'length', 'rise read as radius'],
    [12, 'W6', 'length', 'measured along the center'],
    [13, 'W7', 'length', 'chord, not arc'],
    [14, 'W8', 'length', 'feet read as inches'],
    [15, 'W9', 'length', 'rounded to whole feet'],
    [16, 'W10', 'radius', 'opening radius used for the casing'],
    [17, 'W11', 'length', 'half circle of this span'],
    [19, 'D2', 'length', 'radial ends where level ends were meant'],
    [21, 'W17', 'quantity', 'quantity of one'],
    [22, 'W20', 'radius', 'rise read as radius'],
  ])('row %i (%s): its %s is found to be "%s"', (row, mark, about, mistake) => {
    expect(lineOf(row).line.mark).toBe(mark);
    expect(lineOf(row).verdict).toBe('differs');
    expect(found(row, about)).toMatchObject({ verdict: 'differs', cause: mistake });
    expect(found(row, about)!.text).toContain(mistake);
  });

  it('finds an extension that is not quantity × unit price, and a price outside the band', () => {
    expect(found(29, 'extension')).toMatchObject({
      verdict: 'differs',
      mistakes: ['unit price not multiplied by the quantity'],
      dollars: -96,
    });
    expect(found(23, 'unit price')).toMatchObject({ verdict: 'differs', quoted: 298 });
    expect(found(23, 'unit price')!.text).toMatch(/\d% above our \$/);
  });

  it('finds a line written twice, a line for no opening, and what is not quoted', () => {
    expect(found(24, 'opening')).toMatchObject({ verdict: 'differs', cause: 'quoted twice', dollars: 120 });
    expect(found(26, 'opening')).toMatchObject({ verdict: 'differs', dollars: 150 });
    expect(check.notQuoted.map(({ opening }) => opening.opening.mark)).toContain('G3');
  });

  it('leaves right lines alone, finds a mark in a description and reads millimeters', () => {
    for (const row of [10, 18, 20, 30]) expect([row, lineOf(row).verdict]).toEqual([row, 'agrees']);
    expect(lineOf(20)).toMatchObject({ how: 'by the mark in its description' });
    expect(lineOf(30).line.length).toBeCloseTo(2183 / 25.4, 10);
  });

  it('says what can’t be told instead of calling it wrong', () => {
    expect(lineOf(25).verdict).toBe("can't tell");
    expect(found(11, 'radius')!.text).toBe("can't tell: no radius given");
    expect(found(12, 'quantity')!.verdict).toBe("can't tell");
  });

  it('sets freight, tax and discount apart, follows the subtotals and names what the total leaves out', () => {
    expect(check.sums.map(({ item, finding }) => [item.row, finding.verdict])).toEqual([
      [27, 'agrees'],
      [31, 'agrees'],
      [32, 'agrees'],
      [33, 'agrees'],
      [34, 'agrees'],
      [35, 'differs'],
    ]);
    expect(check.sums.at(-1)!.finding).toMatchObject({ mistakes: ['the freight of row 34 is left out'] });
    expect(check.sums.at(-1)!.finding.dollars).toBeCloseTo(-145, 6);
  });

  it('sums up each cause with its dollars, most money first, as a text to paste', () => {
    const shown = check.causes.map(moneyOf);
    expect(shown).toEqual([...shown].sort((one, other) => other - one));
    const text = summaryText(check);
    expect(text).toContain("4 lines agree, 17 differ, 1 can't be told.");
    expect(text).toContain('Quoted twice: W10 (row 24); $120.00 too much.');
    expect(text).toMatch(/Chord, not arc: W7 \(row 13\); \$\d+\.\d\d too little\./);
    expect(text).not.toMatch(/NaN|undefined|null|Infinity/);
  });
});
