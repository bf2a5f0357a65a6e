import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Opening } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { columnLetters } from '../../src/workbook/address';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoffColumns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoffSheet';
import { workbookSheets } from '../../src/workbook/workbook';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/arch-functions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbench-host';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { differences } from './differences';

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

const takeoffOnly = () => fresh().filter(({ name }) => name === 'Takeoff');

/** Types into the grid, and puts the same into the list that a fresh takeoff is made from. */
async function type(
  mark: string,
  field: 'span' | 'rise' | 'quantity' | 'face' | 'leg' | 'species',
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
  ] as const)('%s, %s %s', async (mark, field, value) => {
    await type(mark, field, value);
    expect(await differing()).toEqual([]);
  });

  it('a deleted row no longer bears its share of set-ups and knives', async () => {
    const sheet = engine.api.getActiveWorkbook()!.getSheetByName('Takeoff')!;
    sheet.deleteRow(TAKEOFF_HEAD_ROWS + 1); // the second opening, from 0
    await engine.settled();
    openings = openings.filter(({ mark }) => mark !== 'B');
    expect(await differing()).toEqual([]);
  });
});
