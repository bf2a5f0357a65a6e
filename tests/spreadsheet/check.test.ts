import { describe, expect, it } from 'vitest';
import { checkQuote, readQuote } from '../../src/check/quote';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { workbookSheets } from '../../src/workbook/workbook';
import { checkRows, exampleCheck, sharedLines } from '../check/quote/example';
import { plant, rightLine, tableOf } from '../check/quote/planted';
import { random } from '../random';
import { opening, randomOpenings, scheduleOf } from '../takeoff/openings';
import { quickPlan, quickSheets } from '../takeoff/quickPlan';
import { valueOf } from '../value';
import { compare } from './compare';

describe.concurrent(
  'LibreOffice Calc, made to recalculate, agrees with the core on every cell of the plain Check sheet',
  () => {
    it('for the example quote', async () => {
      const { schedule, takeoff: taken, boards, check } = await exampleCheck();
      const result = await compare(workbookSheets(schedule, taken, { plain: true, boards, check }));
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

    it('for subtotals of a quote’s parts, one of them wrong', async () => {
      const marks = ['W1', 'W2', 'W3'];
      const openings = marks.map((mark) => opening({ head: 'segmental', span: 36, rise: 6, mark }));
      const { taken } = quickPlan(takeoff(openings, defaultStandards()));
      const check = checkRows(
        [
          ['Mark', 'Description', 'Qty', 'Unit price', 'Amount'],
          ['W1', '', 1, 100, 100],
          ['W2', '', 2, 200, 400],
          ['', 'First floor total', '', '', 510],
          ['W3', '', 1, 50, 500],
          ['', 'Second floor total', '', '', 500],
          ['', 'Tax 7%', '', '', 70.7],
          ['', 'Total', '', '', 1080.7],
        ],
        taken,
      );
      const result = await compare(quickSheets(scheduleOf(openings), taken, { plain: true, check }));
      expect(result.differences).toEqual([]);
    });

    it.each(['in', 'mm'] as const)('for 70 lines in %s, half of them with a mistake', async (unit) => {
      const from = random(72);
      const standards = defaultStandards(unit);
      const openings = randomOpenings(70, from, standards);
      const { taken } = quickPlan(takeoff(openings, standards));
      const made = taken.openings.flatMap((row) => {
        if (row.own === null) return [];
        const line = rightLine(row, from);
        if (from.between(0, 1) < 0.5) plant(line, row, taken, from);
        return [line];
      });
      const check = checkQuote(valueOf(readQuote(tableOf(made, from, unit), standards)), taken);
      const result = await compare(quickSheets(scheduleOf(openings), taken, { plain: true, check }));
      expect(result.differences).toEqual([]);
    });
  },
);
