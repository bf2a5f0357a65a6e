import { describe, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { boardsToBuy } from '../../src/takeoff/boardsToBuy';
import { costKinds } from '../../src/takeoff/costKinds';
import { factorsOf } from '../../src/takeoff/factors';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff, withFactors } from '../../src/takeoff/takeoff';
import { expectNear } from '../value';
import { opening } from './openings';

describe('the kinds of cost of a job', () => {
  const standards = { ...defaultStandards(), sparePieces: 1 };
  const taken = takeoff(
    [
      opening({ row: 2, mark: 'A', head: 'half round', span: 36, quantity: 2, ends: 'legs', leg: 60 }),
      opening({ row: 3, mark: 'B', head: 'straight', span: 40 }),
      opening({ row: 4, mark: 'C', head: 'segmental', span: null }),
    ],
    standards,
  );
  const boards = planBoards(partsOf(taken), standards);
  const planned = withFactors(taken, factorsOf(taken, boards));
  const kinds = costKinds(planned);
  const money = (name: string) => kinds.find((kind) => kind.name === name)!.money;

  it('add up to what the openings sell for', () => {
    expectNear(
      kinds.reduce((sum, kind) => sum + kind.money, 0),
      planned.totals.price,
      1e-12,
    );
    const cost = planned.openings.reduce((sum, row) => sum + (row.cost?.cost ?? 0), 0);
    expectNear(money('Above cost'), planned.totals.price - cost, 1e-9);
  });

  it('are each what the job pays for it: the boards bought, one knife, one guide set, two set-ups', () => {
    expectNear(
      money('Boards'),
      boardsToBuy(boards, standards).reduce((sum, { cost }) => sum + cost, 0),
      1e-12,
    );
    expectNear(money('New knives'), standards.knifeGrinding, 1e-12);
    expectNear(money('Guides made'), (45 / 60) * 54 + 14, 1e-12);
    // One knife of 15 minutes; guides for the arch, fences for what is straight, of 25 each.
    expectNear(money('Changing knives and guides'), ((15 + 2 * 25) / 60) * 68, 1e-12);
    // Two arches, four legs and a straight head: two minutes each.
    expectNear(money('Packing pieces'), ((7 * 2) / 60) * 54, 1e-12);
  });
});
