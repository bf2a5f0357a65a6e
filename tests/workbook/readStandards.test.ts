import { describe, expect, it } from 'vitest';
import type { CellValue, Table } from '../../src/schedule/opening';
import { defaultStandards, withSettings } from '../../src/standards';
import { UNITS } from '../../src/unit';
import { readStandards } from '../../src/workbook/readStandards';
import type { Sheet } from '../../src/workbook/sheet';
import { standardsSheet } from '../../src/workbook/standardsSheet';
import { valueOf } from '../value';

function tableOf(sheet: Sheet): Table {
  return {
    name: sheet.name,
    firstRow: 1,
    rows: sheet.rows.map((row) => row.map((cell): CellValue => cell?.value ?? null)),
  };
}

function changed(row: string, to: CellValue): Table {
  const table = tableOf(standardsSheet(defaultStandards()));
  return { ...table, rows: table.rows.map((cells) => (cells[0] === row ? [row, to, ...cells.slice(2)] : cells)) };
}

describe('a Standards sheet read back', () => {
  it.each(UNITS)('gives the standards it was written from, in %s', (unit) => {
    const standards = valueOf(
      withSettings(defaultStandards(unit), { pricing: 'margin', pricingRate: 0.4, species: 'Cherry', knives: 2 }),
    );
    expect(readStandards(tableOf(standardsSheet(standards)))).toEqual({ ok: true, value: standards });
  });

  it('takes a setting by its label, its key or its cell name, in any order, and keeps the rest', () => {
    const rows = [
      ['Shop_feed', '5'],
      ['reveal', 0.25],
      ['Casing width', 4.25],
    ];
    expect(valueOf(readStandards({ name: 'mine.csv', firstRow: 1, rows }))).toEqual({
      ...defaultStandards(),
      feed: 5,
      reveal: 0.25,
      face: 4.25,
    });
  });

  it('refuses a value outside its limits and names them', () => {
    expect(readStandards(changed('Reveal', -1))).toEqual({
      ok: false,
      message: 'Standards: Reveal must be a number from 0 to 6; got -1.',
    });
    expect(readStandards(changed('Pricing', 'discount'))).toEqual({
      ok: false,
      message: 'Standards: Pricing must be one of markup, margin; got "discount".',
    });
  });

  it('takes a blank setting as not set: its default, never 0', () => {
    expect(valueOf(readStandards(changed('Feed', null))).feed).toBe(defaultStandards().feed);
  });

  it('refuses a stock board without a width, naming its row', () => {
    const table = tableOf(standardsSheet(defaultStandards()));
    const first = table.rows.findIndex((row) => row[0] === 'Poplar' && row[1] === 4);
    const rows = table.rows.map((row, at) =>
      at === first ? row.map((cell, column) => (column === 3 ? 'wide' : cell)) : row,
    );
    expect(readStandards({ ...table, rows })).toEqual({
      ok: false,
      message: `Stock list, row ${first + 1}: width must be a number, more than 0; got "wide".`,
    });
  });

  it('refuses a table that holds no setting', () => {
    expect(readStandards({ name: 'x', firstRow: 1, rows: [['W1', 2]] })).toMatchObject({ ok: false });
  });
});
