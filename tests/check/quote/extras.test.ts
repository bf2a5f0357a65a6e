import { describe, expect, it } from 'vitest';
import { summaryText, type QuoteCheck } from '../../../src/check/quote';
import { defaultStandards, withSettings } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { checkSheet } from '../../../src/workbook/checkSheet';
import { opening } from '../../takeoff/openings';
import { valueOf } from '../../value';
import { checkRows } from './example';

const STANDARDS = valueOf(withSettings(defaultStandards(), { keystonePrice: 45, rosettePrice: 12 }));
/** Two heads with a keystone each, one with two rosettes and two plinth blocks, which the shop has not priced. */
const TAKEN = takeoff(
  [
    {
      ...opening({ head: 'segmental', span: 36, rise: 6, mark: 'W1', quantity: 2 }),
      extras: [{ kind: 'keystone', each: 1 }],
    },
    {
      ...opening({ head: 'half round', span: 40, mark: 'W2' }),
      extras: [
        { kind: 'rosette', each: 2 },
        { kind: 'plinth block', each: 2 },
      ],
    },
  ],
  STANDARDS,
);
const [FIRST, SECOND] = TAKEN.openings.map(({ cost }) => cost!.unitPrice);
type Cells = (string | number | null)[];
const HEADS: Cells[] = [
  ['Mark', 'Description', 'Qty', 'Price each', 'Amount'],
  ['W1', 'Arch casing', 2, FIRST!, 2 * FIRST!],
  ['W2', 'Half round casing', 1, SECOND!, SECOND!],
];
const check = (...rows: Cells[]) => checkRows([...HEADS, ...rows], TAKEN);
const said = ({ lines }: QuoteCheck) =>
  lines.slice(2).map(({ verdict, findings }) => `${verdict}: ${findings.map(({ words }) => words).join(' | ')}`);

describe('keystones, plinth blocks and rosettes in a quote', () => {
  it('agree in count and in price with the shop’s list, and leave the heads’ own prices alone', () => {
    const all = check(['W1', 'Keystone', 2, 45, 90], ['W2', 'Rosettes', 2, 12, 24]);
    expect(all.lines.map(({ verdict }) => verdict)).toEqual(['agrees', 'agrees', 'agrees', 'agrees']);
    expect(all.compared.quoted).toBeCloseTo(2 * FIRST! + SECOND! + 114, 6);
    expect(all.compared.ours).toBeCloseTo(all.compared.quoted, 6);
  });

  it('are counted for the whole quantity: one keystone for two heads is one too few', () => {
    expect(said(check(['W1', 'Keystone', 1, 45, 45]))).toEqual([
      'differs: one piece counted for a pair or quantity of one | agrees | agrees',
    ]);
  });

  it('are held against the list price, as far as the band goes', () => {
    expect(said(check(['W1', 'Keystone', 2, 60, 120]))).toEqual(['differs: agrees | agrees | 33.3% above our $45.00']);
  });

  it('can’t be told where the list has no price, and say so', () => {
    expect(said(check(['W2', 'Plinth blocks', 2, 9, 18]))).toEqual([
      "can't tell: agrees | agrees | can't tell: the plinth block is not priced yet in the Standards",
    ]);
  });

  it('without a mark are for the whole job', () => {
    expect(said(check(['', 'Keystones', 2, 45, 90]))).toEqual(['agrees: agrees | agrees | agrees']);
  });

  it('that the takeoff doesn’t have, or that are quoted twice, are accused', () => {
    expect(said(check(['W2', 'Keystone', 1, 45, 45]))).toEqual([
      'differs: the takeoff has no keystone for W2 | agrees',
    ]);
    const twice = said(check(['W1', 'Keystone', 2, 45, 90], ['W1', 'Keystone', 2, 45, 90]));
    expect(twice[1]).toBe('differs: the keystone for W1 is quoted already in row 4 | agrees');
  });

  it('without a line are said with our price, unless the line of their opening has them', () => {
    const none = check();
    expect(none.notQuoted.map(({ extra, price }) => [extra, price])).toEqual([
      ['keystone', 90],
      ['rosette', 24],
      ['plinth block', null],
    ]);
    expect(none.stakes.omitted).toBe(114);
    expect(summaryText(none)).toContain('- 2 keystones for W1 not quoted; our price is $90.00.');
    const rows = HEADS.map((row) => (row[0] === 'W1' ? ['W1', 'Arch casing with keystone', ...row.slice(2)] : row));
    expect(checkRows(rows, TAKEN).notQuoted.map(({ extra }) => extra)).toEqual(['rosette', 'plinth block']);
  });

  it('stand on the Check sheet with the verdict of the check, and beside the openings that are missing', () => {
    const sheet = checkSheet(check(['W1', 'Keystone', 1, 45, 45]), true);
    const texts = sheet.rows.map((row) => row.map((cell) => String(cell?.value ?? '')).join(' '));
    expect(texts.some((text) => /differs quantity: one piece counted for a pair/.test(text))).toBe(true);
    expect(texts.some((text) => /not quoted 2 rosettes for W2 not quoted; our price is \$24\.00/.test(text))).toBe(
      true,
    );
  });
});
