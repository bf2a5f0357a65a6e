import type { ICellData } from '@univerjs/core';
import { copierOf } from '../../src/workbook/formulas/relativeForm';

/** A formula that others below may repeat, and how far down they do. */
interface Above {
  readonly row: number;
  reached: number;
  readonly copied: ReturnType<typeof copierOf>;
  readonly cell: ICellData;
  readonly id: string;
}

/**
 * Formulas that repeat down a column are stored once and pointed at from the cells below. The grid looks at every formula
 * at every calculation, and keeps the last 5,000 it has read: of more it would read each anew after every edit.
 */
export class SharedFormulas {
  private readonly above = new Map<number, Above>();
  private count = 0;

  /** Gives `cell` its formula, or a pointer to the one in the cell above. */
  put(cell: ICellData, formula: string, row: number, column: number): void {
    const last = this.above.get(column);
    if (last && last.reached === row - 1 && last.copied(row - last.row, 0) === formula) {
      last.cell.si = last.id;
      cell.si = last.id;
      last.reached = row;
      return;
    }
    cell.f = `=${formula}`;
    const id = `shared${column}_${this.count++}`;
    this.above.set(column, { row, reached: row, copied: copierOf(formula), cell, id });
  }
}
