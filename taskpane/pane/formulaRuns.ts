import { isFormula } from '../../src/formulaText';
import { callsIn, enteredFormula } from '../../src/workbook/formulas/calls';
import type { CellValue } from '../../src/schedule/opening';

/** Cells below one another in one column that are written at once. Row and column from 0. */
export interface Run<T> {
  readonly row: number;
  readonly column: number;
  readonly cells: readonly T[];
}

/** The cells that `change` gives something for, as runs down each column; undefined leaves a cell alone. */
export function columnRuns<T>(
  rows: readonly (readonly CellValue[])[],
  change: (cell: CellValue, row: number, column: number) => T | undefined,
): readonly Run<T>[] {
  const runs: { row: number; column: number; cells: T[] }[] = [];
  const width = rows.reduce((widest, row) => Math.max(widest, row.length), 0);
  for (let column = 0; column < width; column += 1) {
    let run: { row: number; column: number; cells: T[] } | null = null;
    for (const [row, cells] of rows.entries()) {
      const next = change(cells[column] ?? null, row, column);
      if (next === undefined) run = null;
      else if (run) run.cells.push(next);
      else {
        run = { row, column, cells: [next] };
        runs.push(run);
      }
    }
  }
  return runs;
}

/** The formula as it must be entered, where `content` is an ARCH formula in any of its stored forms; else undefined. */
export function reentered(content: string): string | undefined {
  const formula = content.trim();
  return isFormula(formula) && callsIn(formula).length > 0 ? enteredFormula(formula) : undefined;
}
