import { describe, expect, it } from 'vitest';
import { lookOf, shownAs } from '../../src/schedule/numberLook';
import { workbookParts, sheetXml, zipParts, HEADINGS } from './workbookFile';
import { readTables } from '../../src/schedule';
import { valueOf } from '../value';

describe('a number format', () => {
  it.each(['d-mmm', 'yyyy\\-mm\\-dd;@', 'h:mm AM/PM', '[$-409]mmmm d, yyyy', '[h]:mm', 'mm:ss.0'])(
    '%s shows a date',
    (code) => expect(lookOf(code)).toBe('date'),
  );

  it.each([
    ['0" mm"', 'mm'],
    ['0.0"mm"', 'mm'],
    ['#,##0.0\\ "cm"', 'cm'],
    ['0.0\\m', 'm'],
    ['0.0" in"', 'in'],
    ['# ?/?\\"', '"'],
    ['# ??/16" in."', 'in.'],
    ['#" ft"', 'ft'],
    ["0'", "'"],
    ['General" mm"', 'mm'],
    ['[Blue]0" mm";[Red]-0" mm"', 'mm'],
  ])('%s shows a unit, %s', (code, unit) => expect(lookOf(code)).toEqual({ unit }));

  it.each([
    'General',
    '0.00',
    '# ??/??',
    '# ?/?',
    '#,##0.00_);[Red](#,##0.00)',
    '0\\ "days"',
    '@',
    '0%',
    '[Blue]0',
    '0.00E+00',
    '# ??/16',
    '#,##0.00 "days"',
    '0" ea"',
    '_($* #,##0.00_)',
  ])('%s shows the number alone', (code) => expect(lookOf(code)).toBe(null));
});

describe('a number', () => {
  it('is handed over as it is shown: with its unit, or as a date', () => {
    expect(shownAs(450, { unit: 'mm' })).toBe('450 mm');
    expect(shownAs(36.5, null)).toBe(36.5);
    expect(shownAs(46024, 'date')).toEqual(new Date(Date.UTC(2026, 0, 2)));
    expect(shownAs(44562, 'date', true)).toEqual(new Date(Date.UTC(2026, 0, 2)));
  });

  it('in an .xlsx is read in the unit that its cell shows', async () => {
    const parts = workbookParts({
      Openings: sheetXml([HEADINGS, ['A', 2, 'segmental', { xml: '<c r="@" s="2"><v>450</v></c>' }, 6]]),
    });
    const styles = String(parts['xl/styles.xml']).replace('# ??/??', '0&quot; mm&quot;');
    const read = await readTables('x.xlsx', zipParts({ ...parts, 'xl/styles.xml': styles }));
    expect(valueOf(read)[0]!.rows[1]).toEqual(['A', 2, 'segmental', '450 mm', 6]);
  });
});
