import ExcelJS from 'exceljs';
import fc from 'fast-check';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readTables } from '../../src/schedule';
import type { Cell, Sheet, SheetSource } from '../../src/workbook/sheet';
import { writeXlsx } from '../../src/workbook/xlsx';
import { storedFormula } from '../../src/workbook/formulas/calls';
import { refusalOf, valueOf } from '../value';

function sheetOf(rows: Sheet['rows'], more: Partial<Sheet> = {}): Sheet {
  return { name: 'Takeoff', rows, widths: [10, 20], frozenRows: 1, frozenColumns: 1, home: 'A2', ...more };
}

async function readBack(sheets: readonly SheetSource[]): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(valueOf(writeXlsx(sheets)).slice().buffer as ArrayBuffer);
  return book;
}

function partsOf(sheets: readonly SheetSource[]): Map<string, string> {
  return new Map(Object.entries(unzipSync(valueOf(writeXlsx(sheets)))).map(([name, part]) => [name, strFromU8(part)]));
}

const constant = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.constantFrom('=1+1', '1/2', ' padded ', '_x0041_', 'a\rb\r\nc\td', '\u0000', '\ud800', ']]>', '&lt;', "'"),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.boolean(),
  fc.constant(null),
);

describe('a workbook written as .xlsx', () => {
  it('gives back any constant as it was, read by the schedule reader', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.array(constant, { minLength: 1, maxLength: 4 }), { minLength: 1 }), async (rows) => {
        const bytes = valueOf(writeXlsx([sheetOf(rows.map((row) => row.map((value) => ({ value }))))]));
        const read = valueOf(await readTables('x.xlsx', bytes))[0];
        for (const [row, cells] of rows.entries()) {
          for (const [column, value] of cells.entries()) {
            // A NUL is no character that anything shows: it comes back as the sign for one that can't be read.
            const text = typeof value === 'string' ? value.replaceAll('\u0000', '\ufffd') : value;
            const wanted = text === '' ? null : Object.is(text, -0) ? 0 : text;
            expect(read?.rows[row + 1 - read.firstRow]?.[column] ?? null).toEqual(wanted);
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  // An empty text is a result as well: ECMA-376 part 1, 18.18.11 (t="str", a formula's text) with an empty 18.3.1.96 (v).
  it("gives a formula's stored result to the schedule reader, a blank for an empty text, and calls none missing", async () => {
    const results = ['', '43 3/8', 30, 0, true, false] as const;
    const rows = [[{ value: 'x' }, ...results.map((value): Cell => ({ value, formula: 'A1' }))]];
    const [read] = valueOf(await readTables('x.xlsx', valueOf(writeXlsx([sheetOf(rows)]))));
    expect(read!.rows).toEqual([['x', null, ...results.slice(1)]]);
    expect(read!.remarks).toEqual([]);
  });

  it('says for every cell whether it is text, a figure or a formula, read by another library', async () => {
    const cells: Cell[] = [
      { value: '=HYPERLINK("x")' },
      { value: 36.5, style: 'input', format: '# ??/??' },
      { value: 30, formula: 'ARCH.RADIUS(36,6)', style: 'figure', format: '0.000' },
      { value: '', formula: 'IF(A1<>"","ARCH.RADIUS",MINIFS(B1:B2,B1:B2,">0"))' },
      { value: true },
      { value: 'long', formula: '"a"&"b"', wrap: true, comment: 'Said on the cell <b>' },
    ];
    const sheet = (await readBack([sheetOf([cells])])).getWorksheet('Takeoff')!;
    const at = (column: number) => sheet.getCell(1, column + 1);
    expect(at(0)).toMatchObject({ type: ExcelJS.ValueType.String, value: '=HYPERLINK("x")' });
    expect(at(1)).toMatchObject({ value: 36.5, numFmt: '# ??/??', protection: { locked: false } });
    expect(at(2)).toMatchObject({ formula: '_xldudf_ARCH_RADIUS(36,6)', result: 30, numFmt: '0.000' });
    expect(at(3).formula).toBe('IF(A1<>"","ARCH.RADIUS",_xlfn.MINIFS(B1:B2,B1:B2,">0"))');
    expect(at(4).value).toBe(true);
    expect(at(5)).toMatchObject({ result: 'long', alignment: { wrapText: true, horizontal: 'left' } });
    expect(JSON.stringify(at(5).note)).toContain('Said on the cell <b>');
  });

  it('holds names, checks, folded and frozen columns, the lock and the print set-up', async () => {
    const sheet = sheetOf([[{ value: 'Takeoff', style: 'title' }], [{ value: 1 }], [{ value: 2 }]], {
      folded: [{ first: 1, last: 1 }],
      names: [{ name: 'Shop_reveal', ref: 'Takeoff!$A$2' }],
      validations: [
        { range: 'A2:A3', rule: { kind: 'number', min: 1, max: 9, whole: true }, message: 'From 1 to 9.' },
        { range: 'B2:B3', rule: { kind: 'list', choices: ['radial', 'legs'] }, message: 'One of two.' },
      ],
      locked: true,
      landscape: true,
      pagesWide: 2,
      repeatRows: [1, 1],
      pageBreaks: [2],
    });
    const book = await readBack([sheet]);
    const read = book.getWorksheet('Takeoff')!;
    expect(book.definedNames.getRanges('Shop_reveal').ranges).toEqual(['Takeoff!$A$2']);
    expect(read.getCell('A3').dataValidation).toMatchObject({ type: 'whole', formulae: [1, 9], error: 'From 1 to 9.' });
    expect(read.getCell('B2').dataValidation).toMatchObject({ type: 'list', formulae: ['"radial,legs"'] });
    expect(read.getColumn(2)).toMatchObject({ hidden: true, outlineLevel: 1, width: 20 });
    expect(read.views[0]).toMatchObject({ state: 'frozen', xSplit: 1, ySplit: 1, activeCell: 'A2' });
    expect((read as unknown as { sheetProtection: unknown }).sheetProtection).toMatchObject({ sheet: true });
    expect(read.pageSetup).toMatchObject({ orientation: 'landscape', fitToWidth: 2, printTitlesRow: '1:1' });
    expect(read.getRow(1).height).toBe(24);
  });

  // The order of a worksheet's elements: ECMA-376 part 1, 18.3.1.99. Excel calls a file damaged that has another.
  it('has the elements of a sheet in the order that the format demands', () => {
    const sheet = sheetOf([[{ value: 1, comment: 'x' }]], {
      locked: true,
      validations: [{ range: 'A1', rule: { kind: 'number', min: 0, max: 1 }, message: 'm' }],
      figures: ['A1:B2'],
      pageBreaks: [1],
    });
    const parts = partsOf([sheet]);
    const found = [...parts.get('xl/worksheets/sheet1.xml')!.matchAll(/<(\w+)[^>]*>/g)].map((match) => match[1]!);
    const order =
      'sheetPr sheetViews sheetFormatPr cols sheetData sheetProtection conditionalFormatting dataValidations pageMargins pageSetup headerFooter rowBreaks legacyDrawing'.split(
        ' ',
      );
    expect(found.filter((name) => order.includes(name))).toEqual(order);
    for (const name of parts.keys()) {
      if (/\.(?:vml|rels)$/.test(name) || name === '[Content_Types].xml') continue;
      expect(parts.get('[Content_Types].xml')).toContain(`PartName="/${name}"`);
    }
  });

  it('is the same file for the same sheets, whenever it is written', () => {
    const sheets = [sheetOf([[{ value: 'a' }]])];
    expect(valueOf(writeXlsx(sheets))).toEqual(valueOf(writeXlsx(sheets)));
  });

  it('cuts a text that no cell of Excel holds, and says so in the cell', async () => {
    const sheet = (await readBack([sheetOf([[{ value: 'x'.repeat(40_000) }, { value: 'y'.repeat(32_767) }]])]))
      .worksheets[0]!;
    const text = String(sheet.getCell('A1').value);
    expect(text).toHaveLength(32_767);
    expect(text).toMatch(/x … \(cut here: 40,000 characters in all\)$/);
    expect(sheet.getCell('B1').value).toBe('y'.repeat(32_767));
  });

  it.each([NaN, Infinity])('refuses a figure of %s and names its cell', (value) => {
    expect(refusalOf(writeXlsx([sheetOf([[null, { value }]])]))).toContain(`the figure for B1 is ${value}`);
  });

  it('asks for each row once', () => {
    let asked = 0;
    const rows = {
      *[Symbol.iterator]() {
        for (; asked < 3; asked++) yield [{ value: asked }];
      },
    };
    valueOf(writeXlsx([{ ...sheetOf([]), rows }]));
    expect(asked).toBe(3);
  });

  it('leaves text in quotes alone where it renames functions', () => {
    expect(storedFormula('"ARCH.X(" & ARCH.X(IFS(1,2))')).toBe('"ARCH.X(" & _xldudf_ARCH_X(_xlfn.IFS(1,2))');
    // Of Excel 2013, and as [MS-XLSX] 2.2.2 lists them: a prefix for the younger, none for those of the file format.
    expect(storedFormula('IFNA(ISFORMULA(A1),SUMIFS(A1,B1,1))')).toBe(
      '_xlfn.IFNA(_xlfn.ISFORMULA(A1),SUMIFS(A1,B1,1))',
    );
  });
});
