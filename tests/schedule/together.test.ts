import { describe, expect, it } from 'vitest';
import type { CellValue, Opening } from '../../src/schedule/opening';
import { readSchedule } from '../../src/schedule/readSchedule';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { valueOf } from '../value';

const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Leg', 'Ends', 'Remarks'];

function read(
  remarks: string,
  answer: string | null,
  row: readonly CellValue[] = [3, 'half round', 36, null, 60, 'legs'],
) {
  const rows = [HEADINGS, ['W1', ...row, remarks]];
  const answers = answer === null ? {} : { [`remark:${remarks}`]: answer };
  return valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards(), {}, { answers }));
}
const shown = ({ mark, quantity, head, span, leg, otherLeg }: Opening) => [mark, quantity, head, span, leg, otherLeg];

describe('units that a remark puts side by side', () => {
  it('are asked about, with the count that it gives or with two and three, and are not priced until it is answered', () => {
    const asked = (remarks: string) => read(remarks, null).questions.map(({ choices }) => choices);
    expect(asked('mulled pair')).toEqual([
      [
        'priced as listed',
        'one head over 2 units of the width listed',
        '2 heads of the width listed, with a mull casing',
        'leave out',
      ],
    ]);
    expect(asked('mulled')[0]).toHaveLength(6);
    expect(asked('4 wide mulled')[0]![1]).toBe('one head over 4 units of the width listed');
    expect(read('mulled pair', null).openings.map(({ quantity }) => quantity)).toEqual([null]);
  });

  it('under one head make it as wide as all of them, with what stands between', () => {
    const { openings } = read('mulled pair', 'one head over 2 units of the width listed');
    expect(openings.map(shown)).toEqual([['W1', 3, 'half round', 2 * 36 + 1, 60, null]]);
    expect(openings[0]!.rise).toBe(36.5);
  });

  it('with a head each have a mull casing between, and legs at the outer sides alone', () => {
    const pair = read('mulled pair', '2 heads of the width listed, with a mull casing').openings;
    expect(pair.map(shown)).toEqual([
      ['W1', 6, 'half round', 36, 60, 0],
      ['W1 mull', 3, 'straight', 60, null, null],
    ]);
    const three = read('3 wide mulled', '3 heads of the width listed, with a mull casing').openings;
    expect(three.map(shown)).toEqual([
      ['W1', 6, 'half round', 36, 60, 0],
      ['W1 middle', 3, 'half round', 36, 0, null],
      ['W1 mull', 6, 'straight', 60, null, null],
    ]);
    // 3 rows of 3 units: 6 outer legs, 6 mull casings, 9 heads.
    const taken = takeoff(three, defaultStandards());
    expect(taken.openings.flatMap(({ needs }) => needs)).toEqual([]);
    const straights = taken.openings.map(({ own, inputs }) => inputs!.quantity * (own!.straight?.count ?? 0));
    expect(straights).toEqual([6, 0, 6]);
  });

  it('without a leg ask how long the mull casing is', () => {
    const { openings } = read('mulled pair', '2 heads of the width listed, with a mull casing', [
      ...[1, 'half round', 36, null, null, null],
    ]);
    expect(openings.map(shown)).toEqual([
      ['W1', 2, 'half round', 36, null, null],
      ['W1 mull', 1, 'straight', null, null, null],
    ]);
    expect(openings[1]!.problems.map(({ message }) => message)).toEqual([
      'The length of the mull casing follows from the leg; please give it.',
    ]);
  });

  it('have a price of their own for each answer', () => {
    const price = (answer: string) => takeoff(read('mulled pair', answer).openings, defaultStandards()).totals.price;
    const [asListed, one, each] = [
      'priced as listed',
      'one head over 2 units of the width listed',
      '2 heads of the width listed, with a mull casing',
    ].map(price);
    expect(new Set([asListed, one, each]).size).toBe(3);
  });
});

describe('what is answered for a row that was made from a list row', () => {
  const rows = [HEADINGS, ['W1', 3, 'half round', 36, null, null, null, 'mulled pair']];
  const each = { 'remark:mulled pair': '2 heads of the width listed, with a mull casing' };
  const answered = (answers: Readonly<Record<string, string>>, list: readonly (readonly CellValue[])[] = rows) =>
    valueOf(
      readSchedule(
        { name: 'list', firstRow: 1, rows: list },
        defaultStandards(),
        {},
        { answers: { ...each, ...answers } },
      ),
    );

  it('goes to that row alone, which is named by a place of its own', () => {
    const { openings, questions } = answered({});
    expect(openings.map(({ row, at }) => [row, at])).toEqual([
      [2, undefined],
      [2, '2.2'],
    ]);
    expect(questions.map(({ id }) => id)).toEqual(['span@2.2']);
    const given = answered({ 'span@2.2': '5 ft', 'quantity@2.2': '4' });
    expect(given.openings.map(shown)).toEqual([
      ['W1', 6, 'half round', 36, null, null],
      ['W1 mull', 4, 'straight', 60, null, null],
    ]);
    expect([given.questions, given.remarks]).toEqual([[], []]);
  });

  it('to the heads as they are shown is their number, and to the row that of its units', () => {
    const counts = (answers: Readonly<Record<string, string>>) =>
      answered(answers).openings.map(({ quantity, countedAt }) => [quantity, countedAt]);
    expect(counts({})).toEqual([
      [6, '2.1'],
      [3, undefined],
    ]);
    expect(counts({ 'quantity@2.1': '4' })).toEqual([
      [4, '2.1'],
      [3, undefined],
    ]);
    expect(counts({ 'quantity@2': '4' })).toEqual([
      [8, '2.1'],
      [4, undefined],
    ]);
  });

  it('is refused where it stands, and leaves the opening as it was', () => {
    const { openings, questions } = answered({ 'span@2.2': 'long' });
    expect(questions.map(({ id, text }) => [id, text.slice(0, 27)])).toEqual([
      ['span@2.2', 'Span was answered by "long"'],
    ]);
    expect(openings[0]!.problems).toEqual([]);
  });

  it('is asked again by the name it was answered by', () => {
    const firstFor = (answers: Readonly<Record<string, string>>) => answered(answers).questions[0]!.id;
    expect(firstFor({ 'quantity@2.1': 'many' })).toBe('quantity@2.1');
    expect(firstFor({ 'quantity@2': 'many' })).toBe('quantity@2');
  });

  it('is asked once with the opening, where both lack the same', () => {
    const wide = [...HEADINGS, 'Casing'];
    const list = [wide, ['W1', 3, 'half round', 36, null, 60, 'legs', 'mulled pair', 90]];
    const { questions, openings } = answered({}, list);
    expect(questions.map(({ id, rows: asked }) => [id, asked])).toEqual([['face@2', [2]]]);
    expect(openings.map(({ face }) => face)).toEqual([null, null]);
    expect(answered({ 'face@2': '4' }, list).openings.map(({ face }) => face)).toEqual([4, 4]);
    expect(answered({ 'face@2': '4', 'face@2.2': '5' }, list).openings.map(({ face }) => face)).toEqual([4, 5]);
  });

  it('holds for straight molding of a column, too', () => {
    const list = [
      [...HEADINGS, 'Straight footage'],
      ['W1', 3, 'half round', 36, null, 60, 'legs', null, '24 ft'],
    ];
    const straight = (answers: Readonly<Record<string, string>>) =>
      valueOf(readSchedule({ name: 'list', firstRow: 1, rows: list }, defaultStandards(), {}, { answers })).openings;
    const [, before] = straight({});
    expect(straight({ [`quantity@${before!.at}`]: '9' }).map(({ quantity }) => quantity)).toEqual([3, 9]);
  });
});

describe('what stands in the wall, or curves in plan', () => {
  it.each([
    ['with jamb extensions', 'priced as listed, the casing alone'],
    ['6-9/16 jamb', 'priced as listed, the casing alone'],
    ['brick mould', 'priced as listed, the casing alone'],
    ['brickmold by others', 'priced as listed, the casing alone'],
    ['window sill', 'priced as listed, the casing alone'],
    ['curved in plan', 'leave out'],
    ['on radius wall', 'leave out'],
    ['bay window', 'leave out'],
  ])('is recognized in remarks and said: %s', (remarks, proposed) => {
    const { questions, openings } = read(remarks, null);
    expect(questions.map(({ choices }) => choices[0])).toEqual([proposed]);
    expect(questions[0]!.text).toContain('not run here');
    expect(openings[0]!.quantity).toBeNull();
  });

  it.each(['legs to sill', 'sill height 30', 'spring line at sill height'])('is not read into %s', (remarks) => {
    expect(read(remarks, null).questions.filter(({ text }) => text.includes('not run here'))).toEqual([]);
  });
});
