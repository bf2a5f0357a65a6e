import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { archwright } from './archwright';
import { cellsOf, ownFolder, put } from './folder';

const folder = ownFolder();
const file = (name: string, text: string) => put(folder, name, text);

const SCHEDULE = file(
  'job.csv',
  'Mark,Qty,Head,Width,Rise,Casing\nA1,2,segmental,36,6,3-1/2\nA2,1,elliptical,48,12,3.5\nA3,1,segmental,oops,6,3.5\n',
);

interface Report {
  openings: Record<string, unknown>[];
  problems: { row: number; message: string }[];
  totals: Record<string, number>;
  costs: { name: string; money: number }[];
  setups: { name: string; insideRadius: number | null; guides: { inside: number; outside: number } | null }[];
  stock: { boards: number; plans: { boards: number; proven: boolean; plan: { count: number; stock: number }[] }[] };
}
const json = (...args: string[]) => JSON.parse(archwright(['takeoff', ...args, '--json']).out) as Report;

describe('archwright takeoff', () => {
  test('--segments says where other numbers of segments cost less, and writes them as wanted where they are taken', () => {
    const list = file(
      'segments.csv',
      'Mark,Qty,Head,Width,Rise,Casing\nW1,4,three-centered,62,25.25,2.25\nW3,1,quarter round,49,,3.5\n' +
        'W4,1,half round,80.5,,3.5\nW5,4,segmental,59,11.75,3.5\n',
    );
    const shown = archwright(['takeoff', list, '--segments', 'show', '--json']);
    const { segments } = JSON.parse(shown.out) as { segments: { changes: unknown[]; saved: number } };
    expect(segments.changes).toMatchObject([{ nos: [2], marks: ['W3'], from: 2, to: 4 }]);
    expect(segments.saved).toBeGreaterThan(0);
    const out = join(folder, 'segments.xlsx');
    expect(archwright(['takeoff', list, '--segments', 'take', '--out', out]).out).toContain(
      'W3: 4 segments a ring instead of 2',
    );
    // Filled again they stay, as what is typed by hand does.
    const again = archwright(['takeoff', list, '--segments', 'show', '--out', out]);
    expect(again.err).toContain('W3: kept segments wanted 4');
    expect(again.out).toContain('no other number costs less');
    expect(archwright(['takeoff', list, '--segments', 'all']).err).toContain(
      '--segments must be show or take; got "all".',
    );
  });

  test('prints a row for every opening, and what needs attention', () => {
    const { code, out, err } = archwright(['takeoff', SCHEDULE]);
    expect(code).toBe(0);
    for (const mark of ['A1', 'A2', 'A3']) expect(out).toMatch(new RegExp(`^ +\\d+ +${mark} `, 'm'));
    expect(out).toContain('Row 4 (A3)');
    expect(out).toContain('"oops"');
    expect(err).not.toContain('['); // no progress bar where nobody watches
  });

  test('names in the text every row that --json says is no opening', () => {
    const heads = 'Mark,Qty,Head,Width,Rise,Casing';
    const list = file(
      'rows.csv',
      [
        `Hill house,,,,,`,
        heads,
        ',ea,,in,in,in',
        'A,1,segmental,36,6,3.5',
        '',
        heads,
        'Total,2,,,,',
        'Notes:,,,,,',
      ].join('\n'),
    );
    const { passedOver } = json(list) as unknown as { passedOver: { row: number; why: string }[] };
    expect(passedOver.map(({ row }) => row)).toEqual([1, 2, 3, 5, 6, 7, 8]);
    const { out } = archwright(['takeoff', list]);
    for (const row of [1, 7, 8]) expect(out).toContain(`Row ${row} is not an opening (`);
    expect(out).toContain(
      'Also passed over: row 2 (headings); row 3 (units); row 6 (repeated headings); row 5 (blank).',
    );
  });

  test('prints what the prices pay for, each kind of cost with its share of all', () => {
    const { out } = archwright(['takeoff', SCHEDULE]);
    const printed = /What the prices pay for:\n((?: {2}.+\n)+)/.exec(out)?.[1] ?? '';
    const lines = [...printed.matchAll(/^ {2}(\S.*?) {2,}(-?\d+\.\d\d) +(-?\d+\.\d) %$/gm)];
    const { costs, totals } = json(SCHEDULE);
    expect(lines.map(([, name, money]) => [name, money])).toEqual(
      costs.filter(({ money }) => Math.abs(money) >= 0.005).map(({ name, money }) => [name, money.toFixed(2)]),
    );
    for (const [, , money, share] of lines) expect(Number(share)).toBeCloseTo((100 * Number(money)) / totals.price!, 0);
    expect(lines.reduce((sum, [, , , share]) => sum + Number(share), 0)).toBeCloseTo(100, 0);
  });

  test('--json gives every figure of the contract for an opening that is complete', () => {
    const { openings, problems, totals, costs } = json(SCHEDULE);
    expect(openings).toHaveLength(3);
    expect(costs.map(({ name }) => name)).toContain('Boards');
    expect(costs.reduce((sum, { money }) => sum + money, 0)).toBeCloseTo(totals.price!, 6);
    const [first] = openings;
    // R = 36²/8·6 + 6/2 = 30; θ = 4·atan(1/3); the outside edge lies 3/16 + 3-1/2 out.
    const angle = 4 * Math.atan(1 / 3);
    expect(first).toMatchObject({
      row: 2,
      mark: 'A1',
      quantity: 2,
      head: 'segmental',
      span: 36,
      rise: 6,
      radius: 30,
      needs: [],
    });
    expect(first!['angle']).toBeCloseTo((angle * 180) / Math.PI, 10);
    expect(first!['length']).toBeCloseTo(33.6875 * angle, 10);
    expect(first!['insideLength']).toBeCloseTo(30.1875 * angle, 10);
    const named =
      'no row mark place remarks sides material labor share unitPrice quantity head span rise reveal face thickness species ends radius insideRadius outsideRadius angle insideLength length segments blankWidth blankLength boardFeet cutsPerInch runMinutes price needs';
    for (const name of named.split(' ')) expect(first).toHaveProperty(name);
    for (const [name, value] of Object.entries(first!))
      if (name !== 'place' && name !== 'remarks') expect([name, value]).not.toEqual([name, null]);
    // Material, labor and its share make up the cost, which is sold at 35 percent more.
    const cost = ['material', 'labor', 'share'].reduce((sum, name) => sum + Number(first![name]), 0);
    expect(first!['unitPrice']).toBeCloseTo((cost / 2) * 1.35, 2);
    expect(problems.map(({ row }) => row)).toEqual([4]);
    expect(totals['price']).toBeCloseTo(
      openings.reduce((sum, { price }) => sum + Number(price ?? 0), 0),
      6,
    );
  });

  test('an opening that cannot be computed has null figures and says why', () => {
    const third = json(SCHEDULE).openings[2]!;
    expect(third).toMatchObject({ row: 4, mark: 'A3', span: null, length: null, price: null, blankWidth: null });
    expect(third['needs']).toEqual([expect.stringContaining('oops') as string]);
  });

  test('a head of several pieces lists them left to right, and they add up to its length', () => {
    const second = json(SCHEDULE).openings[1]!;
    const pieces = second['pieces'] as { radius: number; angle: number; length: number; segments: number }[];
    expect(pieces).toHaveLength(3);
    expect(pieces[0]).toEqual(pieces[2]);
    expect(pieces[0]!.radius).toBeLessThan(pieces[1]!.radius);
    expect(pieces.reduce((sum, { angle }) => sum + angle, 0)).toBeCloseTo(180, 6);
    expect(Math.abs(pieces.reduce((sum, { length }) => sum + length, 0) - Number(second['length']))).toBeLessThan(0.25);
  });

  test('--json lists the set-ups with their guides, and the boards to buy with their plans', () => {
    const { setups, stock } = json(SCHEDULE);
    const ring = setups.find(({ insideRadius }) => insideRadius === 30.1875)!;
    // Margin 1/4 and clearance 1/32 on each side of the ring from 30.1875 to 33.6875.
    expect(ring.guides).toEqual({ inside: 30.1875 - 0.25 - 1 / 32, outside: 33.6875 + 0.25 + 1 / 32 });
    expect(stock.boards).toBeGreaterThan(0);
    expect(stock.plans.reduce((sum, { boards }) => sum + boards, 0)).toBe(stock.boards);
    for (const { boards, plan } of stock.plans) expect(plan.reduce((sum, { count }) => sum + count, 0)).toBe(boards);
  });

  test('--out writes a workbook with stored ARCH formulas, --plain one without', () => {
    const [full, plain] = [join(folder, 'full.xlsx'), join(folder, 'plain.xlsx')];
    expect(archwright(['takeoff', SCHEDULE, '--out', full])).toMatchObject({ code: 0 });
    expect(archwright(['takeoff', SCHEDULE, '--out', plain, '--plain'])).toMatchObject({ code: 0 });
    expect(cellsOf(full)).toContain('_xldudf_ARCH_OPENING(');
    expect(cellsOf(plain)).not.toContain('ARCH');
  });

  test('--standards takes .json and a table alike, and an unknown or impossible setting is refused', () => {
    const asJson = file('shop.json', '{"reveal": 0.25}');
    const asTable = file('shop.csv', 'Setting,Value\nReveal,0.25\n');
    for (const path of [asJson, asTable])
      expect(json(SCHEDULE, '--standards', path).openings[0]).toMatchObject({ reveal: 0.25 });
    for (const text of ['{"revael": 1}', '{"reveal": -1}', '{"reveal": "a lot"}', '[1]', 'reveal: 1']) {
      const { code, err } = archwright(['takeoff', SCHEDULE, '--standards', file('bad.json', text)]);
      expect([text, code]).toEqual([text, 1]);
      expect(err.trim().split('\n')).toHaveLength(1);
    }
  });

  test('a file that is not there, or no schedule, exits 1 with one sentence', () => {
    for (const path of [join(folder, 'nowhere.csv'), folder, file('empty.csv', '')]) {
      const { code, out, err } = archwright(['takeoff', path]);
      expect([path, code, out]).toEqual([path, 1, '']);
      expect(err.trim().split('\n')).toHaveLength(1);
    }
  });

  test('wrong usage exits 2: no file, two files, unknown options, an --out that is no .xlsx or is the schedule', () => {
    const xlsx = file('schedule.xlsx', 'x');
    for (const args of [
      [],
      [SCHEDULE, SCHEDULE],
      [SCHEDULE, '--colour'],
      [SCHEDULE, '--out'],
      [SCHEDULE, '--out', 'x.csv'],
      [xlsx, '--out', xlsx],
    ]) {
      expect([args, archwright(['takeoff', ...args]).code]).toEqual([args, 2]);
    }
  });

  test('a workbook that cannot be written exits 1', () => {
    const { code, err } = archwright(['takeoff', SCHEDULE, '--out', join(folder, 'no', 'such.xlsx')]);
    expect(code).toBe(1);
    expect(err).toContain("can't be written: its folder does not exist.");
  });

  test('a column under an unknown heading is named, in the text and in --json', () => {
    const path = file('unknown.csv', 'Mark,Qty,Width,Rise,Zorp\nA,1,36,6,Cherry\n');
    expect(archwright(['takeoff', path]).out).toContain('Not read: column "Zorp" (the heading is none that is known)');
    expect(JSON.parse(archwright(['takeoff', path, '--json']).out).unusedColumns).toEqual(['Zorp']);
  });
});
