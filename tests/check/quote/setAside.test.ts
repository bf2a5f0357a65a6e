import { describe, expect, it } from 'vitest';
import { summaryText, type QuoteCheck } from '../../../src/check/quote';
import type { CellValue } from '../../../src/schedule/opening';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { checkRows } from './example';

const TAKEN = takeoff(
  [
    opening({ head: 'segmental', span: 36, rise: 6, row: 2, mark: 'W1' }),
    opening({ head: 'half round', span: 36, row: 3, mark: 'W2' }),
  ],
  defaultStandards(),
);
const [FIRST, SECOND] = TAKEN.openings.map(({ cost }) => Math.round(cost!.unitPrice * 100) / 100);

/** A right quote without lengths, with one more column. */
const withColumn = (heading: string, first: CellValue, second: CellValue): QuoteCheck =>
  checkRows(
    [
      ['Mark', 'Qty', heading, 'Amount'],
      ['W1', 1, first as string, FIRST!],
      ['W2', 1, second as string, SECOND!],
    ],
    TAKEN,
  );
const verdicts = ({ lines }: QuoteCheck) => lines.map(({ verdict }) => verdict);
const texts = ({ lines }: QuoteCheck) => lines[0]!.findings.map(({ text }) => text).join(' | ');

describe('a column under a heading that isn’t understood', () => {
  it('keeps lines with a figure in it from being called right: they say what they agree in', () => {
    const check = withColumn('Zorp', '41.9', '70 3/8');
    expect(verdicts(check)).toEqual(["can't tell", "can't tell"]);
    expect(check.lines[0]!.agreesIn).toEqual(['quantity', 'price']);
    expect(texts(check)).toContain(`can't tell: column "Zorp" was not understood; agrees in quantity and price`);
    expect(check.causes).toEqual([]);
  });

  it('may hold the figure that is missing, so "no length given" is not said', () => {
    const check = withColumn('Zorp', '41.9', '70 3/8');
    expect(texts(check)).toContain("can't tell: no length read");
    expect(texts(check)).not.toContain('given');
    expect(texts(withColumn('Remarks', 'by hand', ''))).toContain("can't tell: no length given");
  });

  it('leaves the other lines and what differs as they are', () => {
    expect(verdicts(withColumn('Zorp', '41.9', ''))).toEqual(["can't tell", 'agrees']);
    const wrong = checkRows(
      [
        ['Mark', 'Qty', 'Zorp', 'Length', 'Amount'],
        ['W1', 1, 7, 36, FIRST!],
      ],
      TAKEN,
    );
    expect(verdicts(wrong)).toEqual(['differs']);
  });

  it('is no reason to accuse an extension that it may explain', () => {
    const check = checkRows(
      [
        ['Mark', 'Qty', 'Each', 'Zorp %', 'Ext.'],
        ['W1', 1, FIRST!, 3, FIRST! * 0.97],
      ],
      TAKEN,
    );
    expect(verdicts(check)).toEqual(["can't tell"]);
    expect(texts(check)).toContain('"Zorp %" may say why');
  });

  it('is read with the description where it holds words', () => {
    const check = withColumn('Zorp', 'smooth', 'by hand, 2 coats');
    expect(verdicts(check)).toEqual(['agrees', 'agrees']);
    expect(check.lines[0]!.line.description).toBe('smooth');
    expect(summaryText(check)).toContain('Column "Zorp": not understood: its words are read with the description.');
  });

  it('never goes into the description with its figures', () => {
    expect(withColumn('Zorp', '41.9', '70 3/8').lines[0]!.line.description).toBe('');
  });

  it('may have no heading at all, and is named by its place', () => {
    const check = withColumn('', '41.9', '70 3/8');
    expect(verdicts(check)).toEqual(["can't tell", "can't tell"]);
    expect(summaryText(check)).toContain('Column 3 (no heading)');
  });

  it('counts as the numbers of the lines where it counts 1, 2', () => {
    expect(verdicts(withColumn('', '1', '2'))).toEqual(['agrees', 'agrees']);
  });
});

describe('what was compared', () => {
  it('is said of lines that agree: a quote without lengths agrees in quantity and price', () => {
    const check = withColumn('Remarks', '', '');
    expect(verdicts(check)).toEqual(['agrees', 'agrees']);
    expect(summaryText(check)).toContain('Compared and agreeing: 2 lines in quantity and price.');
  });

  it.each(['Board feet', 'Blank length', 'Weight', 'Part no.'])(
    'leaves out a column "%s", known but nothing of the comparison, which is named',
    (heading) => {
      const check = withColumn(heading, '3/4', '3 1/2');
      expect(verdicts(check)).toEqual(['agrees', 'agrees']);
      expect(summaryText(check)).toContain(`Column "${heading}": not compared.`);
    },
  );

  it('is the best of several lengths, the others are named', () => {
    const check = checkRows(
      [
        ['Mark', 'Length', 'LF', 'Arc length', 'Amount'],
        ['W1', '43 3/8', 3.61, 50, FIRST!],
      ],
      TAKEN,
    );
    expect(check.quote.setAside.map(({ name, done }) => `${name} ${done}`)).toEqual([
      'column "LF" read only where column "Length" is blank',
      'column "Arc length" not used: column "Length" is read in its place',
    ]);
  });
});

describe('a diameter', () => {
  it.each([36, 36.375, 36 + 2 * 3.6875])(
    'of %d is right for an edge of the casing round a 36 in half round',
    (across) => {
      const check = withColumn('Dia.', '', across);
      expect(check.lines[1]!.findings.find(({ about }) => about === 'radius')!.verdict).toBe('agrees');
    },
  );

  it('of none of them is wrong', () => {
    const check = withColumn('Dia.', '', 40);
    expect(check.lines[1]!.findings.find(({ about }) => about === 'radius')!.verdict).toBe('differs');
  });
});
