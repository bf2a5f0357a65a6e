import { describe, expect, it } from 'vitest';
import { BLANK_JOB, type Job } from '../../src/job/fields';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff } from '../../src/takeoff/takeoff';
import { workbookSheets } from '../../src/workbook/workbook';
import { random } from '../random';
import { opening, randomOpenings, scheduleOf } from '../takeoff/openings';
import { compare } from './compare';

const JOB: Job = {
  ...BLANK_JOB,
  ...{ finishRate: 1.25, discount: 0.05, minimum: 50_000, deliveryCharge: 40, taxRate: 0.0625, alternates: ['W7'] },
  extras: [{ words: 'Blocks', quantity: 3.5, unitPrice: 4.55 }],
};
const LEGS = [
  opening({ mark: 'L1', head: 'half round', span: 36, ends: 'legs', leg: 60, otherLeg: 48, quantity: 2, sides: 2 }),
  // Legs that nothing stands on are neither finished nor charged.
  opening({ mark: 'L2', head: 'round', span: 36, leg: 60 }),
  opening({ mark: 'L3', head: 'quarter round', span: 24, leg: 50, otherLeg: 40 }),
  opening({ mark: 'L4', head: 'segmental', span: 40, rise: 8, priceAgreed: 321.5 }),
];

describe.concurrent(
  'LibreOffice Calc, made to recalculate, agrees with the core on every amount of the Proposal beside its takeoff',
  () => {
    it.each<['in' | 'mm', Partial<Job>]>([
      ['in', { setups: 'on a line of their own', taxOn: 'everything but delivery' }],
      ['mm', { linesBy: 'head' }],
    ])('for 20 openings in %s: %j', async (unit, rules) => {
      const standards = defaultStandards(unit);
      const openings = [
        ...randomOpenings(16, random(20), standards),
        ...(unit === 'in'
          ? LEGS
          : LEGS.map((one) => ({ ...one, span: one.span! * 25.4, rise: one.rise && one.rise * 25.4 }))),
      ];
      const { taken, boards } = planTakeoff(takeoff(openings, standards));
      const job = { ...JOB, ...rules };
      const sheets = workbookSheets(scheduleOf(openings), taken, { plain: true, boards, job, proposal: true });
      const formulas = sheets
        .find(({ name }) => name === 'Proposal')!
        .rows.flat()
        .filter((cell) => cell?.formula);
      expect(formulas.length).toBeGreaterThan(100);
      const { differences } = await compare(sheets);
      expect(differences.filter((said) => said.startsWith('Proposal!'))).toEqual([]);
    });
  },
);
