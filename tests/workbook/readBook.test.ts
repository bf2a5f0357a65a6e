import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { asValues, readBook } from '../../src/workbook/readBook';
import type { BookSheet, Cell, OwnLook } from '../../src/workbook/sheet';
import { writeXlsx } from '../../src/workbook/xlsx';
import { enteredFormula, storedFormula } from '../../src/workbook/formulas/calls';
import { refusalOf, valueOf } from '../value';
import { exampleSheets } from '../workbench/example';
import { sheetXml, workbookParts, zipParts, type CellXml } from '../schedule/workbookFile';

/** A cell as the file can hold it: no empty texts, no style that is none, and nothing that follows from it. */
function kept(cell: Cell | null | undefined): Cell | null {
  if (!cell) return null;
  const { value, style, align, format, wrap, ...rest } = cell;
  const plain = style === undefined || style === 'text' || style === 'figure';
  const formula = cell.formula !== undefined;
  const now = {
    ...rest,
    value: value === '' && !formula ? null : value,
    ...(plain ? (style === 'figure' ? { style } : {}) : { style }),
    ...(format === undefined || format === 'General' ? {} : { format }),
    ...(wrap || style === 'heading' ? { wrap: true } : {}),
    ...(align ? { align } : {}),
  };
  return Object.keys(now).length === 1 && now.value === null ? null : now;
}
const trimmed = (cells: readonly (Cell | null)[]) => {
  let end = cells.length;
  while (end > 0 && cells[end - 1] === null) end--;
  return cells.slice(0, end);
};
const rowsOf = (sheet: { rows: Iterable<readonly (Cell | null)[]> }) =>
  [...sheet.rows].map((row) => trimmed(row.map(kept)));

function sheetOf(rows: readonly (readonly (Cell | null)[])[], more: Partial<BookSheet> = {}): BookSheet {
  return { name: 'Job 12', rows, widths: [10, 20], frozenRows: 0, frozenColumns: 0, home: 'A1', ...more };
}
const readBack = (sheets: readonly BookSheet[], settings?: Record<string, string>) =>
  valueOf(readBook(valueOf(writeXlsx(sheets, settings))));

describe('a workbook read back from its file', () => {
  it('is the example takeoff cell by cell: values, formulas, styles, formats, comments, and what sheets have', async () => {
    const sheets = await exampleSheets(defaultStandards());
    const read = readBack(sheets);
    expect(read.ours).toBe(true);
    expect(read.sheets.map(({ name }) => name)).toEqual(sheets.map(({ name }) => name));
    for (const [at, sheet] of sheets.entries()) {
      const back = read.sheets[at]!;
      expect(rowsOf(back)).toEqual(rowsOf(sheet));
      expect(back.widths).toEqual(sheet.widths);
      for (const key of ['frozenRows', 'frozenColumns', 'home', 'names', 'repeatRows', 'printArea'] as const)
        expect([key, back[key]]).toEqual([key, sheet[key]]);
      expect(back.locked ?? false).toBe(sheet.locked ?? false);
      expect(back.landscape ?? false).toBe(sheet.landscape ?? false);
      expect(back.pagesWide ?? 1).toBe(sheet.pagesWide ?? 1);
      expect(back.pageBreaks ?? []).toEqual(sheet.pageBreaks ?? []);
      expect(back.validations ?? []).toEqual(sheet.validations ?? []);
      expect(back.figures ?? []).toEqual(sheet.figures ?? []);
    }
  });

  it('written again is the same file, byte for byte', async () => {
    const settings = { 'archwright.standards': '{"reveal":"1/4"}\n<&>' };
    const first = valueOf(writeXlsx(await exampleSheets(defaultStandards()), settings));
    const book = valueOf(readBook(first));
    expect(book.settings).toEqual(settings);
    const second = valueOf(writeXlsx(book.sheets, book.settings));
    const third = valueOf(readBook(second));
    expect(valueOf(writeXlsx(third.sheets, third.settings))).toEqual(second);
  });

  it('keeps a sheet of the user’s own: its name, what is hidden, heights, cells that are one, its looks', () => {
    const own: OwnLook = {
      bold: true,
      underline: true,
      strike: true,
      size: 14,
      font: 'Courier New',
      color: '#C00000',
      fill: '#FFFF00',
      horizontal: 'center',
      vertical: 'center',
      borders: { left: { line: 'medium', color: '#00FF00' } },
    };
    const sheet = sheetOf(
      [
        [{ value: 'a note', own }, null, { value: 2, style: 'input', own: { italic: true, fill: 'none' } }],
        [],
        [
          { value: 3, formula: "SUM('Job 12'!C1:C1)+1" },
          { value: '#VALUE!', formula: 'ARCH.RADIUS(1,-1)' },
        ],
      ],
      {
        name: "O'Neil & son",
        hidden: true,
        heights: new Map([
          [0, 31.5],
          [7, 40],
        ]),
        hiddenRows: [1, 9],
        merges: ['A1:B1'],
        folded: [{ first: 1, last: 1 }],
      },
    );
    const [back] = readBack([sheet], {}).sheets;
    expect(rowsOf(back!)).toEqual([...rowsOf(sheet)]);
    const { name, hidden, heights, hiddenRows, merges, folded } = back!;
    expect({ name, hidden, heights, hiddenRows, merges, folded }).toEqual({
      name: sheet.name,
      hidden: true,
      heights: sheet.heights,
      hiddenRows: sheet.hiddenRows,
      merges: sheet.merges,
      folded: sheet.folded,
    });
  });

  it('gives back any constant in any look', () => {
    const color = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).toUpperCase().padStart(6, '0')}`);
    const own = fc.record(
      {
        bold: fc.constant(true),
        italic: fc.constant(true),
        size: fc.integer({ min: 12, max: 40 }),
        color,
        fill: color,
        horizontal: fc.constantFrom('left' as const, 'center' as const),
        borders: fc.record({ top: fc.record({ line: fc.constantFrom('thin', 'double'), color }) }),
      },
      { requiredKeys: [] },
    );
    const cell = fc.record({
      value: fc.oneof(
        fc.string({ unit: 'binary', minLength: 1, maxLength: 12 }),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.boolean(),
      ),
      own,
    });
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 3 }), { maxLength: 4 }), (rows) => {
        const plain = rows.map((row) =>
          row.map(({ value, own }) => ({
            value: Object.is(value, -0) ? 0 : value,
            ...(Object.keys(own).length > 0 ? { own } : {}),
          })),
        );
        const back = rowsOf(readBack([sheetOf(plain)]).sheets[0]!);
        for (const [at, row] of plain.entries()) expect(back[at] ?? []).toEqual(trimmed(row.map(kept)));
      }),
      { numRuns: 60 },
    );
  });

  it('has each formula of a shared one for itself, and the area of one that spills', () => {
    const rows: CellXml[][] = [
      [],
      [null, { xml: '<c r="@"><f t="shared" ref="B2:B4" si="0">A2*$A$1+LOG10(A2)</f><v>1</v></c>' }],
      [],
      [
        null,
        { xml: '<c r="@"><f t="shared" si="0"/><v>2</v></c>' },
        null,
        { xml: '<c r="@" cm="1"><f t="array" ref="D4:E5">_xldudf_ARCH_ORDINATES(36,6,9)</f><v>0</v></c>' },
        6,
      ],
    ];
    const bytes = zipParts(workbookParts({ Job: sheetXml(rows) }));
    const [sheet] = valueOf(readBook(bytes)).sheets;
    expect(sheet!.rows[3]![1]).toEqual({ value: 2, formula: 'A4*$A$1+LOG10(A4)' });
    expect(sheet!.rows[3]![3]).toMatchObject({ formula: 'ARCH.ORDINATES(36,6,9)', spill: { rows: 2, columns: 2 } });
    expect(sheet!.rows[3]![4]).toEqual({ value: 6 });
  });

  it('of a workbook that is not ours keeps values only', () => {
    const read = readBack([sheetOf([[{ value: 3, formula: 'WEBSERVICE("x")' }]])]);
    expect(read.ours).toBe(false);
    expect(asValues(read).sheets[0]!.rows).toEqual([[{ value: 3 }]]);
  });

  it.each([
    ['nothing', new Uint8Array()],
    ['text', new TextEncoder().encode('Mark,Span\nA,36')],
    ['half a file', valueOf(writeXlsx([sheetOf([[{ value: 1 }]])])).slice(0, 700)],
  ])('refuses %s in a sentence', (_what, bytes) => {
    expect(refusalOf(readBook(bytes))).toMatch(/^The file is damaged|^It is/);
  });
});

it.each(['ARCH.RADIUS(A1,"ARCH.RADIUS")', 'MINIFS(A1:A2,B1:B2,"_xlfn.")', 'SUM(A1:A3)'])(
  'a stored formula is entered again as it was: %s',
  (formula) => {
    expect(enteredFormula(storedFormula(formula))).toBe(formula);
  },
);
