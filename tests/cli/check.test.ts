import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { archwright } from './archwright';
import { cellsOf, ownFolder, partsOf, put } from './folder';

const folder = ownFolder();
const file = (name: string, text: string) => put(folder, name, text);

const SCHEDULE = file(
  'job.csv',
  'Mark,Qty,Head,Width,Rise\nA1,2,segmental,36,6\nA2,1,half round,40,\nA3,1,round,30,\n',
);
const QUOTE = file(
  'quote.csv',
  'Item,Description,Qty,Length,Each,Ext.\nA1,Arch casing,1,36,95,95\n,Half round casing A2,1,74 7/16,150,150\n,Freight,,,,40\n,Total,,,,285\n',
);
const check = (...args: string[]) => archwright(['check', ...args]);

interface Report {
  lines: {
    row: number;
    mark: string;
    verdict: string;
    agreesIn: string[];
    stake: number;
    correctedExtension: number | null;
    openings: { mark: string }[];
    findings: { about: string; verdict: string; mistakes: string[] }[];
  }[];
  sums: { row: number; kind: string; verdict: string }[];
  notQuoted: { mark: string; price: number }[];
  causes: { cause: string; dollars: number | null }[];
  counts: Record<string, number>;
  quoted: number;
  total: number;
  correctedTotal: number | null;
  atStake: { off: number | null };
  atTop: string[];
  columnsSetAside: { column: number; heading: string; understood: boolean; done: string }[];
}

describe('archwright check', () => {
  test('prints a summary: every line that differs, quoted beside right, with the mistake that explains it', () => {
    const { code, out, err } = check(QUOTE, '--schedule', SCHEDULE);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Quote "quote\.csv" against our takeoff: 2 lines, 3 openings\./);
    expect(out).toContain(
      '- A1 (row 2): quantity 1 quoted, 2 right, one piece counted for a pair or quantity of one; length 36 quoted, ',
    );
    expect(out).toContain('chord, not arc or rounded to whole feet');
    expect(out).toMatch(/^- A3 is not quoted; our price is \$\d/m);
  });

  test('--json gives lines by money at stake, sums, what is not quoted and causes', () => {
    const { code, out } = check(QUOTE, '--schedule', SCHEDULE, '--json');
    expect(code).toBe(0);
    const report = JSON.parse(out) as Report;
    expect(report.lines.map(({ row }) => row).sort()).toEqual([2, 3]);
    const stakes = report.lines.map(({ stake }) => stake);
    expect(stakes).toEqual([...stakes].sort((one, other) => other - one));
    const first = report.lines.find(({ row }) => row === 2)!;
    expect(first.verdict).toBe('differs');
    expect(first.findings.find(({ about }) => about === 'length')!.mistakes).toEqual([
      'chord, not arc',
      'rounded to whole feet',
    ]);
    expect(report.lines.find(({ row }) => row === 3)!.openings.map(({ mark }) => mark)).toEqual(['A2']);
    expect(report.sums.map(({ kind, verdict }) => [kind, verdict])).toEqual([
      ['freight', 'agrees'],
      ['total', 'agrees'],
    ]);
    expect(report.notQuoted.map(({ mark }) => mark)).toEqual(['A3']);
    expect([report.quoted, report.total]).toEqual([245, 285]);
    // Two pieces at 95 for one.
    expect([first.correctedExtension, report.correctedTotal, report.atStake.off]).toEqual([190, 380, -95]);
    expect(report.atTop).toEqual([]);
  });

  test('names every column that is not understood, in the text and in --json, and calls none of its lines right', () => {
    const odd = file('odd.csv', 'Item,Qty,Zorp,Thickness,Each,Ext.\nA2,1,74 7/16,3/4,,\n');
    const { out } = check(odd, '--schedule', SCHEDULE);
    expect(out).toContain('Column "Zorp": not understood: its figures are compared with nothing.');
    const report = JSON.parse(check(odd, '--schedule', SCHEDULE, '--json').out) as Report;
    expect(report.columnsSetAside).toEqual([
      { column: 3, heading: 'Zorp', understood: false, done: expect.any(String) as string },
    ]);
    expect(report.lines).toMatchObject([{ verdict: "can't tell", notUnderstood: ['column "Zorp"'] }]);
    expect(report.lines[0]!.agreesIn).toEqual(expect.arrayContaining(['quantity', 'thickness']));
  });

  test('--out writes the takeoff with a Check sheet, --plain without formulas of ours', () => {
    const [full, plain] = [join(folder, 'full.xlsx'), join(folder, 'plain.xlsx')];
    expect(check(QUOTE, '--schedule', SCHEDULE, '--out', full)).toMatchObject({ code: 0 });
    expect(check(QUOTE, '--schedule', SCHEDULE, '--out', plain, '--plain')).toMatchObject({ code: 0 });
    expect(partsOf(full)['xl/workbook.xml']).toContain('name="Check"');
    expect(cellsOf(full)).toContain('_xldudf_ARCH_LENGTHCHECK(');
    expect(cellsOf(plain)).not.toContain('ARCH');
  });

  test('--standards sets the tolerance and the band', () => {
    const standards = file('shop.json', '{"tolerance": 10, "priceBand": 10}');
    const { out } = check(QUOTE, '--schedule', SCHEDULE, '--standards', standards, '--json');
    const report = JSON.parse(out) as Report;
    const line = report.lines.find(({ row }) => row === 2)!;
    expect(line.findings.find(({ about }) => about === 'length')!.verdict).toBe('agrees');
  });

  test('refuses a file without the headings of a quote in one sentence', () => {
    const { code, out, err } = check(
      file('letter.csv', 'Dear builder\nwe can do it for 900\n'),
      '--schedule',
      SCHEDULE,
    );
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(/^No headings were found in /);
  });

  test('files that are not there or can’t be used exit 1 with one sentence', () => {
    for (const args of [
      [join(folder, 'nowhere.csv'), '--schedule', SCHEDULE],
      [QUOTE, '--schedule', join(folder, 'nowhere.csv')],
      [file('empty.csv', ''), '--schedule', SCHEDULE],
      [QUOTE, '--schedule', SCHEDULE, '--standards', file('bad.json', '{"tolerance": -1}')],
      [QUOTE, '--schedule', SCHEDULE, '--out', join(folder, 'no', 'such.xlsx')],
    ]) {
      const { code, out, err } = check(...args);
      expect([args, code, out]).toEqual([args, 1, '']);
      expect(err.trim().split('\n')).toHaveLength(1);
    }
  });

  test('wrong usage exits 2: no quote, two quotes, no schedule, unknown options, an --out over an input', () => {
    const xlsx = file('quote.xlsx', 'x');
    for (const args of [
      [],
      [QUOTE],
      [QUOTE, QUOTE, '--schedule', SCHEDULE],
      [QUOTE, '--schedule'],
      [QUOTE, '--schedule', SCHEDULE, '--colour'],
      [QUOTE, '--schedule', SCHEDULE, '--out', 'x.csv'],
      [xlsx, '--schedule', SCHEDULE, '--out', xlsx],
      [QUOTE, '--schedule', xlsx, '--out', xlsx],
    ]) {
      expect([args, check(...args).code]).toEqual([args, 2]);
    }
  });
});
