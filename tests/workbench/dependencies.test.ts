import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import type { Sheet } from '../../src/workbook/sheet';
import type { Engine, PlainValue } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbench-host';
import { random, type Random } from '../random';
import { valueOf } from '../value';

let engine: Engine | undefined;
let host: WorkbenchHost;
beforeEach(() => {
  engine?.univer.dispose();
  engine = startHeadless([]);
  host = new WorkbenchHost(engine);
});
afterAll(() => engine?.univer.dispose());

async function enter(address: string, rows: PlainValue[][], sheet = 'Sheet1') {
  valueOf(await host.writeCells(sheet, address, rows, true));
  await engine!.settled();
}
const values = async (sheet = 'Sheet1') => valueOf(await host.readSheet(sheet))!.rows;
const facade = () => engine!.api.getActiveWorkbook()!.getSheetByName('Sheet1')!;

/** A column of doubles that share one formula, as a filled sheet stores them. */
function doubles(of: readonly number[]): Sheet {
  return {
    name: 'Stock',
    rows: of.map((value, at) => [{ value }, { value: 2 * value, formula: `A${at + 1}*Factor` }]),
    widths: [],
    frozenRows: 0,
    frozenColumns: 0,
    home: 'A1',
    names: [{ name: 'Factor', ref: 'Sheet1!$A$1' }],
    validations: [],
  };
}

describe('what follows from an edit, after formulas have changed what they look at', () => {
  it('a formula typed over another follows what it names now, and no more what it named', async () => {
    await enter('A1', [[1, 2, '=A1']]);
    await enter('C1', [['=B1*10+RAND()*0']]);
    await enter('B1', [[3]]);
    expect((await values())[0]).toEqual([1, 3, 30]);
    await enter('C1', [['=B1*10']]);
    await enter('A1', [[5]]);
    await enter('B1', [[4]]);
    expect((await values())[0]).toEqual([5, 4, 40]);
  });

  it('a formula that is one of many alike may be replaced, and the others still follow', async () => {
    await enter('A1', [[2]]);
    valueOf(await host.writeSheets([doubles([1, 2, 3, 4])], { replace: [] }));
    await engine!.settled();
    await enter('A2', [[20]], 'Stock');
    await enter('B1', [['=A4+100']], 'Stock');
    await enter('A3', [[30], [40]], 'Stock');
    expect((await values('Stock')).map((row) => row[1])).toEqual([140, 40, 60, 80]);
    await enter('A1', [[3]]);
    expect((await values('Stock')).map((row) => row[1])).toEqual([140, 60, 90, 120]);
  });

  it('a sheet written anew is followed by formulas elsewhere', async () => {
    await enter('A1', [[2]]);
    valueOf(await host.writeSheets([doubles([1, 2, 3])], { replace: [] }));
    await enter('C1', [['=SUM(Stock!B1:B3)']]);
    await enter('A1', [[7]], 'Stock');
    expect((await values())[0]![2]).toBe(24);
    valueOf(await host.writeSheets([doubles([5, 6, 7])], { replace: ['Stock'] }));
    await engine!.settled();
    await enter('A1', [[50]], 'Stock');
    expect((await values())[0]![2]).toBe(126);
  });

  it('a spilled block, its sum and a volatile function follow', async () => {
    await enter('A1', [[1], [2], [3]]);
    await enter('C1', [['=A1:A3*10']]);
    await enter('E1', [['=SUM(C1:C3)', '=RAND()']]);
    const before = (await values())[0]![5];
    await enter('A3', [[9]]);
    const rows = await values();
    expect([rows[2]![2], rows[0]![4]]).toEqual([90, 120]);
    expect(rows[0]![5]).not.toBe(before);
  });

  it('a circle of formulas leaves the rest calculating', async () => {
    await enter('A1', [[1, '=A1+1', '=D1', '=C1']]);
    await enter('A1', [[4]]);
    expect((await values())[0]![1]).toBe(5);
    await enter('C1', [['=B1*2']]);
    await enter('A1', [[6]]);
    expect((await values())[0]!.slice(1, 4)).toEqual([7, 14, 14]);
  });

  it('formulas that look where they did are entered into the index once, however many edits follow', async () => {
    await enter('A1', [[1, '=SUM(A1:A5)', '=SUM(A1:A9)']]);
    const index = engine!.injector.get(engine!.library.engineFormula.IDependencyManagerService);
    const { _dependencyRTreeCache: ranges } = index as unknown as { _dependencyRTreeCache: { toJSON(): unknown } };
    await enter('A2', [[2]]);
    const after = JSON.stringify(ranges.toJSON());
    for (const value of [3, 4, 5]) await enter('A2', [[value]]);
    expect(JSON.stringify(ranges.toJSON())).toBe(after);
    expect((await values())[0]).toEqual([1, 6, 6]);
  });
});

describe('any edits, one after another', () => {
  const COLUMNS = [...'ABCDEF'];

  /** A number, or a formula that looks only at columns before its own. */
  function cell(from: Random, column: number): PlainValue {
    if (column === 0 || from.whole(1, 3) === 1) return from.whole(0, 99);
    const before = COLUMNS.slice(0, column);
    const one = () => `${from.pick(before)}${from.whole(1, 6)}`;
    const whole = from.pick(before);
    return from.pick([
      `=${one()}+${one()}`,
      `=SUM(${whole}1:${whole}6)`,
      `=IF(${one()}>50,${one()},${one()})`,
      `=INDEX(${whole}1:${whole}6,1+MOD(${one()},6))`,
      `=SUMIFS(A1:A6,${whole}1:${whole}6,">"&${one()})`,
    ]);
  }

  it.each([1, 2, 3])('leave nothing for a calculation of everything to change (%i)', async (start) => {
    const from = random(start);
    await enter(
      'A1',
      Array.from({ length: 6 }, () => COLUMNS.map((_, column) => cell(from, column))),
    );
    for (let edit = 0; edit < 14; edit++) {
      const kind = from.whole(1, 8);
      if (kind === 1) facade().insertRowBefore(from.whole(0, 4));
      else if (kind === 2) facade().deleteRow(from.whole(5, 7));
      else if (kind === 3) await engine!.api.undo();
      else {
        const column = from.whole(0, 5);
        const address = `${COLUMNS[column]}${from.whole(1, 6)}`;
        valueOf(await host.writeCells('Sheet1', address, [[cell(from, column)]], true));
      }
      await engine!.settled();
    }
    const followed = await values();
    engine!.api.getFormula().executeCalculation();
    await engine!.settled();
    expect(await values()).toEqual(followed);
  });
});
