import { isFormula } from '../../../src/formulaText';
import { addressOf } from '../../../src/workbook/address';
import type { CellValue } from '../../../src/schedule/opening';
import { count } from '../format';
import { fail, tell, work, type Bench } from './bench';
import { OUR_SHEETS } from '../ourSheets';
import { columnRuns, reentered } from '../formulaRuns';

type Written = string | number | boolean | null;

/** Our sheets' formulas become their figures: for sending the workbook on as it is. */
export function freeze(bench: Bench): Promise<void> {
  return work(bench, 'Freezing formulas to their figures', async () => {
    const names = await bench.host.sheetNames();
    if (!names.ok) return fail(bench, names.message);
    const ours = OUR_SHEETS.map(([name]): string => name);
    let frozen = 0;
    for (const name of names.value.filter((each) => ours.includes(each))) {
      const formulas = await bench.host.readFormulas(name);
      const values = await bench.host.readSheet(name);
      if (!formulas.ok) return fail(bench, formulas.message);
      if (!values.ok) return fail(bench, values.message);
      if (!formulas.value || !values.value) continue;
      const figures = values.value.rows;
      const change = (cell: CellValue, row: number, column: number): Written | undefined => {
        if (!isFormula(cell)) return undefined;
        const figure = figures[row]?.[column] ?? null;
        // Text that begins like a formula would become one; errors are kept as formulas, so that they can be looked into.
        if (figure instanceof Date || (typeof figure === 'string' && /^[=#]/.test(figure))) return undefined;
        return figure;
      };
      const done = await writeRuns(bench, name, formulas.value.firstRow, columnRuns(formulas.value.rows, change));
      if (done === null) return;
      frozen += done;
    }
    tell(bench, frozen === 0 ? 'There were no formulas to freeze.' : `Plain figures now: ${count(frozen, 'formula')}.`);
  });
}

/** Formulas that a program without the functions has stored as `_xldudf_ARCH_…` or as text are entered anew. */
export function reenter(bench: Bench): Promise<void> {
  return work(bench, 'Entering ARCH formulas again', async () => {
    const names = await bench.host.sheetNames();
    if (!names.ok) return fail(bench, names.message);
    let entered = 0;
    for (const name of names.value) {
      const formulas = await bench.host.readFormulas(name);
      if (!formulas.ok) return fail(bench, formulas.message);
      if (!formulas.value) continue;
      const runs = columnRuns(formulas.value.rows, (cell) => (typeof cell === 'string' ? reentered(cell) : undefined));
      const done = await writeRuns(bench, name, formulas.value.firstRow, runs);
      if (done === null) return;
      entered += done;
    }
    tell(
      bench,
      entered === 0 ? 'There were no ARCH formulas to enter.' : `Entered again: ${count(entered, 'ARCH formula')}.`,
    );
  });
}

/** Null: the write was refused and the user was told. */
async function writeRuns(
  bench: Bench,
  sheet: string,
  firstRow: number,
  runs: ReturnType<typeof columnRuns<Written>>,
): Promise<number | null> {
  if (runs.length === 0) return 0;
  const written = await bench.host.overwrite(
    sheet,
    runs.map(({ row, column, cells }) => ({
      address: addressOf({ row: firstRow - 1 + row, column }),
      rows: cells.map((cell) => [cell]),
    })),
  );
  if (written.ok) return runs.reduce((sum, { cells }) => sum + cells.length, 0);
  fail(bench, written.message);
  return null;
}
