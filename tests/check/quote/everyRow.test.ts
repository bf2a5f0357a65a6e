import { describe, expect, it } from 'vitest';
import { summaryText } from '../../../src/check/quote';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { checkRows } from './example';

const TAKEN = takeoff([opening({ head: 'segmental', span: 36, rise: 6, mark: 'A', quantity: 2 })], defaultStandards());

describe('a summary leaves no row of the quote out', () => {
  it('a mark that is none of ours is said of a line that differs in something else', () => {
    const check = checkRows(
      [
        ['Item', 'Qty', 'Price each', 'Amount'],
        ['A and A1', 2, 1, 2],
      ],
      TAKEN,
    );
    expect(check.lines[0]!.verdict).toBe('differs');
    expect(summaryText(check)).toContain(`can't be told: "A1" is no mark of the takeoff`);
  });

  it('a note below the lines stands there with its row, what is above the headings does not', () => {
    const check = checkRows(
      [
        ['Quotation of our own'],
        ['Mark', 'Qty', 'Price each', 'Amount'],
        ['A', 2, 100, 200],
        ['All casing in red oak as discussed'],
        ['Total', null, null, 200],
      ],
      TAKEN,
    );
    const text = summaryText(check);
    expect(text).toContain('- row 4: All casing in red oak as discussed.');
    expect(text).not.toContain('Quotation of our own');
  });

  it('a tax that was held against what it is of is not called "not compared"', () => {
    const check = checkRows(
      [
        ['Mark', 'Description', 'Qty', 'Price each', 'Amount'],
        ['A', 'Casing', 2, 100, 200],
        [null, 'Sales tax 7%', null, null, 14],
        [null, 'Freight', null, null, 45],
        [null, 'Total', null, null, 259],
      ],
      TAKEN,
    );
    const text = summaryText(check);
    expect(text).toContain('Charges held against what they are of: tax $14.00.');
    expect(text).toContain('Charges, not compared: freight $45.00.');
  });
});
