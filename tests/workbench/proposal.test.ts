import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BLANK_JOB, type Job } from '../../src/job/fields';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { columnLetters } from '../../src/workbook/address';
import type { Sheet } from '../../src/workbook/sheet';
import { workbookSheets } from '../../src/workbook/workbook';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { differences } from './differences';

const STANDARDS = defaultStandards();
const JOB: Job = {
  ...BLANK_JOB,
  ...{
    setups: 'on a line of their own',
    finishRate: 1.25,
    discount: 0.05,
    minimum: 5000,
    deliveryCharge: 40,
    taxRate: 0.0625,
  },
  ...{ taxOn: 'everything but delivery', alternates: ['E'] },
  extras: [{ words: 'Blocks', quantity: 3, unitPrice: 4.5 }],
};
const OPENINGS = [
  opening({ mark: 'A', head: 'half round', span: 36, quantity: 2, ends: 'legs', leg: 60, otherLeg: 48 }),
  opening({ mark: 'B', head: 'segmental', span: 48, rise: 10, place: 'Hall' }),
  opening({ mark: 'C', head: 'elliptical', span: 60, rise: 20, place: 'Hall', priceAgreed: 321.5 }),
  opening({ mark: 'D', head: 'segmental', span: 40, place: 'Attic' }),
  opening({ mark: 'E', head: 'round', span: 30, sides: 2 }),
];

let engine: Engine;
let host: WorkbenchHost;
let sheets: Sheet[];

async function fill(job: Job): Promise<void> {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  sheets = workbookSheets(scheduleOf(OPENINGS), takeoff(OPENINGS, STANDARDS), { job, proposal: true });
  valueOf(await host.writeSheets(sheets, { replace: [] }));
  engine.api.getFormula().executeCalculation();
  await engine.settled();
}
const named = (name: string) => sheets.find((sheet) => sheet.name === name)!;
const shown = async (name: string) => valueOf(await host.readSheet(name))!.rows;

/** Types into the Takeoff, under the column of this key, beside the opening with this mark. */
async function type(mark: string, key: string, value: string | number): Promise<void> {
  const { columnKeys } = named('Takeoff');
  const rows = await shown('Takeoff');
  const row = rows.findIndex((cells) => cells[columnKeys!.indexOf('mark')] === mark) + 1;
  valueOf(await host.writeCells('Takeoff', `${columnLetters(columnKeys!.indexOf(key))}${row}`, [[value]], true));
  await engine.settled();
}

/** Quantity, unit price and amount of the printed line that names a mark. */
async function lineOf(mark: string): Promise<unknown[]> {
  const cells = (await shown('Proposal')).find((row) => row[0] === mark)!;
  return [cells[1], cells[3], cells[4]];
}
const amountOf = async (text: string) => (await shown('Proposal')).find((row) => row[2] === text)?.[4];
const states = async () =>
  (await shown('Proposal')).flatMap((row) => (typeof row[14] === 'string' && row[14] !== 'State' ? [row[14]] : []));

describe('the Proposal sheet in the grid', () => {
  beforeAll(() => fill(JOB), 60_000);
  afterAll(() => engine.univer.dispose());

  it('calculates, every formula, to what the proposal says', async () => {
    expect(
      named('Proposal')
        .rows.flat()
        .filter((cell) => cell?.formula).length,
    ).toBeGreaterThan(50);
    expect(await differences(host, [named('Proposal')], 1e-9)).toEqual([]);
  });

  it('follows the Takeoff by number: quantity, amount and total of a changed row', async () => {
    const [, unitPrice] = await lineOf('B');
    await type('B', 'quantity', 3);
    const [quantity, now, amount] = await lineOf('B');
    expect(quantity).toBe(3);
    expect(now).not.toBe(unitPrice);
    expect(amount).toBeCloseTo(3 * Number(now), 9);
    expect(await states()).toContain('changed since');
    await type('B', 'quantity', 1);
    expect(await states()).toEqual([]);
  });

  it('says where words are older than the row, and where an opening has a price now', async () => {
    await type('A', 'species', 'Red oak');
    await type('D', 'rise', 9);
    expect(await states()).toEqual(['changed since', 'changed since']);
    const summary = (await shown('Proposal'))
      .flat()
      .find((cell) => typeof cell === 'string' && cell.startsWith('Write the proposal again'));
    expect(summary).toBe('Write the proposal again: 2 openings are others than the words say.');
    await type('A', 'species', '');
    await type('D', 'rise', '');
  });

  it('takes the agreed price of an opening as it is typed', async () => {
    await type('C', 'priceAgreed', 400);
    expect(await lineOf('C')).toEqual([1, 400, 400]);
    await type('C', 'priceAgreed', 321.5);
  });

  it('tells that the rules of the job were changed on the Standards sheet', async () => {
    const row = named('Standards').rows.findIndex((cells) => cells[0]?.value === 'Tax') + 1;
    valueOf(await host.writeCells('Standards', `B${row}`, [[0.08]], true));
    await engine.settled();
    const cells = (await shown('Proposal')).flat();
    expect(cells).toContain("Write the proposal again: Standards or the job's rules are others now.");
    expect(await amountOf('Tax 6.25%, not on delivery')).toBeGreaterThan(0);
  });
});

describe('a Proposal sheet with a line for each place', () => {
  beforeAll(() => fill({ ...BLANK_JOB, linesBy: 'place' }), 60_000);
  afterAll(() => engine.univer.dispose());

  it('adds the openings of a place up by formula', async () => {
    expect(await differences(host, [named('Proposal')], 1e-9)).toEqual([]);
    const before = await lineOf('B, C');
    await type('C', 'priceAgreed', 421.5);
    const after = await lineOf('B, C');
    expect(Number(after[2]) - Number(before[2])).toBeCloseTo(100, 9);
  });
});
