import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rangeAddress } from '../../src/workbook/address';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import { cellData, cellError, plainValue, type Engine, type PlainValue } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { expectAnswer } from '../functions/answer';
import { CASES, REFUSALS } from '../functions/cases';

/** Blocks stand below one another in column A; the cells their formulas point at start in this column. */
const CELLS_FROM = 8;
const SHEET = 'Sheet1';

interface Placed {
  readonly call: { readonly name: string; readonly args: readonly unknown[] };
  readonly row: number;
  readonly formula: string;
}
type Way = 'values in the formula' | 'references to cells';

function literal(value: unknown): string {
  if (value === null) return '';
  if (typeof value === 'string') return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return String(value);
}

/** The formula of a call whose ranges, and with references everything else too, lie in cells from `row` on. */
function place(call: Placed['call'], row: number, way: Way, cells: PlainValue[][]): Placed & { readonly rows: number } {
  let column = CELLS_FROM;
  let rows = 1;
  const args = call.args.map((arg) => {
    if (way === 'values in the formula' && !Array.isArray(arg)) return literal(arg);
    const block = (Array.isArray(arg) ? arg : [[arg]]) as PlainValue[][];
    block.forEach((values, down) =>
      values.forEach((value, across) => ((cells[row + down] ??= [])[column + across] = value)),
    );
    rows = Math.max(rows, block.length);
    const last = { row: row + block.length - 1, column: column + Math.max(...block.map((line) => line.length)) - 1 };
    const address = rangeAddress({ first: { row, column }, last });
    column = last.column + 2;
    return address;
  });
  return { call, row, rows, formula: `=ARCH.${call.name}(${args.join(',')})` };
}

/** What no cell and no formula can hold, only a caller in code. */
function fitsACell(value: unknown): boolean {
  if (Array.isArray(value)) return value.length > 0 && value.every(fitsACell);
  return typeof value === 'number' ? Number.isFinite(value) : value !== undefined;
}
const REFUSED_CELLS = REFUSALS.filter(({ args }) => args.every(fitsACell));

describe.each<Way>(['values in the formula', 'references to cells'])('in the grid, with %s,', (way) => {
  let engine: Engine;
  const placed = new Map<Placed['call'], Placed>();

  beforeAll(async () => {
    engine = startHeadless(ARCH_FUNCTIONS);
    const cells: PlainValue[][] = [];
    let row = 0;
    for (const call of [...CASES, ...REFUSED_CELLS]) {
      const block = place(call, row, way, cells);
      placed.set(call, block);
      (cells[row] ??= [])[0] = block.formula;
      const answer = 'answer' in call && Array.isArray(call.answer) ? call.answer.length : 1;
      row += Math.max(block.rows, answer) + 1;
    }
    const width = Math.max(...Array.from(cells, (line) => line?.length ?? 0));
    const full = Array.from({ length: row }, (_, at) =>
      Array.from({ length: width }, (_, c) => cells[at]?.[c] ?? null),
    );
    const written = await new WorkbenchHost(engine).writeCells(SHEET, 'A1', full, false);
    if (!written.ok) throw new Error(written.message);
    await engine.settled();
  }, 120_000);
  afterAll(() => engine.univer.dispose());

  const cell = (row: number, column: number) =>
    cellData(engine, engine.workbook.getSheetBySheetName(SHEET)!, row, column);

  it('every call with a known answer gives it, block by block', () => {
    const wrong: string[] = [];
    for (const one of CASES) {
      const { row, formula } = placed.get(one)!;
      const block = Array.isArray(one.answer) ? (one.answer as unknown[][]) : null;
      const rows = block?.length ?? 1;
      const actual = Array.from({ length: rows }, (_, down) =>
        Array.from({ length: block?.[0]!.length ?? 1 }, (_, across) =>
          plainValue(engine.library, cell(row + down, across)),
        ),
      );
      try {
        expectAnswer(block ? actual : actual[0]![0], one.answer, one.within);
        expect(cell(row + rows, 0), 'the cell below the block').toBeNull();
      } catch (error) {
        wrong.push(`${formula}: ${cellError(cell(row, 0)) ?? (error as Error).message}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('every call that must be refused shows #VALUE! and its sentence', () => {
    const shown = REFUSED_CELLS.map((one) => {
      const { row, formula } = placed.get(one)!;
      return { formula, value: cell(row, 0)?.v, sentence: cellError(cell(row, 0)) };
    });
    const expected = REFUSED_CELLS.map((one) => {
      return { formula: placed.get(one)!.formula, value: '#VALUE!', sentence: one.message };
    });
    expect(shown).toEqual(expected);
  });
});
