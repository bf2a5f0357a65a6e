import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { openingJson } from '../../cli/takeoffJson';
import type { Opening } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { ROW_FIELDS } from '../../src/takeoff/row';
import { takeoff } from '../../src/takeoff/takeoff';
import { columnLetters } from '../../src/workbook/address';
import { columnAt, type CheckKey } from '../../src/workbook/check/columns';
import { CHECK_HEAD_ROWS } from '../../src/workbook/checkSheet';
import { NEEDS_NUMBER, TAKEOFF_COLUMNS, type ColumnKey } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import { planState } from '../../src/workbook/takeoff/read';
import { takeoffTotals } from '../../src/workbook/takeoff/totals';
import { workbookSheets } from '../../src/workbook/workbook';
import type { Bench } from '../../taskpane/pane/deeds/bench';
import { bringUpToDate, writeTickets } from '../../taskpane/pane/deeds/plans';
import { coreWith } from '../../taskpane/pane/loadCore';
import { reduce } from '../../taskpane/pane/reducer';
import { initialState } from '../../taskpane/pane/state';
import { createStore } from '../../taskpane/pane/store';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { checkRows } from '../check/quote/example';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';

/**
 * One No. and figure has one value in every place that shows it (the Takeoff, Check, Setups, Proposal, Tickets, JSON, the pane's
 * totals), after each thing that is done to a workbook; or the place says that it is older than the row.
 */

const STANDARDS = defaultStandards();
const FIRST: readonly Opening[] = [
  opening({ no: 1, row: 2, mark: 'A', head: 'segmental', span: 36, rise: 8, quantity: 2 }),
  opening({ no: 2, row: 3, mark: 'B', head: 'half round', span: 40, ends: 'legs', leg: 50 }),
  opening({ no: 3, row: 4, mark: 'C', head: 'segmental', span: 48, rise: 9, species: 'Cherry' }),
  opening({ no: 4, row: 5, mark: 'D', head: 'segmental', span: 44 }),
  opening({ no: 5, row: 6, mark: 'E', head: 'segmental', span: 30, rise: 5, face: 4.25, priceAgreed: 120 }),
];
/** What a supplier quotes for them, one length wrong. */
const QUOTE = [
  ['Mark', 'Qty', 'Length', 'Unit price', 'Extension'],
  ...FIRST.map(({ mark, quantity }, at) => [mark, quantity, 50 + at, 100 + at, (100 + at) * (quantity ?? 1)]),
];
const place = (key: ColumnKey) => TAKEOFF_COLUMNS.findIndex((column) => column.key === key);

/** Figures that JSON has under the Takeoff's own names. */
const IN_JSON = ['unitPrice', 'price', 'boardFeet', 'labor', 'material', 'share', 'runMinutes', 'segments'] as const;

describe.each([
  ['of ARCH formulas', false],
  ['of plain formulas', true],
] as const)('a workbook %s', (_form, plain) => {
  let engine: Engine;
  let host: WorkbenchHost;
  let bench: Bench;
  let openings = FIRST;
  const said = [vi.spyOn(console, 'error'), vi.spyOn(console, 'warn')];

  const sheetsOf = () => {
    const { taken } = planTakeoff(takeoff(openings, STANDARDS));
    return workbookSheets(scheduleOf(openings), taken, { plain, proposal: true, check: checkRows(QUOTE, taken) });
  };
  const table = async (name: string) => valueOf(await host.readSheet(name))!;
  const bodyRow = (no: number) =>
    table('Takeoff').then(({ rows }) => rows.findIndex((row, at) => at >= TAKEOFF_HEAD_ROWS && row[0] === no));

  beforeAll(async () => {
    engine = startHeadless(ARCH_FUNCTIONS);
    host = new WorkbenchHost(engine);
    const options = { example: () => Promise.reject(new Error('none')) };
    bench = { host, core: coreWith(null), store: createStore(reduce, initialState(STANDARDS)), options };
    valueOf(await host.writeSheets(sheetsOf(), { replace: [] }));
    await engine.settled();
    await writeTickets(bench);
    await engine.settled();
  }, 60_000);
  afterAll(() => {
    engine.univer.dispose();
    for (const spy of said) spy.mockRestore();
  });

  async function bothAlike(): Promise<void> {
    await engine.settled();
    const now = planTakeoff(takeoff(openings, STANDARDS)).taken;
    const json = now.openings.map((row) => openingJson(row, STANDARDS));
    const sheet = await table('Takeoff');
    const rows = new Map(sheet.rows.slice(TAKEOFF_HEAD_ROWS).map((row) => [row[0], row]));
    expect(planState(sheet)).toBe('');
    for (const figures of json) {
      const row = rows.get(figures.no)!;
      const taken = now.openings.find(({ no }) => no === figures.no)!;
      for (const [at, { key, role, value }] of TAKEOFF_COLUMNS.entries()) {
        if (role !== 'figure' || key === 'lookAt' || key === 'plan') continue;
        const what = `${figures.mark} ${key}`;
        const [cell, core] = [row[at] ?? '', value(taken, now) ?? ''];
        if (typeof core === 'number') expect(cell, what).toBeCloseTo(core, 8);
        else expect(cell, what).toBe(core);
        const named = IN_JSON.find((each) => each === key);
        if (named && figures[named] !== null) expect(cell, `${what} in JSON`).toBeCloseTo(figures[named], 8);
      }
    }
    const priced = json.filter(({ price }) => price !== null);
    const totals = takeoffTotals(sheet)!;
    expect(totals).toMatchObject({ openings: openings.length, priced: priced.length });
    expect(totals.price).toBeCloseTo(now.totals.price, 8);
    const total = sheet.rows.find((row) => row[0] === 'Total')!;
    expect(total[place('price')]).toBeCloseTo(now.totals.price, 8);

    const offered = (await table('Proposal')).rows;
    const offeredAgain = expect.stringMatching(/^Write the proposal again/) as string;
    const lineOf = (mark: string) => offered.find((row) => row[0] === mark);
    for (const { mark, price, unitPrice, quantity } of priced) {
      const line = lineOf(mark);
      if (!line) {
        expect(offered.flat(), `${mark} is not offered`).toContainEqual(offeredAgain);
        continue;
      }
      expect(line[1], mark).toBe(quantity);
      expect(line[3], mark).toBeCloseTo(unitPrice!, 8);
      expect(line[4], mark).toBeCloseTo(price!, 8);
    }
    const gone = FIRST.filter(({ no }) => !openings.some((each) => each.no === no));
    if (gone.some(({ mark }) => lineOf(mark))) expect(offered.flat()).toContainEqual(offeredAgain);

    const checked = (await table('Check')).rows.slice(CHECK_HEAD_ROWS);
    for (const line of checked) {
      const shown = (key: CheckKey) => line[columnAt(key)] ?? '';
      const row = now.openings.find(({ opening: { mark } }) => mark === shown('mark'));
      if (row === undefined) {
        expect([shown('ourQuantity'), shown('ourLength'), shown('ourPrice')], `${shown('mark')} is gone`).toEqual([
          '',
          '',
          '',
        ]);
        continue;
      }
      expect(shown('ourQuantity'), row.opening.mark).toBe(row.known.quantity);
      for (const [key, figure] of [
        ['ourLength', row.own?.curve.length],
        ['ourRadius', row.own?.crown?.ring.inside],
        ['ourPrice', row.cost?.unitPrice],
      ] as const) {
        if (figure === undefined) expect(shown(key), `${row.opening.mark} ${key}`).toBe('');
        else expect(shown(key), `${row.opening.mark} ${key}`).toBeCloseTo(figure, 8);
      }
    }
    expect(checked.map((line) => line[columnAt('mark')])).toEqual(
      expect.arrayContaining(openings.map(({ mark }) => mark)),
    );

    const tickets = (await table('Tickets')).rows;
    if (tickets[0]!.slice(1).join('') === '')
      for (const { no, quantity } of priced)
        expect(tickets.find((row) => row[0] === String(no))?.[3], `ticket of ${no}`).toMatch(
          new RegExp(`^${quantity} × `),
        );
    // Setups names the openings of each set-up by mark: all that are priced, and none that is gone.
    const setups = (await table('Setups')).rows.flat().join(' ');
    for (const { mark } of priced) expect(setups).toMatch(new RegExp(`\\b${mark}\\b`));
    for (const { mark } of gone) expect(setups).not.toMatch(new RegExp(`\\b${mark} \\(`));
    // The cutting plan on Stock names, in brackets, whose each piece is.
    const stock = (await table('Stock')).rows.flat().join(' ');
    for (const { mark } of priced) expect(stock).toMatch(new RegExp(`\\([^)]*\\b${mark}\\b`));
    for (const { mark } of gone) expect(stock).not.toMatch(new RegExp(`\\([^)]*\\b${mark}\\b`));
  }

  async function type(no: number, key: ColumnKey, value: string | number | null): Promise<void> {
    const at = `${columnLetters(place(key))}${(await bodyRow(no)) + 1}`;
    valueOf(await host.writeCells('Takeoff', at, [[value]], true));
    await engine.settled();
  }

  it('as filled', bothAlike, 30_000);

  it('after edits, first said to be older, then planned again', async () => {
    await type(1, 'span', 38);
    await type(3, 'quantity', 4);
    await type(4, 'rise', 7);
    expect(planState(await table('Takeoff'))).toMatch(/older than 3 rows/);
    for (const name of ['Setups', 'Stock', 'Tickets']) expect((await table(name)).rows[0]!.join(' ')).toMatch(/older/);
    openings = openings.map((each) => ({
      ...each,
      ...(each.no === 1 ? { span: 38 } : each.no === 3 ? { quantity: 4 } : each.no === 4 ? { rise: 7 } : {}),
    }));
    await bringUpToDate(bench);
    await bothAlike();
  }, 30_000);

  it('after rows were sorted', async () => {
    const { rows } = await table('Takeoff');
    const inputs: ColumnKey[] = ['no', 'mark', 'place', 'remarks', 'priceAgreed', ...ROW_FIELDS];
    const order = [...openings].sort((one, other) => (other.span ?? 0) - (one.span ?? 0));
    for (const [at, { no }] of order.entries()) {
      const from = rows.find((row, index) => index >= TAKEOFF_HEAD_ROWS && row[0] === no)!;
      for (const key of inputs) {
        const to = `${columnLetters(place(key))}${TAKEOFF_HEAD_ROWS + 1 + at}`;
        valueOf(await host.writeCells('Takeoff', to, [[(from[place(key)] ?? null) as string | number | null]], true));
      }
    }
    expect(order.map(({ no }) => no)).not.toEqual(openings.map(({ no }) => no));
    await bothAlike();
  }, 30_000);

  it('after rows were filtered out of sight', async () => {
    const sheet = engine.api.getActiveWorkbook()!.getSheetByName('Takeoff')!;
    sheet.hideRows(await bodyRow(2), 1);
    await bothAlike();
    sheet.showRows(await bodyRow(2), 1);
  }, 30_000);

  it('after a row was deleted', async () => {
    const sheet = engine.api.getActiveWorkbook()!.getSheetByName('Takeoff')!;
    sheet.deleteRow(await bodyRow(3));
    await engine.settled();
    expect(planState(await table('Takeoff'))).toMatch(/older/);
    openings = openings.filter(({ no }) => no !== 3);
    await bringUpToDate(bench);
    await bothAlike();
  }, 30_000);

  it('after it was filled again', async () => {
    valueOf(await host.writeSheets(sheetsOf(), { replace: sheetsOf().map(({ name }) => name) }));
    await bothAlike();
    expect((await table('Proposal')).rows.flat().join(' ')).not.toContain('Write the proposal again');
    // Those of before are told to be of another plan.
    expect((await table('Tickets')).rows[0]!.join(' ')).toContain('write the tickets again');
  }, 30_000);

  it('of a row that lost its number, or everything, says what it lacks, and the total is that of the others', async () => {
    const inputs: ColumnKey[] = ['mark', 'place', 'remarks', 'priceAgreed', ...ROW_FIELDS];
    const at = (await bodyRow(2)) + 1;
    const without = async () => {
      await engine.settled();
      const { rows } = await table('Takeoff');
      const row = rows[at - 1]!;
      expect(String(row[place('lookAt')])).toContain(NEEDS_NUMBER);
      for (const key of ['unitPrice', 'price', 'material'] as const) expect(row[place(key)] ?? '').toBe('');
      const prices = rows
        .slice(TAKEOFF_HEAD_ROWS, TAKEOFF_HEAD_ROWS + openings.length)
        .map((each) => each[place('price')]);
      const sum = prices.reduce<number>((all, price) => all + (typeof price === 'number' ? price : 0), 0);
      expect(prices.filter((price) => typeof price === 'number')).toHaveLength(openings.length - 1);
      expect(rows.find(([first]) => first === 'Total')![place('price')]).toBeCloseTo(sum, 8);
    };
    valueOf(await host.writeCells('Takeoff', `A${at}`, [[null]], true));
    await without();
    for (const key of inputs)
      valueOf(await host.writeCells('Takeoff', `${columnLetters(place(key))}${at}`, [[null]], true));
    await without();
  }, 30_000);

  it('says nothing on the console', () => {
    for (const spy of said) expect(spy).not.toHaveBeenCalled();
  });
});
