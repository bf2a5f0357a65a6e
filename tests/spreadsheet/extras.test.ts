import { expect, it } from 'vitest';
import { BLANK_JOB } from '../../src/job/fields';
import { defaultStandards, withSettings } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { workbookSheets } from '../../src/workbook/workbook';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { compare } from './compare';

it('LibreOffice Calc counts and prices extras as the core does, those of an alternate apart', async () => {
  const keystone = { kind: 'keystone', each: 1 } as const;
  const list = [
    opening({ row: 2, mark: 'W1', quantity: 3, head: 'half round', span: 36, extras: [keystone] }),
    opening({ row: 3, mark: 'W2', quantity: null, head: 'segmental', span: 48, rise: 8, extras: [keystone] }),
    opening({ row: 4, mark: 'W3', head: 'half round', span: 30, extras: [keystone, { kind: 'rosette', each: 4 }] }),
  ];
  const standards = valueOf(withSettings(defaultStandards(), { keystonePrice: 85.25 }));
  const sheets = workbookSheets(scheduleOf(list), takeoff(list, standards), {
    ...{ plain: true, proposal: true, job: { ...BLANK_JOB, alternates: ['W3'] } },
  });
  expect((await compare(sheets)).differences).toEqual([]);
});
