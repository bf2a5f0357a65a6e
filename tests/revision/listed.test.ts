import { expect, it } from 'vitest';
import { compareTakeoffs } from '../../src/revision/listed';
import { priceText } from '../../src/revision/words';
import { defaultStandards } from '../../src/standards';
import { allExtras, extrasTotal } from '../../src/takeoff/extras';
import { takeoff, type Takeoff } from '../../src/takeoff/takeoff';
import { revisionSheet } from '../../src/workbook/revisionSheet';
import { opening } from '../takeoff/openings';

it('counts extras into the totals and into the money of the opening that has them, priced itself or not', () => {
  const standards = { ...defaultStandards(), keystonePrice: 40, rosettePrice: 7.5 };
  const arch = { head: 'segmental', span: 36, rise: 6, quantity: 2 } as const;
  const rosettes = { extras: [{ kind: 'rosette', each: 4 }] } as const;
  const keystone = { extras: [{ kind: 'keystone', each: 1 }] } as const;
  const list = (first: object): Takeoff =>
    takeoff(
      [
        opening({ no: 1, row: 2, mark: 'A', ...arch, ...first }),
        opening({ no: 2, row: 3, mark: 'B', ...arch, span: null, ...rosettes }),
      ],
      standards,
    );
  const [old, now] = [list({}), list(keystone)];
  const inAll = (taken: Takeoff) => Math.round(100 * (taken.totals.price + (extrasTotal(allExtras(taken)) ?? 0))) / 100;
  const revision = compareTakeoffs(old, now);
  expect(revision.total).toEqual({ old: inAll(old), new: inAll(now) });
  expect(revision.changed).toMatchObject([{ new: { mark: 'A' }, money: 80 }]);
  expect(revision.unchanged).toMatchObject([{ old: { mark: 'B', price: 60 } }]);

  const money = (amount: number) => amount.toFixed(2);
  const { added, dropped } = compareTakeoffs(takeoff([], standards), now);
  expect(dropped).toEqual([]);
  expect(added.map((one) => priceText(one, false, money))[1]).toBe('not priced, its extras 60.00');
  const gone = compareTakeoffs(now, takeoff([], standards)).dropped;
  expect(gone.map((one) => priceText(one, true, money))[1]).toBe('was not priced, its extras -60.00');
  const names = { old: 'before', now: 'after' };
  const sheet = revisionSheet(compareTakeoffs(takeoff([], standards), now), names, 'in');
  const prices = sheet.rows.flatMap((row) => (row[2]?.value === 'B' ? [row[8]] : []));
  expect(prices).toMatchObject([{ value: 60, format: expect.stringMatching(/extras/), style: 'attention' }]);
});
