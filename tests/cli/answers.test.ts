import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { archwright } from './archwright';
import { ownFolder, put } from './folder';

const folder = ownFolder();
const file = (name: string, text: string) => put(folder, name, text);
const LINES = ['Mark,Qty,Head,Width,Rise,Remarks', 'A,1,segmental,914,152,both sides', 'B,1,segmental,1016,,'];
const LIST = file('list.csv', LINES.join('\n'));
const ANSWERS = '{"unit": "mm", "remarks": "as proposed", "rise@3": "8"}';
const given = ['--answers', file('answers.json', ANSWERS)];

interface Read {
  readonly openings: readonly {
    readonly span: number | null;
    readonly rise: number | null;
    readonly price: number | null;
  }[];
  readonly questions: readonly { readonly id: string }[];
  readonly remarks: readonly unknown[];
}
const read = (list: string, ...args: string[]): Read =>
  JSON.parse(archwright(['takeoff', list, ...args, '--json']).out) as Read;

describe('answers on the command line', () => {
  test('price what was asked about; without them nothing is', () => {
    const before = read(LIST);
    expect(before.questions.map(({ id }) => id)).toEqual(['remark:both sides', 'unit']);
    expect(before.openings.map(({ price }) => price)).toEqual([null, null]);
    const { questions, openings } = read(LIST, ...given);
    expect(questions).toEqual([]);
    // 914 and 1016 mm by 25.4 mm to the inch; the rise that was typed is in the workbook's unit.
    expect(openings.map(({ span, rise }) => [span, rise])).toEqual([
      [914 / 25.4, 152 / 25.4],
      [40, 8],
    ]);
    expect(openings.every(({ price }) => price !== null && price > 0)).toBe(true);
  });

  test('are kept with the workbook that is filled, and used when it is filled again from the same list', () => {
    const out = join(folder, 'kept.xlsx');
    const first = read(LIST, ...given, '--out', out);
    expect(read(LIST, '--out', out).openings).toEqual(first.openings);
    // What is answered now stands above what was answered before.
    const now = file('now.json', '{"rise@3": "9"}');
    expect(read(LIST, '--answers', now, '--out', out).openings[1]!.rise).toBe(9);
    expect(read(LIST, '--out', out).openings[1]!.rise).toBe(9);
  });

  test('for a row are used as long as it says the same, for a list as long as its name and headings do', () => {
    const out = join(folder, 'moved.xlsx');
    read(LIST, ...given, '--out', out);
    file('list.csv', [LINES[0], LINES[1], 'C,1,segmental,1200,,'].join('\n'));
    expect(read(LIST, '--out', out).questions.map(({ id }) => id)).toEqual(['rise@3']);
    const other = file('other.csv', LINES.join('\n'));
    expect(read(other, '--out', out).questions.map(({ id }) => id)).toEqual(['remark:both sides', 'unit']);
    file('list.csv', LINES.join('\n'));
  });

  test('that --unit and --unnamed give are kept, too', () => {
    const list = file('bare.csv', 'Mark,Qty,Head,Width,Rise\nA,1,segmental,914,152\nB,1,,762,\n');
    const out = join(folder, 'bare.xlsx');
    expect(read(list, '--unit', 'mm', '--unnamed', 'leave', '--out', out).openings).toHaveLength(1);
    const { questions, openings } = read(list, '--out', out);
    expect([questions, openings.map(({ span }) => span)]).toEqual([[], [914 / 25.4]]);
  });

  test.each([
    ['is not JSON', '{"unit": '],
    ['must hold an object such as {"unit": "mm"}', '["mm"]'],
    ['the answer to "unit" must be text or a number', '{"unit": {"in": 1}}'],
  ])('are refused where the file %s', (why, text) => {
    const { code, err } = archwright(['takeoff', LIST, '--answers', file('odd.json', text)]);
    expect([code, err]).toEqual([1, expect.stringContaining(why)]);
  });

  test('that answer nothing, or can’t be taken, are said', () => {
    const odd = file('unused.json', '{"unit": "furlongs", "mark:z9": "keep both"}');
    const { remarks, questions } = read(LIST, '--answers', odd);
    expect(remarks.length).toBeGreaterThan(0);
    expect(questions.map(({ id }) => id)).toContain('unit');
    const { out } = archwright(['takeoff', LIST, '--answers', odd]);
    expect(out).toContain('The answer "furlongs" to "unit" is not one of in, ft, mm or cm.');
    expect(out).toContain('The answer to "mark:z9" was not used: there is no such question.');
  });
});
