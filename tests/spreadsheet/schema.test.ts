import validate, { type OfficeVersion } from '@ooxml-tools/validate';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { BLANK_JOB } from '../../src/job/fields';
import type { Sheet } from '../../src/workbook/sheet';
import { workbookSheets } from '../../src/workbook/workbook';
import { writeXlsx } from '../../src/workbook/xlsx';
import { sharedLines } from '../check/quote/example';
import { scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';

/**
 * Microsoft's own validator (Open XML SDK), which holds the schemas of ECMA-376 transitional and of what each Office added to them:
 * every part of a stored workbook is read against them. `Office2007` knows the standard alone.
 */
async function faults(xlsx: Uint8Array, version: OfficeVersion): Promise<string[]> {
  const found = await validate(xlsx, 'xlsx', version);
  return found.map(({ description, path }) => `${path.partUri} ${path.xpath}: ${description}`);
}

/** Every kind of sheet, with names, validations, filters, a comment, print set-up and settings. */
function everything(plain: boolean): Uint8Array {
  const check = sharedLines();
  const schedule = scheduleOf(check.takeoff.openings.map(({ opening }) => opening));
  const sheets = workbookSheets(schedule, check.takeoff, { plain, check, proposal: true, job: BLANK_JOB });
  const commented = sheets.map((sheet): Sheet => ({
    ...sheet,
    rows: [[{ value: 1, comment: 'why & where' }], ...sheet.rows.slice(1)],
  }));
  return valueOf(writeXlsx(commented, { kept: 'by the pane' }));
}

describe('the parts of a stored workbook, read against the schemas', () => {
  it('with ARCH formulas, are as current Excel knows them', async () => {
    expect(await faults(everything(false), 'Microsoft365')).toEqual([]);
  });

  it('without, are as ECMA-376 has them', async () => {
    expect(await faults(everything(true), 'Office2007')).toEqual([]);
  });

  it.each([
    ['xl/worksheets/sheet1.xml', ' cm="1"', ' cm="first"'],
    ['xl/worksheets/sheet1.xml', '<pageMargins', '<pageSetup/><pageMargins'],
    ['xl/metadata.xml', ' minSupportedVersion="120000"', ''],
    ['xl/webextensions/webextension1.xml', 'storeType=', 'kind='],
  ])('a fault put into %s is found', async (part, from, to) => {
    const rows: Sheet['rows'] = [[{ value: 30, formula: 'ARCH.RADIUS(36,6)' }]];
    const sheet: Sheet = { name: 'Takeoff', rows, widths: [9], frozenRows: 0, frozenColumns: 0, home: 'A1' };
    const files = unzipSync(valueOf(writeXlsx([sheet])));
    const text = strFromU8(files[part]!);
    expect(text).toContain(from);
    const broken = zipSync({ ...files, [part]: strToU8(text.replace(from, to)) });
    const found = await faults(broken, 'Microsoft365');
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(part);
  });
});
