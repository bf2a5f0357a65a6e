import { describe, expect, it } from 'vitest';
import { summaryText, type QuoteCheck } from '../../../src/check/quote';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { checkSheet } from '../../../src/workbook/checkSheet';
import { opening } from '../../takeoff/openings';
import { checkRows } from './example';

/** Long points of segmental heads with a rise of 6, 3-1/2 + 3/16 outside the opening. */
const longPoint = (span: number) => {
  const radius = (span * span) / 48 + 3;
  return (radius + 3.6875) * 4 * Math.atan(12 / span);
};
const SPANS = [36, 42, 48, 54, 60];
const PIECES = [2, 1, 4, 3, 2];
const MARKS = ['A', 'B', 'C', 'D', 'E'];
const TAKEN = takeoff(
  MARKS.map((mark, at) =>
    opening({ head: 'segmental', span: SPANS[at]!, rise: 6, quantity: PIECES[at]!, mark, row: at + 2 }),
  ),
  { ...defaultStandards(), priceBand: 0.1 },
);
const ours = TAKEN.openings.map(({ cost }) => cost!.unitPrice);
type Cell = string | number;
const check = (...rows: Cell[][]) => checkRows(rows, TAKEN);
const said = (of: QuoteCheck, line: number) => of.lines[line]!.findings.map(({ text }) => text).join(' | ');
const verdicts = (of: QuoteCheck) => of.lines.map(({ verdict }) => verdict);
const feet = (inches: number) => Math.round((inches / 12) * 100) / 100;

describe('the mark in a description', () => {
  it('is a letter behind "Win", or before a dash', () => {
    for (const words of [
      'Win B - poplar casing, long point',
      'B - poplar casing, long point',
      'B: casing, long point',
    ]) {
      const found = check(['Qty', 'Description', 'Unit price'], [1, words, ours[1]!]);
      expect(found.lines[0]!.places).toEqual([1]);
    }
  });

  it('is none where the letter is a word, and a count before a dash is none', () => {
    for (const words of ['a - frame casing', '2 - arched casings'])
      expect(check(['Qty', 'Description', 'Unit price'], [1, words, 100]).lines[0]!.places).toEqual([]);
  });
});

describe('a line for several marks', () => {
  const HEADINGS = ['Mark', 'Qty', 'Length', 'Amount'];

  it('names a mark that the takeoff doesn’t have, and never agrees', () => {
    const found = check(HEADINGS, ['A and A1', 2, longPoint(36), 2 * ours[0]!]);
    expect(verdicts(found)).toEqual(["can't tell"]);
    expect(said(found, 0)).toContain('"A1" is no mark of the takeoff');
  });

  it('is wrong with a length that only some of them have', () => {
    const found = check(HEADINGS, ['A, B', 3, longPoint(36), 2 * ours[0]! + ours[1]!]);
    expect(verdicts(found)).toEqual(['differs']);
    expect(summaryText(found)).toContain('right for B, the length of A for all');
  });

  it('is quoted an amount, not a unit price', () => {
    const found = check(HEADINGS, ['A, B', 3, '', 10 * ours[0]!]);
    expect(summaryText(found)).toMatch(/amount for A, B \$[\d,.]+ quoted, ours/);
    expect(summaryText(found)).not.toContain('unit price');
  });
});

describe('the feet of all pieces', () => {
  const quote = (total: (at: number) => number) =>
    check(
      ['Mark', 'Qty', 'Total LF', 'Amount'],
      ...MARKS.map((mark, at) => [mark, PIECES[at]!, total(at), ours[at]! * PIECES[at]!]),
    );
  const all = (at: number) => feet(longPoint(SPANS[at]!) * PIECES[at]!);

  it('agree', () => expect(new Set(verdicts(quote(all)))).toEqual(new Set(['agrees'])));

  it('are wrong where they are of one piece only', () => {
    const found = quote((at) => (at === 2 ? feet(longPoint(48)) : all(at)));
    expect(verdicts(found)[2]).toBe('differs');
    expect(said(found, 2)).toContain('right for all 4 pieces: the length of one piece');
  });

  it('are held against all of them where another mistake was made', () => {
    const found = quote((at) => (at === 3 ? feet(3 * 54) : all(at)));
    expect(said(found, 3)).toContain('right for all 3 pieces: chord, not arc');
  });

  it('are of one piece under such a heading where every line has it so', () => {
    expect(new Set(verdicts(quote((at) => feet(longPoint(SPANS[at]!)))))).toEqual(new Set(['agrees']));
  });
});

describe('a price', () => {
  it('by the foot alone is held against ours with our length, on the sheet as in the text', () => {
    const rate = ours[1]! / (longPoint(42) / 12);
    const found = check(['Mark', 'Qty', 'Price per LF'], ['B', 1, rate.toFixed(2)], ['C', 4, (2 * rate).toFixed(2)]);
    expect(verdicts(found)).toEqual(['agrees', 'differs']);
    expect(summaryText(found)).not.toContain('no prices');
    const sheet = checkSheet(found, true);
    const at = sheet.columnKeys!.indexOf('verdict');
    const shown = sheet.rows.slice(sheet.body![0] - 1, sheet.body![1]).map((row) => row[at]!.value);
    expect([...shown].sort()).toEqual(['agrees', 'differs']);
  });

  it('that is to ours as all others are is no price of one divided by its pieces', () => {
    const found = check(
      ['Mark', 'Qty', 'Unit price'],
      ...MARKS.map((mark, at) => [mark, PIECES[at]!, (ours[at]! * 0.5).toFixed(2)]),
    );
    expect(summaryText(found)).not.toContain('divided by the pieces');
    const one = check(
      ['Mark', 'Qty', 'Unit price'],
      ...MARKS.map((mark, at) => [mark, PIECES[at]!, (ours[at]! * (at === 2 ? 0.25 : 1)).toFixed(2)]),
    );
    expect(said(one, 2)).toContain('perhaps the price of one divided by the pieces');
  });

  it('far below ours is not put down to a length that is a little short', () => {
    const found = check(['Mark', 'Qty', 'Length', 'Unit price'], ['B', 1, 42, ours[1]! * 0.3]);
    const causes = found.causes.filter(({ cause }) => cause !== 'openings not quoted');
    expect(causes.map(({ cause, dollars }) => [cause, dollars === null])).toEqual([
      ['price below our own by more than the band', false],
      ['chord, not arc', true],
    ]);
  });
});

describe('what is corrected', () => {
  it('is never below nothing: which of two lines has the pieces too many can’t be told', () => {
    const found = check(['Mark', 'Qty', 'Unit price', 'Ext'], ['D', 2, 100, 200], ['D', 30, 90, 2700]);
    for (const { corrected } of found.lines) expect(corrected ?? 0).toBeGreaterThanOrEqual(0);
    expect(found.corrected.total).toBeNull();
  });
});

describe('what is said at the top', () => {
  it('is not another job’s quote where its sizes are ours', () => {
    const found = check(
      ['Item', 'Qty', 'Length', 'Unit price'],
      ...[0, 1, 2, 3].map((at) => [`X${at}`, PIECES[at]!, longPoint(SPANS[at]!), ours[at]!]),
    );
    expect(found.atTop).toEqual([]);
  });

  it('is no sum of nothing where no line is for an opening', () => {
    const found = check(
      ['Item', 'Qty', 'Length', 'Unit price'],
      ['X1', 1, 20, 50],
      ['X2', 1, 21, 50],
      ['X3', 1, 22, 50],
    );
    expect(found.atTop[0]).toContain('another job');
    expect(summaryText(found)).not.toContain('$0.00: the same');
  });
});
