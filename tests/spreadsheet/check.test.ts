import { describe, expect, it } from 'vitest';
import { checkQuote, readQuote } from '../../src/check/quote';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff } from '../../src/takeoff/takeoff';
import { workbookSheets } from '../../src/workbook/workbook';
import { exampleCheck, sharedLines } from '../check/quote/example';
import { plant, rightLine, tableOf } from '../check/quote/planted';
import { random } from '../random';
import { randomOpenings, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { compare } from './compare';

describe('LibreOffice Calc, made to recalculate, agrees with the core on every cell of the plain Check sheet', () => {
  it('for the example quote', async () => {
    const { schedule, takeoff: taken, check } = await exampleCheck();
    const result = await compare(workbookSheets(schedule, taken, { plain: true, check }));
    expect(result.differences).toEqual([]);
    expect(result.cells).toBeGreaterThan(1300);
  });

  it('for several lines that are for one opening', async () => {
    const check = sharedLines();
    const { takeoff: taken } = check;
    const schedule = scheduleOf(taken.openings.map((row) => row.opening));
    const result = await compare(workbookSheets(schedule, taken, { plain: true, check }));
    expect(result.differences).toEqual([]);
  });

  it.each(['in', 'mm'] as const)('for 150 lines in %s, half of them with a mistake', async (unit) => {
    const from = random(72);
    const standards = defaultStandards(unit);
    const openings = randomOpenings(150, from, standards);
    const { taken } = planTakeoff(takeoff(openings, standards));
    const made = taken.openings.flatMap((row) => {
      if (row.own === null) return [];
      const line = rightLine(row, from);
      if (from.between(0, 1) < 0.5) plant(line, row, taken, from);
      return [line];
    });
    const check = checkQuote(valueOf(readQuote(tableOf(made, from, unit), standards)), taken);
    const result = await compare(workbookSheets(scheduleOf(openings), taken, { plain: true, check }));
    expect(result.differences).toEqual([]);
  });
});
