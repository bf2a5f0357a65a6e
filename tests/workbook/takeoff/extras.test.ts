import { describe, expect, it } from 'vitest';
import { BLANK_JOB } from '../../../src/job/fields';
import { proposalFrom } from '../../../src/job/offered';
import type { CellValue, Table } from '../../../src/schedule/opening';
import { defaultStandards, withSettings, type Standards } from '../../../src/standards';
import { extrasTotal, allExtras } from '../../../src/takeoff/extras';
import { planTakeoff } from '../../../src/takeoff/planned';
import { takeoff } from '../../../src/takeoff/takeoff';
import { keptFrom, reapply, type Before } from '../../../src/workbook/refill';
import { openingsOfTakeoff } from '../../../src/workbook/takeoff/openings';
import { takeoffTotals } from '../../../src/workbook/takeoff/totals';
import { workbookSheets } from '../../../src/workbook/workbook';
import { opening, scheduleOf } from '../../takeoff/openings';
import { valueOf } from '../../value';

const LIST = [
  opening({ row: 2, mark: 'W1', quantity: 3, head: 'half round', span: 36, extras: [{ kind: 'keystone', each: 1 }] }),
  opening({ row: 3, mark: 'W2', quantity: 2, head: 'segmental', span: 48, rise: 8 }),
  opening({
    ...{ row: 4, mark: 'W3', quantity: 1, head: 'segmental', span: 40, rise: 8 },
    extras: [
      { kind: 'keystone', each: 1 },
      { kind: 'rosette', each: 4 },
    ],
  }),
];
const PRICED = valueOf(withSettings(defaultStandards(), { keystonePrice: 85.25 }));

function tableOf(standards: Standards): Table {
  const sheets = workbookSheets(scheduleOf(LIST), takeoff(LIST, standards));
  const { rows } = sheets.find(({ name }) => name === 'Takeoff')!;
  return { name: 'Takeoff', firstRow: 1, rows: rows.map((row) => row.map((cell) => cell?.value ?? null)) };
}

describe('extras below the Takeoff', () => {
  it('are priced by the shop’s list, for the whole quantity', () => {
    const lines = allExtras(takeoff(LIST, PRICED));
    expect(lines.map(({ no, kind, quantity, unitPrice, price }) => [no, kind, quantity, unitPrice, price])).toEqual([
      [1, 'keystone', 3, 85.25, 255.75],
      [3, 'keystone', 1, 85.25, 85.25],
      [3, 'rosette', 4, null, null],
    ]);
    expect(extrasTotal(lines)).toBe(341);
  });

  it('are never a silent 0: a kind without a price says so, and has no amount', () => {
    const totals = takeoffTotals(tableOf(defaultStandards()))!;
    expect([totals.extras, totals.extrasNotPriced]).toEqual([null, 3]);
    expect(totals.toLookAt.map(({ mark, said }) => [mark, said])).toEqual([
      ['W1', 'The keystone is not priced yet: its price is among the extras of the Standards.'],
      ['W3', 'The keystone is not priced yet: its price is among the extras of the Standards.'],
      ['W3', 'The rosette is not priced yet: its price is among the extras of the Standards.'],
    ]);
  });

  it('stand apart from the openings’ own prices, and below both in one sum', () => {
    const table = tableOf(PRICED);
    const totals = takeoffTotals(table)!;
    const without = takeoffTotals(tableOf(defaultStandards()))!;
    expect([totals.openings, totals.price]).toEqual([3, without.price]);
    expect([totals.extras, totals.extrasNotPriced]).toEqual([341, 1]);
    const both = table.rows.find(([label]) => label === 'Openings and extras')!;
    expect(both[9]).toBeCloseTo(totals.price! + 341, 9);
  });

  it('are read back from the sheet with their openings', () => {
    const again = openingsOfTakeoff(tableOf(PRICED), 'in')!;
    expect(again.map(({ no, extras }) => [no, extras])).toEqual(LIST.map(({ extras }, at) => [at + 1, extras]));
  });

  it('are found by their headings, in a sheet with a column of the user’s own between ours', () => {
    const table = tableOf(PRICED);
    const moved = { ...table, rows: table.rows.map(([no, ...others]) => [no ?? null, 'mine', ...others]) };
    expect(openingsOfTakeoff(moved, 'in')!.map(({ extras }) => extras)).toEqual(LIST.map(({ extras }) => extras));
    const { extras, extrasNotPriced } = takeoffTotals(moved)!;
    expect([extras, extrasNotPriced]).toEqual([341, 1]);
  });
});

describe('a count of extras typed over', () => {
  const each = 5;
  /** The Takeoff of a list after its user typed another count for the first extra. */
  function typed(count: number): Before {
    const sheets = workbookSheets(scheduleOf(LIST), takeoff(LIST, PRICED));
    const table = (name: string): Table => ({
      ...{ name, firstRow: 1 },
      rows: sheets
        .find((sheet) => sheet.name === name)!
        .rows.map((row) => row.map((cell): CellValue => cell?.value ?? null)),
    });
    const values = table('Takeoff');
    const first = values.rows.findIndex(([label]) => label === 'Extra');
    const rows = values.rows.map((row, at) =>
      at === first ? row.map((cell, column) => (column === each ? count : cell)) : row,
    );
    return { values: { ...values, rows }, formulas: { ...values, rows }, schedule: table('Schedule') };
  }
  const again = (count: number, list = LIST) => {
    const kept = { ...keptFrom(typed(count), 'in'), typedOver: [] };
    return reapply(list, kept, PRICED);
  };

  it('is kept when the takeoff is filled again, and said', () => {
    const { openings, said } = again(2);
    expect(openings[0]!.extras).toEqual([{ kind: 'keystone', each: 2, listed: 1 }]);
    expect(said).toEqual(['W1: kept 2 keystones for each from the workbook; the list says 1 keystone for each.']);
    const rows = workbookSheets(scheduleOf(openings), takeoff(openings, PRICED)).find(
      ({ name }) => name === 'Takeoff',
    )!.rows;
    const row = rows.find(([label]) => label?.value === 'Extra')!;
    expect([row[3]!.value, row[5]!.value, row[6]!.value]).toEqual([6, 2, 1]);
    expect(allExtras(takeoff(openings, PRICED))[0]).toMatchObject({ each: 2, listed: 1, quantity: 6, price: 511.5 });
  });

  it('may be none, and comes back no more', () => {
    const { openings } = again(0);
    expect(openings[0]!.extras).toEqual([{ kind: 'keystone', each: 0, listed: 1 }]);
    const { extras } = proposalFrom(planTakeoff(takeoff(openings, PRICED)).taken, BLANK_JOB);
    expect(extras.map(({ quantity }) => quantity)).toEqual([1]);
  });

  it('is none where its row was deleted, is said, and stands again with 0', () => {
    const before = typed(1);
    const gone = (table: Table): Table => ({ ...table, rows: table.rows.filter(([label]) => label !== 'Extra') });
    const kept = keptFrom({ ...before, values: gone(before.values), formulas: gone(before.formulas) }, 'in');
    const { openings, said } = reapply(LIST, { ...kept, typedOver: [] }, PRICED);
    expect(said).toContain('W1: left without keystone, as it is in the workbook; the list says 1 keystone for each.');
    const lines = allExtras(takeoff(openings, PRICED));
    expect(lines.map(({ each }) => each)).toEqual(lines.map(() => 0));
    expect(lines).toHaveLength(allExtras(takeoff(LIST, PRICED)).length);
    // Filled once more without a change nothing is said anew of a list that has it no more.
    const { extras: _, ...without } = LIST[0]!;
    const third = reapply([without, ...LIST.slice(1)], { ...kept, typedOver: [] }, PRICED);
    expect(third.said.filter((sentence) => sentence.startsWith('W1'))).toEqual([]);
  });

  it('comes into a list that had none before without being taken for deleted', () => {
    const { extras, ...without } = LIST[0]!;
    const sheets = workbookSheets(scheduleOf([without]), takeoff([without], PRICED));
    const table = (name: string): Table => ({
      ...{ name, firstRow: 1 },
      rows: sheets
        .find((sheet) => sheet.name === name)!
        .rows.map((row) => row.map((cell): CellValue => cell?.value ?? null)),
    });
    const [values, schedule] = [table('Takeoff'), table('Schedule')];
    const kept = keptFrom({ values, formulas: values, schedule }, 'in');
    expect(reapply([LIST[0]!], { ...kept, typedOver: [] }, PRICED).openings[0]!.extras).toEqual(extras);
  });

  it.each([1.5, -1])('that is none is said, not used: %s', (count) => {
    const { openings, said } = again(count);
    expect(openings[0]!.extras).toEqual([{ kind: 'keystone', each: 1 }]);
    expect(said).toEqual([`W1: ${count} for each keystone can't be used; the list says 1 keystone for each.`]);
  });

  it('gives way to a revised list that counts otherwise now', () => {
    const list = LIST.map((one, at) => ({ ...one, no: at + 1 }));
    const revised = [{ ...list[0]!, extras: [{ kind: 'keystone', each: 3 } as const] }, ...list.slice(1)];
    expect(again(2, list).openings[0]!.extras![0]).toMatchObject({ each: 2 });
    const { openings, said } = again(2, revised);
    expect(openings[0]!.extras).toEqual([{ kind: 'keystone', each: 3 }]);
    expect(said).toEqual(['W1: 2 keystones from the workbook is not kept: the list says 3 keystones for each now.']);
  });

  it('is said where the list has no such extra now', () => {
    const { extras: _, ...without } = LIST[0]!;
    expect(again(2, [without, ...LIST.slice(1)]).said).toEqual([
      'W1: 2 keystones for each was typed in the workbook, but the list has no keystone there now.',
    ]);
  });
});

describe('extras in a proposal', () => {
  it('are a line for each kind, in the total; without a price they are named', () => {
    const { taken } = planTakeoff(takeoff(LIST, PRICED));
    const proposal = proposalFrom(taken, BLANK_JOB);
    expect(proposal.extras).toEqual([
      { words: 'Keystone', quantity: 4, unitPrice: 85.25, kind: 'keystone', amount: 341 },
    ]);
    expect(proposal.extrasNotPriced).toEqual(['4 rosettes.']);
    expect(proposal.total).toBeCloseTo(taken.totals.price + 341, 9);
  });

  it('of an alternate are in no amount, and said', () => {
    const { taken } = planTakeoff(takeoff(LIST, PRICED));
    const proposal = proposalFrom(taken, { ...BLANK_JOB, alternates: ['W3'] });
    expect(proposal.extras.map(({ amount }) => amount)).toEqual([255.75]);
    expect(proposal.extrasNotPriced).toEqual([
      'W3: 1 keystone for each opening (an alternate, not in the total).',
      'W3: 4 rosettes for each opening (an alternate, not in the total).',
    ]);
  });
});
