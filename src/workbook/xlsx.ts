import ExcelJS from 'exceljs';
import { ok, refuse, type Result } from '../result';
import { columnLetters, readRange } from './address';
import type { Cell, CellStyle, Sheet, Validation } from './sheet';

/** Functions younger than the file format: a stored workbook names them with a prefix, or Excel shows #NAME?. */
const LATER_FUNCTIONS = /\b(MINIFS|MAXIFS|IFS|TEXTJOIN|CONCAT)\(/g;

/** A formula as a stored .xlsx holds it: worksheet functions of an add-in are `_xldudf_ARCH_RADIUS(…)`. */
export function storedFormula(formula: string): string {
  return outsideQuotes(formula, (text) =>
    text.replace(/\bARCH\.([A-Z]+)/g, '_xldudf_ARCH_$1').replace(LATER_FUNCTIONS, '_xlfn.$1('),
  );
}

function outsideQuotes(formula: string, change: (text: string) => string): string {
  return formula
    .split(/("[^"]*")/)
    .map((part, at) => (at % 2 === 0 ? change(part) : part))
    .join('');
}

/** The workbook as the bytes of an .xlsx file: formulas with their values cached, formats, names, print set-up. */
export async function writeXlsx(sheets: readonly Sheet[]): Promise<Result<Uint8Array>> {
  try {
    const book = new ExcelJS.Workbook();
    book.calcProperties.fullCalcOnLoad = true;
    for (const sheet of sheets) {
      const made = addSheet(book, sheet);
      if (!made.ok) return made;
    }
    return ok(new Uint8Array(await book.xlsx.writeBuffer()));
  } catch (cause) {
    return refuse(`The workbook could not be written: ${cause instanceof Error ? cause.message : String(cause)}`);
  }
}

function addSheet(book: ExcelJS.Workbook, sheet: Sheet): Result<void> {
  const to = book.addWorksheet(sheet.name, {
    views: [
      {
        state: 'frozen',
        xSplit: sheet.frozenColumns,
        ySplit: sheet.frozenRows,
        activeCell: sheet.home,
        topLeftCell: `${columnLetters(sheet.frozenColumns)}${sheet.frozenRows + 1}`,
        zoomScale: 100,
      },
    ],
    pageSetup: {
      paperSize: 1 as ExcelJS.PaperSize, // US letter
      orientation: sheet.landscape ? 'landscape' : 'portrait',
      fitToPage: true,
      fitToWidth: sheet.pagesWide ?? 1,
      fitToHeight: 0,
      margins: { left: 0.4, right: 0.4, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 },
      ...(sheet.repeatRows ? { printTitlesRow: `${sheet.repeatRows[0]}:${sheet.repeatRows[1]}` } : {}),
      ...((sheet.pagesWide ?? 1) > 1 ? { printTitlesColumn: `A:${columnLetters(sheet.frozenColumns - 1)}` } : {}),
    },
    headerFooter: { oddFooter: '&L&A&RPage &P of &N' },
  });
  sheet.widths.forEach((width, at) => {
    to.getColumn(at + 1).width = width;
  });
  const hidden = new Set<number>();
  for (const { first, last } of sheet.folded ?? []) {
    for (let column = first; column <= last; column++) {
      to.getColumn(column + 1).outlineLevel = 1;
      to.getColumn(column + 1).hidden = true;
      hidden.add(column);
    }
  }
  sheet.rows.forEach((cells, at) => {
    const row = to.getRow(at + 1);
    cells.forEach((cell, column) => {
      if (cell !== null) writeCell(row.getCell(column + 1), cell, column);
    });
    const height = rowHeight(cells, sheet.widths, hidden);
    if (height !== null) row.height = height;
  });
  for (const { name, ref } of sheet.names ?? []) book.definedNames.add(ref, name);
  for (const validation of sheet.validations ?? []) {
    const done = addValidation(to, validation);
    if (!done.ok) return done;
  }
  for (const row of sheet.pageBreaks ?? []) to.getRow(row).addPageBreak();
  if (sheet.locked) {
    // No password: the lock keeps formulas from slips, and anyone can lift it.
    void to.protect('', {
      formatColumns: true,
      formatRows: true,
      insertRows: true,
      deleteRows: true,
      sort: true,
      autoFilter: true,
    });
  }
  return ok(undefined);
}

const LINE_HEIGHT = 15;

/** Spreadsheet programs don't agree on growing a row to its wrapped text, so its height is written. */
function rowHeight(
  cells: readonly (Cell | null)[],
  widths: readonly number[],
  hidden: ReadonlySet<number>,
): number | null {
  if (cells.some((cell) => cell?.style === 'title')) return 24;
  const lines = cells.map((cell, column) =>
    cell && !hidden.has(column) && (cell.wrap || cell.style === 'heading')
      ? linesOf(String(cell.value ?? ''), (widths[column] ?? 10) - 2)
      : 1,
  );
  const most = Math.max(1, ...lines);
  return most === 1 ? null : most * LINE_HEIGHT;
}

function linesOf(text: string, width: number): number {
  let lines = 1;
  let left = width;
  for (const word of text.split(' ')) {
    if (word.length > left && left < width) {
      lines++;
      left = width;
    }
    lines += Math.max(0, Math.ceil(word.length / width) - 1);
    left -= word.length + 1;
  }
  return lines;
}

function writeCell(to: ExcelJS.Cell, cell: Cell, column: number): void {
  to.value =
    cell.formula === undefined
      ? cell.value
      : { formula: storedFormula(cell.formula), result: cell.value ?? '', date1904: false };
  if (cell.format !== undefined) to.numFmt = cell.format;
  const look = STYLES[cell.style ?? 'text'];
  if (look.font) to.font = look.font;
  if (look.fill) to.fill = look.fill;
  if (look.border) to.border = look.border;
  // Text keeps a little clear of the figure to its left.
  const indent = typeof cell.value === 'string' && column > 0 ? { horizontal: 'left' as const, indent: 1 } : {};
  to.alignment = { vertical: 'top', ...indent, ...look.alignment, ...(cell.wrap ? { wrapText: true } : {}) };
  to.protection = { locked: cell.style !== 'input' };
  if (cell.comment !== undefined) to.note = cell.comment;
}

function addValidation(to: ExcelJS.Worksheet, { range, rule, message }: Validation): Result<void> {
  const cells = readRange(range);
  if (!cells.ok) return cells;
  const { first, last } = cells.value;
  const validation: ExcelJS.DataValidation =
    rule.kind === 'list'
      ? {
          type: 'list',
          allowBlank: true,
          formulae: [`"${rule.choices.join(',')}"`],
          showErrorMessage: true,
          error: message,
        }
      : {
          type: rule.whole ? 'whole' : 'decimal',
          operator: 'between',
          allowBlank: true,
          formulae: [rule.min, rule.max],
          showErrorMessage: true,
          error: message,
        };
  for (let row = first.row; row <= last.row; row++) {
    for (let column = first.column; column <= last.column; column++) {
      to.getCell(row + 1, column + 1).dataValidation = validation;
    }
  }
  return ok(undefined);
}

const solid = (argb: string): ExcelJS.Fill => ({ type: 'pattern', pattern: 'solid', fgColor: { argb } });
const line = (style: ExcelJS.BorderStyle, argb = 'FF8A8F98'): Partial<ExcelJS.Border> => ({ style, color: { argb } });

interface Look {
  readonly font?: Partial<ExcelJS.Font>;
  readonly fill?: ExcelJS.Fill;
  readonly border?: Partial<ExcelJS.Borders>;
  readonly alignment?: Partial<ExcelJS.Alignment>;
}

const FONT = { name: 'Calibri', size: 11 } as const;

/** Color is never the only sign: inputs are boxed, what needs attention is bold, totals stand over a double line. */
const STYLES: Readonly<Record<CellStyle, Look>> = {
  title: { font: { ...FONT, bold: true, size: 16 } },
  heading: {
    font: { ...FONT, bold: true },
    fill: solid('FFE9ECEF'),
    border: { bottom: line('thin') },
    alignment: { wrapText: true, vertical: 'bottom' },
  },
  unit: { font: { ...FONT, italic: true, color: { argb: 'FF555B63' } }, border: { bottom: line('thin') } },
  group: { font: { ...FONT, bold: true, color: { argb: 'FF1F4E5F' } }, border: { bottom: line('thin', 'FF1F4E5F') } },
  input: {
    font: FONT,
    fill: solid('FFFFF8E1'),
    border: { top: line('hair'), bottom: line('hair'), left: line('hair'), right: line('hair') },
  },
  figure: { font: FONT },
  fixed: { font: { ...FONT, italic: true } },
  total: { font: { ...FONT, bold: true }, border: { top: line('double') } },
  attention: { font: { ...FONT, bold: true, color: { argb: 'FF8A3B00' } } },
  text: { font: FONT },
  note: { font: { ...FONT, color: { argb: 'FF555B63' } } },
};
