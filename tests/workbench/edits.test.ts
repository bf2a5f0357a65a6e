import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Opening } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { columnLetters, readAddress } from '../../src/workbook/address';
import { readFactors, type FactorRow } from '../../src/workbook/planBlock';
import { TYPED_OVER_LOOK } from '../../src/workbook/sharedFormulas';
import { TAKEOFF_COLUMNS, UNPLANNED, type ColumnKey } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import { workbookSheets } from '../../src/workbook/workbook';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import { cellFormula, type Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { showTypedOver } from '../../taskpane/workbench/typedOver';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { differences, liveTakeoff, plannedFactors } from './differences';

const STANDARDS = defaultStandards();
let openings: Opening[] = [
  opening({ row: 4, mark: 'A', head: 'half round', span: 36, quantity: 2 }),
  opening({ row: 5, mark: 'B', head: 'half round', span: 36 }),
  opening({ row: 6, mark: 'C', head: 'elliptical', span: 72, rise: 24, ends: 'legs', leg: 50 }),
  opening({
    row: 7,
    mark: 'D',
    head: 'segmental',
    span: 44,
    problems: [{ row: 7, field: 'rise', message: 'The rise "?" can\'t be read.' }],
  }),
];

const PLANNED = openings.map((each, at) => ({ ...each, no: at + 1 }));
openings = PLANNED;

let engine: Engine;
let host: WorkbenchHost;
beforeAll(async () => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  valueOf(await host.writeSheets(fresh(), { replace: [] }));
  await engine.settled();
}, 60_000);
afterAll(() => engine.univer.dispose());

function fresh() {
  return workbookSheets(scheduleOf(openings), takeoff(openings, STANDARDS));
}

/** A fresh takeoff priced by the plan that the workbook was filled with. */
const takeoffOnly = () => [liveTakeoff(openings, STANDARDS, PLANNED)];

/** Types into the grid, and puts the same into the list that a fresh takeoff is made from. */
async function type(
  mark: string,
  field: 'span' | 'rise' | 'quantity' | 'face' | 'leg' | 'species' | 'priceAgreed' | 'sides' | 'segmentsWanted',
  value: number | string,
) {
  const at = openings.findIndex((each) => each.mark === mark);
  const column = columnLetters(TAKEOFF_COLUMNS.findIndex(({ key }) => key === field));
  valueOf(await host.writeCells('Takeoff', `${column}${TAKEOFF_HEAD_ROWS + 1 + at}`, [[value]], true));
  await engine.settled();
  openings = openings.map((each) =>
    each.mark === mark
      ? { ...each, [field]: value, problems: each.problems.filter((problem) => problem.field !== field) }
      : each,
  );
}

const differing = () => differences(host, takeoffOnly(), 1e-9);

describe('an input edited in the grid gives what a fresh takeoff gives', () => {
  it.each([
    ['A', 'span', 40],
    ['C', 'rise', 20],
    ['B', 'quantity', 5],
    ['C', 'face', 4.25],
    ['C', 'leg', 0],
    ['B', 'species', 'Cherry'],
    ['D', 'rise', 8],
    ['A', 'sides', 2],
    ['A', 'segmentsWanted', 6],
    ['B', 'priceAgreed', 99],
  ] as const)('%s, %s %s', async (mark, field, value) => {
    await type(mark, field, value);
    expect(await differing()).toEqual([]);
  });

  it('says of each row that changed that it is not planned, and at the top which is the first', async () => {
    const table = valueOf(await host.readSheet('Takeoff'))!;
    const plan = TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'plan');
    const said = table.rows.slice(TAKEOFF_HEAD_ROWS, TAKEOFF_HEAD_ROWS + 4).map((row) => row[plan] ?? '');
    expect(said).toEqual([UNPLANNED, UNPLANNED, UNPLANNED, UNPLANNED]);
    expect(table.rows[0]![3]).toBe(
      'Boards, set-ups and wood factors are older than 4 rows, A first: bring them up to date.',
    );
  });

  it('rows that change places take everything with them', async () => {
    const table = valueOf(await host.readSheet('Takeoff'))!;
    const inputs = TAKEOFF_COLUMNS.flatMap(({ role }, at) => (role === 'figure' ? [] : [at]));
    const [first, second] = [table.rows[TAKEOFF_HEAD_ROWS]!, table.rows[TAKEOFF_HEAD_ROWS + 1]!];
    for (const at of inputs) {
      const column = columnLetters(at);
      const cells = [[second[at] ?? ''], [first[at] ?? '']] as (string | number)[][];
      valueOf(await host.writeCells('Takeoff', `${column}${TAKEOFF_HEAD_ROWS + 1}`, cells, true));
    }
    await engine.settled();
    openings = [openings[1]!, openings[0]!, ...openings.slice(2)];
    expect(await differing()).toEqual([]);
    openings = [openings[1]!, openings[0]!, ...openings.slice(2)];
    for (const at of inputs) {
      const column = columnLetters(at);
      const cells = [[first[at] ?? ''], [second[at] ?? '']] as (string | number)[][];
      valueOf(await host.writeCells('Takeoff', `${column}${TAKEOFF_HEAD_ROWS + 1}`, cells, true));
    }
    await engine.settled();
  });

  it('a deleted row no longer bears its share of set-ups and knives', async () => {
    const sheet = engine.api.getActiveWorkbook()!.getSheetByName('Takeoff')!;
    sheet.deleteRow(TAKEOFF_HEAD_ROWS + 1); // the second opening, from 0
    await engine.settled();
    openings = openings.filter(({ mark }) => mark !== 'B');
    expect(await differing()).toEqual([]);
  });
});

describe('what must not go unseen', () => {
  const cellOf = (key: ColumnKey, at: number) =>
    `${columnLetters(TAKEOFF_COLUMNS.findIndex((column) => column.key === key))}${TAKEOFF_HEAD_ROWS + 1 + at}`;
  const read = async (sheet: string, address: string) => {
    const { row, column } = valueOf(readAddress(address));
    return valueOf(await host.readSheet(sheet))!.rows[row]?.[column] ?? '';
  };
  const total = () => read('Takeoff', cellOf('price', openings.length));

  it('a wood factor in error is an error in the prices and in the total; a wood without a plan has 1 + waste', async () => {
    const before = await total();
    const [{ wood, heldAt }] = readFactors(valueOf(await host.readSheet('Stock'))) as [FactorRow];
    expect(typeof before).toBe('number');
    valueOf(await host.writeCells('Stock', heldAt, [['=1/0']], true));
    await engine.settled();
    expect(await total()).toBe('#DIV/0!');
    valueOf(await host.writeCells('Stock', heldAt, [[null]], true));
    await engine.settled();
    expect(await total()).toBe(before);

    const name = heldAt.replace('D', 'A');
    valueOf(await host.writeCells('Stock', name, [['Another wood']], true));
    await engine.settled();
    const waste = 1 + STANDARDS.waste;
    const unplanned = takeoff(openings, STANDARDS, {
      factors: (each) => (each === wood ? waste : (liveFactor(each) ?? waste)),
    });
    expect(await total()).toBeCloseTo(unplanned.totals.price, 8);
    valueOf(await host.writeCells('Stock', name, [[wood]], true));
    await engine.settled();
    expect(await total()).toBe(before);
  });

  it('a figure typed over is counted wherever it stands, and stands out', async () => {
    showTypedOver(engine);
    const sheet = engine.workbook.getSheetBySheetName('Takeoff')!;
    const said = async () => (await read('Takeoff', 'K2')) as string;
    expect(await said()).toBe('');
    const fills = (address: string) => {
      const { row, column } = valueOf(readAddress(address));
      return sheet.getComposedCellStyle(row, column).bg?.rgb;
    };
    for (const [at, key] of (['labor', 'price'] as const).entries()) {
      const address = cellOf(key, 1);
      const formula = cellFormula(engine, sheet, ...placeOf(address));
      expect(fills(address)).not.toBe(TYPED_OVER_LOOK.fill);
      valueOf(await host.writeCells('Takeoff', address, [[5]], true));
      await engine.settled();
      expect([at, await said()]).toEqual([at, 'Figures typed over: 1.']);
      expect(fills(address)).toBe(TYPED_OVER_LOOK.fill);
      valueOf(await host.writeCells('Takeoff', address, [[formula]], true));
      await engine.settled();
      expect(await said()).toBe('');
      expect(fills(address)).not.toBe(TYPED_OVER_LOOK.fill);
    }
    // An input is the user's to type.
    expect(fills(cellOf('span', 1))).not.toBe(TYPED_OVER_LOOK.fill);
  });
});

function placeOf(address: string): [number, number] {
  const { row, column } = valueOf(readAddress(address));
  return [row, column];
}

/** The factor of a wood in the plan that the workbook was filled with. */
function liveFactor(wood: string): number | null {
  return plannedFactors(PLANNED, STANDARDS)(wood);
}
