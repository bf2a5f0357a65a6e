import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { archwright } from './archwright';
import { cellsOf, ownFolder, partsOf, put } from './folder';

const folder = ownFolder();
const file = (name: string, text: string) => put(folder, name, text);

const SCHEDULE = file(
  'job.csv',
  'Mark,Qty,Head,Width,Rise\nA1,2,segmental,36,6\nA2,1,half round,40,\nA3,1,segmental,30,\n',
);
const REVISED = file(
  'job-b.csv',
  'Mark,Qty,Head,Width,Rise\nB9,1,round,30,\nA2,1,half round,42,\nA3,1,segmental,30,\nA7,2,segmental,36,6\n',
);
const JOB = file('job.json', '{"customer": "A builder", "taxRate": 0.0625, "minimum": 500}');

describe('archwright proposal', () => {
  test('writes one sheet with the lines, the charges and the total, and says what is not priced', () => {
    const out = join(folder, 'proposal.xlsx');
    const { code, out: said } = archwright(['proposal', SCHEDULE, '--out', out, '--job', JOB]);
    expect(code).toBe(0);
    expect(said).toMatch(/^2 lines, total \d+\.\d\d\.\nNot priced: A3\. Rise is missing/);
    expect(cellsOf(out)).toContain('A builder');
    expect(Object.keys(partsOf(out)).filter((name) => name.startsWith('xl/worksheets/'))).toEqual([
      'xl/worksheets/sheet1.xml',
    ]);
  });

  test('is beside its takeoff where takeoff is given the job', () => {
    const out = join(folder, 'takeoff.xlsx');
    expect(archwright(['takeoff', SCHEDULE, '--out', out, '--job', JOB]).code).toBe(0);
    expect(cellsOf(out)).toContain('A builder');
    expect(cellsOf(out)).toContain('A builder');
    const alone = join(folder, 'alone.xlsx');
    expect(archwright(['proposal', SCHEDULE, '--out', alone, '--standards', out]).code).toBe(0);
    expect(cellsOf(alone)).toContain('A builder');
  });

  test('ends with 2 where it is called wrongly, with 1 where the job can’t be used', () => {
    expect(archwright(['proposal', SCHEDULE]).code).toBe(2);
    const bad = file('bad.json', '{"taxRate": 7}');
    const { code, err } = archwright(['proposal', SCHEDULE, '--out', join(folder, 'x.xlsx'), '--job', bad]);
    expect(code).toBe(1);
    expect(err).toContain('Tax must be from 0% to 100%; got 7.');
  });
});

describe('archwright compare', () => {
  test('--json tells what was added, dropped, renamed and changed, and the money', () => {
    const { code, out } = archwright(['compare', SCHEDULE, REVISED, '--json']);
    expect(code).toBe(0);
    const report = JSON.parse(out) as Record<string, unknown> & {
      changed: { mark: string; figures: unknown }[];
      total: { old: number; new: number };
    };
    expect(Object.keys(report)).toEqual(['added', 'dropped', 'renamed', 'changed', 'unchanged', 'shared', 'total']);
    expect([report['added'], report['dropped'], report['renamed'], report['unchanged']]).toEqual([
      ['B9'],
      [],
      [['A1', 'A7']],
      1,
    ]);
    expect(report.changed.map(({ mark, figures }) => [mark, figures])).toEqual([
      ['A2', [{ figure: 'span', from: 40, to: 42 }]],
    ]);
    expect(report.total.new).toBeGreaterThan(report.total.old);
  });

  test('--out writes the new takeoff with a Revision sheet; a takeoff workbook may stand for a list', () => {
    const out = join(folder, 'revised.xlsx');
    expect(archwright(['compare', SCHEDULE, REVISED, '--out', out]).code).toBe(0);
    expect(cellsOf(out)).toContain('renamed');
    const { out: said } = archwright(['compare', out, REVISED, '--json']);
    expect(JSON.parse(said)).toMatchObject({
      added: [],
      dropped: [],
      renamed: [],
      changed: [],
      unchanged: 4,
      shared: 0,
    });
    // Two states of one workbook are known by number.
    expect(archwright(['compare', out, out]).out).toMatch(/^Openings are known by their No\.\nUnchanged: 4\n/);
  });
});
