import { afterAll, beforeAll, expect, test } from 'vitest';
import { SETTINGS, defaultStandards, type SettingKey } from '../../src/standards';
import { ROW_FIELDS } from '../../src/takeoff/row';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff } from '../../src/takeoff/takeoff';
import { addressOf, columnLetters, readAddress, readRange } from '../../src/workbook/address';
import { readFactors } from '../../src/workbook/planBlock';
import { TAKEOFF_COLUMNS, UNPLANNED, type ColumnKey } from '../../src/workbook/takeoff/columns';
import { planState } from '../../src/workbook/takeoff/read';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import { workbookSheets } from '../../src/workbook/workbook';
import { bringUpToDate, holdFactors, keepPlans, writeTickets } from '../../taskpane/pane/deeds/plans';
import { takeSegments } from '../../taskpane/pane/deeds/segments';
import type { Bench } from '../../taskpane/pane/deeds/bench';
import { coreWith } from '../../taskpane/pane/loadCore';
import { reduce } from '../../taskpane/pane/reducer';
import { initialState } from '../../taskpane/pane/state';
import { createStore } from '../../taskpane/pane/store';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { differences } from './differences';

const STANDARDS = defaultStandards();
/** A row for each input, so that in each another one can be changed. */
const OPENINGS = ROW_FIELDS.map((_, at) =>
  opening({
    ...{ no: at + 1, row: at + 2, mark: `W${at + 1}`, head: 'segmental', span: 36 + at, rise: 8, quantity: 2 },
    // 90 mm, as a list in inches holds it: more digits than a sheet's text has.
    ...(at === 3 ? { face: 90 / 25.4 } : {}),
  }),
);

let engine: Engine;
let host: WorkbenchHost;
let bench: Bench;
beforeAll(async () => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  const options = { example: () => Promise.reject(new Error('none')) };
  bench = { host, core: coreWith(null), store: createStore(reduce, initialState(STANDARDS)), options };
  valueOf(await host.writeSheets(sheetsOf(OPENINGS), { replace: [] }));
  await engine.settled();
}, 60_000);
afterAll(() => engine.univer.dispose());

const sheetsOf = (openings: typeof OPENINGS, standards = STANDARDS) =>
  workbookSheets(scheduleOf(openings), takeoff(openings, standards));
const letters = (key: ColumnKey) => columnLetters(TAKEOFF_COLUMNS.findIndex((column) => column.key === key));
const place = (key: ColumnKey, at: number) => `${letters(key)}${TAKEOFF_HEAD_ROWS + 1 + at}`;
const table = async (name: string) => valueOf(await host.readSheet(name))!;
const state = async () => planState(await table('Takeoff'));
async function write(sheet: string, address: string, value: string | number | null) {
  valueOf(await host.writeCells(sheet, address, [[value]], true));
}
async function column(key: ColumnKey): Promise<unknown[]> {
  const { rows } = await table('Takeoff');
  const at = TAKEOFF_COLUMNS.findIndex((each) => each.key === key);
  return OPENINGS.map((_, index) => rows[TAKEOFF_HEAD_ROWS + index]?.[at] ?? null);
}

/** Something else than the row has. */
const OTHER: Readonly<Record<(typeof ROW_FIELDS)[number], string | number>> = {
  ...{ quantity: 3, head: 'elliptical', span: 50, rise: 9, ends: 'level', reveal: 0.5, face: 4, thickness: 0.75 },
  ...{ species: 'Cherry', profile: 'Other', leg: 60, segmentsWanted: 9, sides: 2, arcs: 5, haunch: 3, otherLeg: 61 },
};

test('each input alone makes its row "not planned yet", and what is put back is planned again', async () => {
  expect(await state()).toBe('');
  const before = await table('Takeoff');
  for (const [at, field] of ROW_FIELDS.entries()) await write('Takeoff', place(field, at), OTHER[field]);
  await engine.settled();
  expect(await column('plan')).toEqual(ROW_FIELDS.map(() => UNPLANNED));
  expect(await state()).toMatch(/^Boards, set-ups and wood factors are older than 16 rows, W1 first/);
  // What is printed on every page of the planned sheets says so, too.
  for (const name of ['Setups', 'Stock']) expect((await table(name)).rows[0]).toContain(await state());

  for (const [at, field] of ROW_FIELDS.entries()) {
    const was = before.rows[TAKEOFF_HEAD_ROWS + at]?.[TAKEOFF_COLUMNS.findIndex(({ key }) => key === field)];
    await write('Takeoff', place(field, at), (was ?? null) as string | number | null);
  }
  await engine.settled();
  expect(await state()).toBe('');
  for (const name of ['Setups', 'Stock']) expect((await table(name)).rows[0]!.join('')).toBe(name);
}, 20_000);

test('a mark or a place that is another than the cutting plan names makes its row "not planned yet"', async () => {
  const [mark, where] = [(await column('mark'))[2], (await column('place'))[3]];
  await write('Takeoff', place('mark', 2), 'W3a');
  await write('Takeoff', place('place', 3), 'hall');
  await engine.settled();
  expect((await column('plan')).map((text) => text === UNPLANNED)).toEqual(
    ROW_FIELDS.map((_, at) => at === 2 || at === 3),
  );
  await write('Takeoff', place('mark', 2), mark as string);
  await write('Takeoff', place('place', 3), where as string | null);
  await engine.settled();
  expect(await state()).toBe('');
  // Boards and set-ups hang neither on a remark nor on what was agreed.
  await write('Takeoff', place('remarks', 4), 'with the doors');
  await write('Takeoff', place('priceAgreed', 5), 99);
  await engine.settled();
  expect(await state()).toBe('');
  await write('Takeoff', place('remarks', 4), null);
  await write('Takeoff', place('priceAgreed', 5), null);
}, 20_000);

/** Settings that count only while a list is read. */
const FOR_READING: readonly SettingKey[] = ['mullPost', 'straightPiece'];

test('each setting alone is told as changed, but for those that count only while a list is read', async () => {
  // Of one opening: every setting has all that rests on it calculated.
  const apart = startHeadless(ARCH_FUNCTIONS);
  try {
    const own = new WorkbenchHost(apart);
    valueOf(await own.writeSheets(sheetsOf(OPENINGS.slice(0, 1)), { replace: [] }));
    const { rows } = valueOf(await own.readSheet('Standards'))!;
    const cellOf = (label: string) => `B${rows.findIndex((row) => row[0] === label) + 1}`;
    const valueIn = (label: string) => rows.find((row) => row[0] === label)![1] as string | number;
    const untold: SettingKey[] = [];
    let before: { address: string; rows: (string | number)[][] }[] = [];
    for (const { key, label } of SETTINGS) {
      const [address, value] = [cellOf(label), valueIn(label)];
      valueOf(await own.overwrite('Standards', [...before, { address, rows: [[`${value} x`]] }]));
      await apart.settled();
      before = [{ address, rows: [[value]] }];
      const said = planState(valueOf(await own.readSheet('Takeoff'))!);
      if (said === '') untold.push(key);
      else expect(said, key).toBe(`${OLDER} the shop's settings: bring them up to date.`);
    }
    valueOf(await own.overwrite('Standards', before));
    await apart.settled();
    expect(planState(valueOf(await own.readSheet('Takeoff'))!)).toBe('');
    expect(untold.sort()).toEqual(FOR_READING);
  } finally {
    apart.univer.dispose();
  }
}, 60_000);

const OLDER = 'Boards, set-ups and wood factors are older than';

test('settings, rows and a row that is gone are told together', async () => {
  const [label] = SETTINGS.map((setting) => setting.label);
  const { rows } = await table('Standards');
  const at = rows.findIndex((row) => row[0] === label);
  await write('Standards', `B${at + 1}`, 'x');
  await write('Takeoff', place('span', 4), 99);
  await engine.settled();
  expect(await state()).toBe(`${OLDER} the shop's settings and row W5: bring them up to date.`);
  await write('Standards', `B${at + 1}`, rows[at]![1] as string | number);
  const [no] = (await column('no')).slice(-1);
  await write('Takeoff', place('no', OPENINGS.length - 1), 99);
  await engine.settled();
  expect(await state()).toBe(`${OLDER} 2 rows, W5 first, and 1 is gone: bring them up to date.`);
  await write('Takeoff', place('no', OPENINGS.length - 1), no as number);
  await write('Takeoff', place('span', 4), OPENINGS[4]!.span!);
  await engine.settled();
  expect(await state()).toBe('');
}, 20_000);

test('each cell of the stock list and of the knives at hand alone is counted as changed', async () => {
  const apart = startHeadless(ARCH_FUNCTIONS);
  const own = new WorkbenchHost(apart);
  const table = async (name: string) => valueOf(await own.readSheet(name))!;
  const write = async (address: string, value: string | number | null) => {
    valueOf(await own.writeCells('Standards', address, [[value]], true));
    await apart.settled();
  };
  const state = async () => planState(await table('Takeoff'));
  const one = sheetsOf(OPENINGS.slice(0, 1));
  valueOf(await own.writeSheets(one, { replace: [] }));
  const counted = async () =>
    (await table('Stock')).rows.find((row) => row[1] === 'settings and list cells changed since')?.[0];
  const names = one.flatMap((sheet) => sheet.names ?? []);
  const inputs: string[] = [];
  for (const list of ['Wood', 'OnHand']) {
    const { first, last } = valueOf(
      readRange(
        names
          .find(({ name }) => name === list)!
          .ref.split('!')[1]!
          .replaceAll('$', ''),
      ),
    );
    // The first row, one in the middle and the last: each column of them.
    for (const row of [first.row, Math.trunc((first.row + last.row) / 2), last.row])
      for (let column = first.column; column <= last.column; column++) inputs.push(addressOf({ row, column }));
  }
  const { rows } = await table('Standards');
  const valueAt = (address: string) => {
    const { row, column } = valueOf(readAddress(address));
    return (rows[row]?.[column] ?? null) as string | number | null;
  };
  const formulas = valueOf(await own.readFormulas('Standards'))!.rows;
  const isFormula = (address: string) => {
    const { row, column } = valueOf(readAddress(address));
    return String(formulas[row]?.[column] ?? '').startsWith('=');
  };
  const typed = inputs.filter((address) => !isFormula(address));
  expect(typed.length).toBeGreaterThan(30);
  for (const address of typed) {
    await write(address, valueAt(address) === null ? 7 : null);
    expect([address, await counted()]).toEqual([address, 1]);
    expect(await state()).toMatch(/older than the shop's settings/);
    await write(address, valueAt(address));
  }
  expect(await state()).toBe('');
  apart.univer.dispose();
}, 60_000);

test('rows in another order have the plan they had', async () => {
  // The numbers and inputs of two rows change places, as sorting does.
  const inputs: ColumnKey[] = ['no', 'mark', ...ROW_FIELDS];
  const rows = (await table('Takeoff')).rows.slice(TAKEOFF_HEAD_ROWS);
  const at = (key: ColumnKey) => TAKEOFF_COLUMNS.findIndex((each) => each.key === key);
  for (const key of inputs) {
    await write('Takeoff', place(key, 0), (rows[5]?.[at(key)] ?? null) as string | number | null);
    await write('Takeoff', place(key, 5), (rows[0]?.[at(key)] ?? null) as string | number | null);
  }
  await engine.settled();
  expect(await state()).toBe('');
  for (const key of inputs) {
    await write('Takeoff', place(key, 0), (rows[0]?.[at(key)] ?? null) as string | number | null);
    await write('Takeoff', place(key, 5), (rows[5]?.[at(key)] ?? null) as string | number | null);
  }
  await engine.settled();
}, 20_000);

test('segments taken over go to the rows of their numbers, and one undo takes all back', async () => {
  const change = (no: number) => ({ nos: [no], marks: [`W${no}`], from: 3, to: 4, saved: 1 });
  const savings = { changes: [change(2), change(9)], saved: 2 };
  const before = (await table('Takeoff')).rows;
  expect(await takeSegments(bench, { savings, rows: before.slice(1) })).toBe(false);
  expect(await takeSegments(bench, { savings, rows: before })).toBe(true);
  await engine.settled();
  const wanted = await column('segmentsWanted');
  expect(wanted).toEqual(ROW_FIELDS.map((_, at) => (at === 1 || at === 8 ? 4 : null)));
  expect(await state()).toMatch(/older than 2 rows, W2 first/);
  expect(await takeSegments(bench, { savings, rows: before })).toBe(false);
  expect(bench.store.get().notice?.text).toContain('Bring it up to date');
  await engine.api.undo();
  await engine.settled();
  expect(await column('segmentsWanted')).toEqual(ROW_FIELDS.map(() => null));
  expect(await state()).toBe('');
}, 20_000);

test('after an edit the plan is renewed by itself, says once what moved, is no step of undo, and can be held', async () => {
  const leave = keepPlans(bench);
  const renewed = async () => {
    for (let wait = 0; wait < 100; wait++) {
      await new Promise((resolve) => setTimeout(resolve, 100));
      const { older, renewing, moved } = bench.store.get().plans;
      if (older === '' && !renewing && moved.length > 0) break;
    }
    await engine.settled();
    return bench.store.get().plans;
  };
  const before = readFactors(await table('Stock'));
  await write('Takeoff', place('quantity', 0), 40);
  const plans = await renewed();
  expect(plans.failed).toBe('');
  expect(plans.moved[0]).toMatch(
    /^Wood factor of Poplar \S+ \d\.\d+ → \d\.\d+: \$[\d.]+ (?:more|less) over \d+ openings\.$/,
  );
  expect(await state()).toBe('');
  const edited = OPENINGS.map((each, at) => (at === 0 ? { ...each, quantity: 40 } : each));
  expect(await differences(host, sheetsOf(edited), 1e-9)).toEqual([]);

  await engine.api.undo();
  await renewed();
  expect((await table('Takeoff')).rows[TAKEOFF_HEAD_ROWS]![3]).toBe(2);
  await engine.api.redo();
  await renewed();

  leave();
  await holdFactors(bench);
  await engine.settled();
  const held = readFactors(await table('Stock'));
  expect(held.map(({ held: factor }) => factor)).not.toContain(null);
  expect(before).toHaveLength(held.length);
  const factors = new Map(held.map(({ wood, factor }) => [wood.toLowerCase(), factor]));
  const { taken } = planTakeoff(takeoff(edited, STANDARDS), {}, factors);
  expect(await column('unitPrice')).toEqual(taken.openings.map(({ cost }) => cost!.unitPrice));
}, 40_000);

test('tickets and purchase list are written when asked for, follow an edit, and say so where they can not', async () => {
  valueOf(
    await host.writeSheets(sheetsOf(OPENINGS), { replace: ['Takeoff', 'Stock', 'Setups', 'Schedule', 'Standards'] }),
  );
  await engine.settled();
  await writeTickets(bench);
  expect(bench.store.get().notice?.text).toMatch(/^The sheets Tickets and Purchase are written/);
  await engine.settled();
  const texts = async (name: string) => (await table(name)).rows.map((row) => row.join(' '));
  expect((await texts('Tickets'))[0]!.trim()).toBe('Tickets');
  expect((await texts('Purchase'))[0]!.trim()).toBe('Purchase');
  const glued = (await table('Tickets')).rows.find(([no]) => no === '1')!;

  await write('Takeoff', place('quantity', 0), 7);
  await engine.settled();
  expect((await texts('Tickets'))[0]).toMatch(/older than row W1/);
  await bringUpToDate(bench);
  await engine.settled();
  expect((await texts('Tickets'))[0]!.trim()).toBe('Tickets');
  const after = (await table('Tickets')).rows.find(([no]) => no === '1')!;
  expect([glued[3], after[3]]).toEqual(['2 × ring', '7 × ring']);

  // Two rows that change their spans, and one its mark, cost what they did before, and are other tickets.
  const edited = OPENINGS.map((each, at) => (at === 0 ? { ...each, quantity: 7 } : each));
  const [second, third] = [edited[1]!, edited[2]!];
  const moved = [
    edited.map((each, at) => (at === 1 || at === 2 ? { ...each, span: (at === 1 ? third : second).span } : each)),
    edited.map((each, at) => (at === 1 ? { ...each, mark: 'W2a' } : each)),
  ];
  for (const openings of moved) {
    const sheets = sheetsOf(openings);
    valueOf(await host.writeSheets(sheets, { replace: sheets.map(({ name }) => name) }));
    await engine.settled();
    expect(await state()).toBe('');
    for (const name of ['Tickets', 'Purchase']) expect((await texts(name))[0]).toContain('Planned again since');
    valueOf(await host.writeSheets(sheetsOf(edited), { replace: sheets.map(({ name }) => name) }));
    await engine.settled();
    for (const name of ['Tickets', 'Purchase']) expect((await texts(name))[0]!.trim()).toBe(name);
  }

  // Filled again, the plan is current and the tickets are those of before.
  valueOf(
    await host.writeSheets(sheetsOf(OPENINGS), { replace: ['Takeoff', 'Stock', 'Setups', 'Schedule', 'Standards'] }),
  );
  await engine.settled();
  expect(await state()).toBe('');
  expect((await texts('Tickets'))[0]).toContain('Planned again since: write the tickets again.');
  expect((await texts('Purchase'))[0]).toContain('Planned again since: write the list again.');
}, 40_000);

test('a sheet of the name Tickets that is none of ours stays as it is', async () => {
  await write('Tickets', 'A1', 'For the fair');
  await writeTickets(bench);
  expect(bench.store.get().notice?.text).toBe('The sheet Tickets is one of your own: give it another name first.');
});

test('a sheet of the name Stock that holds no plan of ours is not written over', async () => {
  const own = await table('Stock');
  for (const [row, cells] of own.rows.entries())
    if (String(cells[0] ?? '').startsWith('Wood factors')) await write('Stock', `A${own.firstRow + row}`, 'Our own');
  await write('Tickets', 'A1', 'Tickets');
  const before = (await table('Stock')).rows;
  await writeTickets(bench);
  expect(bench.store.get().notice?.text).toBe('The sheet Stock holds no plan of ours: fill the workbook again.');
  expect((await table('Stock')).rows).toEqual(before);
});
