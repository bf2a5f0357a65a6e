import { describe, expect, it } from 'vitest';
import { readSchedule, type CellValue } from '../../src/schedule';
import { readCsv } from '../../src/schedule/csv';
import type { Answers, Reading } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { valueOf } from '../value';

const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise'];

function read(rows: readonly (readonly CellValue[])[], answers: Answers = {}, headings = HEADINGS): Reading {
  const all = [headings, ...rows.map((row, index) => [`W${index + 1}`, 1, 'segmental', ...row])];
  return valueOf(readSchedule({ name: 'list', firstRow: 1, rows: all }, defaultStandards(), {}, { answers }));
}
const ids = ({ questions }: Reading) => questions.map(({ id, rows }) => [id, rows]);
const lengths = ({ openings }: Reading) => openings.map(({ span, rise }) => [span, rise]);

const ABOUT = [
  ['~36', 6],
  ['approx. 40', 6],
  ['48 nom.', '8 nom.'],
  ['60 nominal', 10],
  [30, 5],
];

describe('figures of many rows in one manner', () => {
  it('are one question of the list for each manner, which quotes them', () => {
    const reading = read(ABOUT);
    expect(ids(reading)).toEqual([
      ['figures:about', [2, 3]],
      ['figures:nominal', [4, 5]],
    ]);
    expect(reading.questions[1]!.text).toBe(
      'Figures are written "48 nom.", "8 nom." and "60 nominal"; are they taken as the figures say?',
    );
    expect(lengths(reading)).toEqual([
      [null, 6],
      [null, 6],
      [null, null],
      [null, 10],
      [30, 5],
    ]);
  });

  it('are settled by one answer, and the row says so', () => {
    const reading = read(ABOUT, { 'figures:about': 'as the figures say', 'figures:nominal': 'as the figures say' });
    expect(reading.questions).toEqual([]);
    expect(lengths(reading)).toEqual([
      [36, 6],
      [40, 6],
      [48, 8],
      [60, 10],
      [30, 5],
    ]);
    expect(reading.openings[0]!.notes).toContain('"~36" is taken as 36.');
  });

  it('are asked about one by one where somebody wants that', () => {
    const reading = read(ABOUT, { 'figures:about': 'as the figures say', 'figures:nominal': 'ask each' });
    expect(ids(reading)).toEqual([
      ['span@4', [4]],
      ['rise@4', [4]],
      ['span@5', [5]],
    ]);
  });

  it('can be answered for one row, and a figure typed for a row takes it out', () => {
    expect(ids(read(ABOUT, { 'figures:about@2': 'as the figures say' }))[0]).toEqual(['figures:about', [3]]);
    const typed = read(ABOUT, { 'span@2': '35' });
    expect(ids(typed)[0]).toEqual(['figures:about', [3]]);
    expect(typed.openings[0]!.span).toBe(35);
  });

  it('with a mark between their digits are thousands or decimals for all rows', () => {
    const rows = [
      ['1.200 mm', '150 mm'],
      ['1.350 mm', '150 mm'],
    ];
    expect(ids(read(rows))).toEqual([['figures:point', [2, 3]]]);
    const thousands = read(rows, { 'figures:point': 'it parts thousands' });
    expect(thousands.openings.map(({ span }) => span?.toFixed(3))).toEqual(['47.244', '53.150']);
    // A width of 1.2 mm is none.
    const decimals = read(rows, { 'figures:point': 'a decimal mark' });
    expect(decimals.openings.map(({ span }) => span?.toFixed(3))).toEqual(['0.047', '0.053']);
  });

  it('beside words are one question for a column of casings', () => {
    const reading = read(
      [
        [36, 6, '4 1/4 poplar'],
        [40, 6, '3 1/2 poplar'],
      ],
      {},
      [...HEADINGS, 'Trim'],
    );
    expect(ids(reading)).toEqual([
      ['remark:poplar', [2, 3]],
      ['figures:with words', [2, 3]],
    ]);
  });

  it('ask nothing where the figure is not needed', () => {
    expect(read([[36, 6, '80 nom.']], {}, [...HEADINGS, 'Height']).questions).toEqual([]);
  });
});

describe('decimal commas between semicolons', () => {
  const ofText = (...lines: string[]) => {
    const table = valueOf(readCsv('list.csv', new TextEncoder().encode(lines.join('\n'))));
    return valueOf(readSchedule(table, defaultStandards()));
  };

  it.each([
    ['in inches', 'Width;Rise', '36,5;6,25', [36.5, 6.25]],
    ['one alone', 'Width;Rise', '36,5;6', [36.5, 6]],
    ['in centimeters', 'Width (cm);Rise (cm)', '91,44;15,24', [36, 6]],
    ['in millimeters', 'Width (mm);Rise (mm)', '914,4;152,4', [36, 6]],
    ['with their unit', 'Width;Rise', '91,44 cm;15,24 cm', [36, 6]],
  ])('%s are read', (_, headings, figures, [span, rise]) => {
    const { openings, questions } = ofText(`Mark;Qty;Head;${headings}`, `W1;2;segmental;${figures}`);
    expect(questions).toEqual([]);
    expect(openings[0]!.span).toBeCloseTo(span!, 9);
    expect(openings[0]!.rise).toBeCloseTo(rise!, 9);
  });

  it('that may part thousands are asked about', () => {
    const { questions } = ofText('Mark;Qty;Head;Width (mm);Rise (mm)', 'W1;2;segmental;1,219;152,4');
    expect(questions.map(({ id, choices }) => [id, choices[0]])).toEqual([['figures:point', 'it parts thousands']]);
  });
});
