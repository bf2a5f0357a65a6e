import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { chooseTable, readSchedule, readTables, type Choices, type Opening } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import type { Unit } from '../../src/unit';

/**
 * Each pair in `cases/`, NAME.csv and NAME.json, is a schedule and what must come of it. To add a case, add the pair.
 * An opening names every input that is not null; notes and problems are given in full.
 */
interface Expected {
  about: string;
  unit?: Unit;
  choices?: Choices;
  refused?: string;
  headingRow?: number | null;
  meaning?: (string | null)[];
  remarks?: string[];
  openings?: (Partial<Omit<Opening, 'problems' | 'source'>> & { row: number; problems?: Record<string, string> })[];
  passedOver?: Record<string, string>;
}

const folder = new URL('cases/', import.meta.url);
const names = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace('.json', ''));

const INPUTS = [
  'mark',
  'quantity',
  'head',
  'span',
  'rise',
  'reveal',
  'face',
  'thickness',
  'species',
  'ends',
  'leg',
  'profile',
] as const;

describe('a schedule is read as its case says', () => {
  it.each(names)('%s', async (name) => {
    const expected = JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8')) as Expected;
    const tables = await readTables(`${name}.csv`, readFileSync(new URL(`${name}.csv`, folder)));
    if (!tables.ok) throw new Error(tables.message);
    const table = chooseTable(tables.value)!;
    const read = readSchedule(table, defaultStandards(expected.unit), expected.choices);
    if (!read.ok) {
      expect(read.message).toBe(expected.refused);
      return;
    }
    expect(expected.refused).toBeUndefined();
    const { headingRow, meaning, remarks, openings, passedOver } = read.value;
    expect(headingRow).toBe(expected.headingRow ?? null);
    if (expected.meaning) expect(meaning).toEqual(expected.meaning);
    expect(remarks).toEqual(expected.remarks ?? []);
    expect(openings.map(({ row }) => row)).toEqual(expected.openings?.map(({ row }) => row));
    openings.forEach((opening, index) => {
      const wanted = expected.openings![index]!;
      for (const input of INPUTS) {
        const value = wanted[input] ?? (input === 'mark' ? '' : null);
        const where = `row ${opening.row}, ${input}`;
        if (typeof value === 'number') expect(opening[input], where).toBeCloseTo(value, 9);
        else expect(opening[input], where).toBe(value);
      }
      expect(opening.notes, `row ${opening.row}, notes`).toEqual(wanted.notes ?? []);
      const problems = Object.fromEntries(opening.problems.map(({ field, message }) => [field, message]));
      expect(problems, `row ${opening.row}, problems`).toEqual(wanted.problems ?? {});
    });
    expect(Object.fromEntries(passedOver.map(({ row, why }) => [row, why]))).toEqual(expected.passedOver ?? {});
  });

  it('every .csv in the folder has its .json', () => {
    const files = readdirSync(folder).filter((file) => file.endsWith('.csv'));
    expect(files.map((file) => file.replace('.csv', '')).sort()).toEqual([...names].sort());
  });
});
