import type { ICellData } from '@univerjs/core';
import { readAddress } from '../../src/workbook/address';

/** Texts, quoted sheet names, and cell references that are not part of a longer name or a function's name. */
const PARTS = /("(?:[^"]|"")*"|'(?:[^']|'')*'!)|(?<![\w.$])(\$?)([A-Z]{1,3})(\$?)([1-9]\d{0,6})(?![\w.(])/g;

/** A formula with its references told from its own cell, as `R[0]C[-2]`: alike in every row that calculates alike. */
export function relativeForm(formula: string, row: number, column: number): string {
  return formula.replace(PARTS, (part, quoted: string | undefined, fixedColumn, letters, fixedRow, digits) => {
    if (quoted !== undefined) return quoted;
    const place = readAddress(`${letters}${digits}`);
    if (!place.ok) return part;
    const inRow = fixedRow === '$' ? `R${place.value.row}` : `R[${place.value.row - row}]`;
    return inRow + (fixedColumn === '$' ? `C${place.value.column}` : `C[${place.value.column - column}]`);
  });
}

/**
 * Formulas that repeat down a column are stored once and pointed at from the cells below. The grid looks at every formula
 * at every calculation, and keeps the last 5,000 it has read: of more it would read each anew after every edit.
 */
export class SharedFormulas {
  private readonly above = new Map<number, { row: number; form: string; cell: ICellData; id: string }>();
  private count = 0;

  /** Gives `cell` its formula, or a pointer to the one in the cell above. */
  put(cell: ICellData, formula: string, row: number, column: number): void {
    const form = relativeForm(formula, row, column);
    const last = this.above.get(column);
    if (last && last.row === row - 1 && last.form === form) {
      last.cell.si = last.id;
      cell.si = last.id;
      last.row = row;
      return;
    }
    cell.f = `=${formula}`;
    this.above.set(column, { row, form, cell, id: `shared${column}_${this.count++}` });
  }
}
