import { join } from 'node:path';
import { expect, test } from 'vitest';
import { archwright } from './archwright';
import { ownFolder, partsOf, put } from './folder';

const folder = ownFolder();
const file = (name: string, text: string) => put(folder, name, text);
const path = (name: string) => join(folder, name);

const LIST = file('list.csv', 'Mark,Qty,Head,Width,Rise,Remarks\nA,1,segmental,36,6,keystone\nB,2,half round,40,,\n');
const LATER = file('later.csv', 'Mark,Qty,Head,Width,Rise,Remarks\nA,1,segmental,36,8,keystone\n');
const SHOP = ['--standards', file('shop.json', '{"keystonePrice": 40, "shopRate": 91}')];
const ANSWERS = ['--answers', file('answers.json', '{"remark:keystone": "with 1 keystone, at the shop\'s price"}')];
const JOB = ['--job', file('job.json', '{"customer": "A builder"}')];

const total = (args: readonly string[]) => /total (\d+\.\d\d)\./.exec(archwright(args).out)?.[1];
const filled = (list: string, name: string) => {
  expect(archwright(['takeoff', list, ...SHOP, ...ANSWERS, ...JOB, '--out', path(name)]).code).toBe(0);
  return path(name);
};

test('a takeoff workbook in place of the schedule comes to the same money everywhere, at its own settings and answers', () => {
  const [book, later] = [filled(LIST, 'list.xlsx'), filled(LATER, 'later.xlsx')];
  const inAll = (list: string) => {
    const { totals } = JSON.parse(archwright(['takeoff', list, ...SHOP, ...ANSWERS, '--json']).out);
    return (totals.price + totals.extras).toFixed(2);
  };
  const [before, now] = [inAll(LIST), inAll(LATER)];
  expect(Number(before)).toBeGreaterThan(Number(now));

  expect(total(['proposal', LIST, ...SHOP, ...ANSWERS, '--out', path('a.xlsx')])).toBe(before);
  expect(total(['proposal', book, '--out', path('b.xlsx')])).toBe(before);
  expect(Object.values(partsOf(path('b.xlsx'))).join('')).toContain('A builder');
  expect(archwright(['compare', book, later]).out).toContain(`Total: ${before} before, ${now} now`);
  const { totals } = JSON.parse(archwright(['takeoff', book, '--json']).out);
  expect((totals.price + totals.extras).toFixed(2)).toBe(before);
});

test('tickets and guides of a takeoff workbook are those of its list, as figures', () => {
  const book = filled(LIST, 'list.xlsx');
  const out = path('tickets.xlsx');
  const ofBook = archwright(['tickets', book, '--out', out]);
  expect(ofBook.out).toBe(archwright(['tickets', LIST, ...SHOP, ...ANSWERS]).out);
  const sheets = Object.entries(partsOf(out)).filter(([name]) => name.startsWith('xl/worksheets/'));
  expect(sheets).toHaveLength(3);
  for (const [, sheet] of sheets) expect(sheet).not.toContain('<f>');
  expect(archwright(['template', 'A', '--schedule', book, '--out', path('guides')]).code).toBe(0);
});

test('an option that says how a list is read is checked wherever one is read', () => {
  for (const args of [
    ['proposal', LIST, '--out', path('c.xlsx')],
    ['tickets', LIST],
    ['template', 'A', '--schedule', LIST, '--out', path('d')],
    ['check', LIST, '--schedule', LIST],
  ]) {
    const { code, err } = archwright([...args, '--unit', 'furlong']);
    expect([args[0], code, err]).toEqual([args[0], 2, expect.stringContaining('--unit must be one of in, ft, mm, cm')]);
  }
});
