import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { beforeIn } from '../../cli/standing';
import type { CellValue, Table } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { readBook } from '../../src/workbook/readBook';
import { readStandards } from '../../src/workbook/readStandards';
import { keptFrom, type Before } from '../../src/workbook/refill';
import { pricesSinceFirst } from '../../src/workbook/firstPrices';
import { takeoffWithEdits } from '../../src/workbook/withEdits';
import { build } from '../../taskpane/pane/build/job';
import { scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { firstVersionsList } from './firstVersionsList';

/** As the first version's command wrote it, from five rows: nothing in it was made for this test. */
const BOOK = valueOf(readBook(new Uint8Array(readFileSync(new URL('firstVersion.xlsx', import.meta.url)))));
const BEFORE = beforeIn(BOOK)!;
const STANDARDS = defaultStandards();
const OPENINGS = firstVersionsList();

const heads = BEFORE.values.rows.findIndex((row) => row[0] === 'Source row');
const rowOf = (source: number) => BEFORE.values.rows.findIndex((row, at) => at > heads && row[0] === source);
const columnOf = (heading: string) => BEFORE.values.rows[heads]!.lastIndexOf(heading);

/** The workbook after somebody typed into cells of rows of the list. */
function typed(...cells: readonly (readonly [source: number, column: number, value: CellValue])[]): Before {
  const change = (table: Table): Table => {
    const rows = table.rows.map((row) => [...row]);
    for (const [source, column, value] of cells) rows[source < 0 ? heads : rowOf(source)]![column] = value;
    return { ...table, rows };
  };
  return { ...BEFORE, values: change(BEFORE.values), formulas: change(BEFORE.formulas) };
}

const fill = (before: Before) => takeoffWithEdits({ schedule: scheduleOf(OPENINGS), standards: STANDARDS, before });

describe('a workbook of the first version, filled again', () => {
  it('that nobody touched has nothing to keep, and its rows get numbers as they stand', () => {
    expect(keptFrom(BEFORE, 'in')).toMatchObject({
      edits: [],
      typedOver: [],
      ownColumns: [],
      said: [],
      numbersGiven: 5,
    });
    const { taken, said } = fill(BEFORE);
    expect(taken.openings.map(({ no, opening: { mark } }) => [no, mark])).toEqual([
      ...[
        [1, 'A1'],
        [2, 'A2'],
        [3, 'A3'],
        [4, 'A4'],
        [5, 'A4'],
      ],
    ]);
    expect(said).toEqual([]);
  });

  it.each([
    [2, 'Span', 'span', 40],
    [3, 'Casing width', 'face', 4.25],
    [4, 'Rise', 'rise', 9],
    [5, 'Species', 'species', 'Cherry'],
    [6, 'Quantity', 'quantity', 7],
    [6, 'Leg, each', 'leg', 44],
  ] as const)('keeps an input changed by hand: row %i, %s', (row, heading, field, value) => {
    const { taken, said } = fill(typed([row, columnOf(heading), value]));
    expect(taken.openings[row - 2]!.cells[field]).toBe(value);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/: kept .* from the workbook; the list says /);
  });

  it('keeps columns of the user’s own, of a formula its value, which is said', () => {
    const at = columnOf('Price') + 1;
    const before = typed([-1, at, 'Painter'], [2, at, 'Ann'], [3, at, 12]);
    const formulas = before.formulas.rows.map((row) => [...row]);
    formulas[rowOf(3)]![at] = '=F9*2';
    const { ownColumns, said } = fill({ ...before, formulas: { ...before.formulas, rows: formulas } });
    expect(ownColumns.map(({ heading, cells }) => [heading, [...cells].map(([no, { value }]) => [no, value])])).toEqual(
      [
        [
          'Painter',
          [
            [1, 'Ann'],
            [2, 12],
          ],
        ],
      ],
    );
    expect(said).toEqual(['A2: the formula in your column Painter is not kept, its value 12 is.']);
  });

  it('says which figures were typed over, and of which rows nothing can be told', () => {
    const { said } = fill(
      typed([2, columnOf('Price'), 500], [5, columnOf('As filled'), 'x'], [5, columnOf('Span'), 61]),
    );
    expect(said).toEqual([
      'Row 5 A4: what the list gave is no longer told in the column "As filled", so inputs changed by hand there are not kept.',
      'A1: Price had a figure typed over its formula, which is written again. Use Price agreed to set a price.',
    ]);
  });

  it('says how many prices have become others, from what to what in all, and what they pay for now', () => {
    const { taken, repriced } = fill(BEFORE);
    const pricedThen = [0, 1, 3];
    const dollars = (prices: readonly number[]) =>
      prices.reduce((sum, price) => sum + price, 0).toLocaleString('en-US', { style: 'currency', currency: 'USD' });
    const was = OPENINGS.map(({ row }) => BEFORE.values.rows[rowOf(row)]![columnOf('Price')]);
    const now = taken.openings.map(({ cost }) => cost?.price);
    expect(was.map((price, at) => [typeof price, price === now[at]])).toEqual(
      OPENINGS.map((_, at) => [pricedThen.includes(at) ? 'number' : 'object', false]),
    );
    const sums = [was, now].map((prices) => dollars(pricedThen.map((at) => Number(prices[at]))));
    expect(repriced).toEqual([
      `3 of 3 prices of the first version are others now: ${sums[0]} together then, ${sums[1]} now.`,
      expect.stringMatching(
        /^They pay for planing blanks \(\$[\d.]+\), trimming to width \(\$[\d.]+\), .*, which the first version did not count, for the boards that are bought /,
      ),
    ]);
    const schedule = scheduleOf(OPENINGS);
    const { filled } = build({ schedule, standards: STANDARDS, plain: false, before: BEFORE });
    expect(filled.repriced).toEqual(repriced);
  });

  it('says of prices that one is gone, and nothing where all are as they were', () => {
    const { taken } = fill(BEFORE);
    const same = new Map(taken.openings.flatMap(({ no, cost }) => (cost ? [[no, cost.price] as const] : [])));
    expect(pricesSinceFirst(same, taken)).toEqual([]);
    expect(pricesSinceFirst(new Map([...same, [3, 10]]), taken)[0]).toMatch(
      /^1 of 5 prices of the first version are others now, 1 of them without any: /,
    );
  });

  it('has its settings read from its Standards sheet', () => {
    const sheet = BOOK.sheets.find(({ name }) => name === 'Standards')!;
    const rows = [...sheet.rows].map((row) => row.map((cell): CellValue => cell?.value ?? null));
    const reveal = rows.findIndex(([label]) => label === 'Reveal');
    rows[reveal]![1] = 0.5;
    expect(valueOf(readStandards({ name: 'Standards', firstRow: 1, rows })).reveal).toBe(0.5);
  });
});
