import { expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { faultsOfWood } from '../boards/wholeWood';
import { exampleSchedule, plannedExample } from '../workbench/example';

it('the boards of the example schedule are proven to be the cheapest, and hold every piece', async () => {
  const standards = defaultStandards();
  const { plans } = plannedExample(await exampleSchedule(standards), standards).boards;
  expect(plans.map(({ species, cost, proven }) => ({ species, cost, proven }))).toEqual([
    { species: 'Poplar', cost: 393.63, proven: true },
    { species: 'Red oak', cost: 184.79, proven: true },
  ]);
  for (const plan of plans) expect(faultsOfWood(plan, standards)).toEqual([]);
}, 60_000);
