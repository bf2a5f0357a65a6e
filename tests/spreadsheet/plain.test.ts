import { readFileSync } from 'node:fs';
import { HEAD_SHAPES } from '../../src/head/head';
import { describe, expect, it } from 'vitest';
import type { Opening, Schedule } from '../../src/schedule/opening';
import { readSchedule } from '../../src/schedule/readSchedule';
import { readTables } from '../../src/schedule/readTables';
import { defaultStandards, SETTINGS, withSettings, type Setting, type Standards } from '../../src/standards';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import type { Sheet } from '../../src/workbook/sheet';
import { otherValue } from '../otherValue';
import { random } from '../random';
import { randomOpenings, scheduleOf } from '../takeoff/openings';
import { quickSheets } from '../takeoff/quickPlan';
import { valueOf } from '../value';
import { compare } from './compare';

function plainSheets(openings: readonly Opening[], standards: Standards, schedule?: Schedule): Sheet[] {
  return quickSheets(schedule ?? scheduleOf(openings), takeoff(openings, standards), { plain: true });
}

describe.concurrent(
  'LibreOffice Calc, made to recalculate, agrees with the core on every cell of the plain workbook',
  () => {
    it('for the example schedule', async () => {
      const bytes = readFileSync('examples/schedule.csv');
      const [table] = valueOf(await readTables('schedule.csv', bytes));
      const schedule = valueOf(readSchedule(table!, defaultStandards()));
      const result = await compare(plainSheets(schedule.openings, defaultStandards(), schedule));
      expect(result.differences).toEqual([]);
      expect(result.cells).toBeGreaterThan(1000);
    });

    it('for 100 random openings of every head', async () => {
      const result = await compare(plainSheets(randomOpenings(100, random(41)), defaultStandards()));
      expect(result.differences).toEqual([]);
      expect(result.cells).toBeGreaterThan(4_000);
    });

    it('for knives and guides on hand, and every setting that is 0 by itself: near radii that share guides, a minimum price, …', async () => {
      const atZero = (SETTINGS as readonly Setting[]).filter(({ value }) => value === 0);
      const switchedOn = Object.fromEntries(atZero.map((setting) => [setting.key, otherValue(setting)]));
      const knife = { profile: 'casing', face: 3.5, thickness: 0.75, insideRadius: null };
      const standards: Standards = {
        ...valueOf(withSettings(defaultStandards(), { ...switchedOn, guideTolerance: 3, pieceMinimum: 400 })),
        onHand: [
          { ...knife, kind: 'new knife', depth: 1.2, charge: 85.5 },
          { ...knife, kind: 'new knife', face: 4, passes: 3 },
          { ...knife, kind: 'knife', face: 2.5, depth: 0.3 },
          { ...knife, kind: 'guides', insideRadius: 20 },
          { ...knife, kind: 'guides', insideRadius: 40.1875 },
        ],
      };
      const openings = randomOpenings(80, random(19), standards);
      const taken = takeoff(openings, standards);
      expect(
        planSetups(taken).setups.filter(({ pieces }) => pieces.some(({ strays }) => strays > 0)).length,
      ).toBeGreaterThan(2);
      const result = await compare(plainSheets(openings, standards));
      expect(result.differences).toEqual([]);
    });

    it.each(['overlong', 'carrier'])('for pieces made in halves, and short ones run %s', async (shortPieces) => {
      const most = { largestAcross: 70, largestHigh: 30, largestTurn: 170 };
      const standards = valueOf(withSettings(defaultStandards(), { ...most, shortestPiece: 40, shortPieces }));
      const openings = randomOpenings(50, random(23), standards, HEAD_SHAPES);
      const rings = takeoff(openings, standards).openings.flatMap(({ own }) => own?.rings ?? []);
      expect(rings.filter(({ made }) => made.parts === 2).length).toBeGreaterThan(10);
      expect(rings.filter(({ made }) => made.overlong || made.carried).length).toBeGreaterThan(10);
      const result = await compare(plainSheets(openings, standards));
      expect(result.differences).toEqual([]);
    });

    it('for a metric workbook priced by margin, with spare pieces', async () => {
      const standards = valueOf(
        withSettings(defaultStandards('mm'), { pricing: 'margin', pricingRate: 0.32, sparePieces: 2, ends: 'legs' }),
      );
      const result = await compare(plainSheets(randomOpenings(60, random(7), standards), standards));
      expect(result.differences).toEqual([]);
    });
  },
);
