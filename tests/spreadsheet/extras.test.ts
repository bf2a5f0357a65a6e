import { expect, it } from 'vitest';
import { BLANK_JOB } from '../../src/job/fields';
import { defaultStandards, withSettings } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { workbookSheets } from '../../src/workbook/workbook';
import { writeXlsx } from '../../src/workbook/xlsx';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { calculated } from './calc';
import { compare } from './compare';

it.concurrent('LibreOffice Calc counts and prices extras as the core does, those of an alternate apart', async () => {
  const keystone = { kind: 'keystone', each: 1 } as const;
  const list = [
    opening({ row: 2, mark: 'W1', quantity: 3, head: 'half round', span: 36, extras: [keystone] }),
    opening({ row: 3, mark: 'W2', quantity: null, head: 'segmental', span: 48, rise: 8, extras: [keystone] }),
    opening({ row: 4, mark: 'W3', head: 'half round', span: 30, extras: [keystone, { kind: 'rosette', each: 4 }] }),
    // An alternate that can't be priced has its extras no more in the total than one that can.
    opening({ row: 5, mark: 'W4', quantity: 2, head: 'segmental', span: 40, extras: [keystone] }),
  ];
  const standards = valueOf(withSettings(defaultStandards(), { keystonePrice: 85.25 }));
  const sheets = workbookSheets(scheduleOf(list), takeoff(list, standards), {
    ...{ plain: true, proposal: true, job: { ...BLANK_JOB, alternates: ['W3', 'W4'] } },
  });
  expect((await compare(sheets)).differences).toEqual([]);
});

it.concurrent('a Proposal written before a kind had a price says that it is to be written again', async () => {
  const list = [opening({ row: 2, head: 'half round', span: 36, extras: [{ kind: 'keystone', each: 1 }] })];
  const sheets = workbookSheets(scheduleOf(list), takeoff(list, defaultStandards()), { plain: true, proposal: true });
  const priced = sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows.map((row) =>
      row[0]?.value === 'Keystone, each'
        ? row.map((cell, at) => (cell && at === 1 ? { ...cell, value: 60 } : cell))
        : row,
    ),
  }));
  const state = async (each: typeof sheets) => {
    const said = (await calculated(valueOf(writeXlsx(each)))).get('Proposal')!.flat();
    return said.filter((cell) => /^(?:Every line follows|Write the proposal again)/.test(String(cell)));
  };
  expect(await Promise.all([sheets, priced].map(state))).toEqual([
    ['Every line follows the Takeoff.'],
    ["Write the proposal again: Standards or the job's rules are others now."],
  ]);
});
