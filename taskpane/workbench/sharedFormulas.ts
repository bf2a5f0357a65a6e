import type { ICellData } from '@univerjs/core';
import { relativeForm } from '../../src/workbook/formulas/relativeForm';

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
