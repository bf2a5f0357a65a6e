import { describe, expect, it } from 'vitest';
import type { OnHand } from '../../src/onHand';
import { defaultStandards, withSettings, type SettingKey, type Standards } from '../../src/standards';
import { planSetups } from '../../src/takeoff/setups';
import { sharesOf } from '../../src/takeoff/shares';
import { sharersOf, takeoff } from '../../src/takeoff/takeoff';
import { expectNear, valueOf } from '../value';
import { opening } from './openings';

/**
 * What several openings need together, worked out by hand from the settings: minutes, money and names stand here as numbers. Rates are odd, so that
 * one taken for the other shows: machine 60, bench 36 an hour.
 */
const RATES = { shopRate: 60, benchRate: 36, knifeChange: 10, guideChange: 20, guideMinutes: 50, guideMaterial: 7 };

function shop(changes: Partial<Record<SettingKey, unknown>> = {}, onHand: readonly OnHand[] = []): Standards {
  const settings = { ...RATES, knifeGrinding: 100, sparePieces: 0, ...changes };
  return { ...valueOf(withSettings(defaultStandards(), settings)), onHand };
}

const A = opening({ row: 2, mark: 'A', head: 'half round', span: 48, quantity: 3 });
const B = opening({ row: 3, mark: 'B', head: 'half round', span: 36, quantity: 1 });
const C = opening({ row: 4, mark: 'C', head: 'half round', span: 48, face: 2.25, quantity: 2 });
const STRAIGHT = opening({ row: 5, mark: 'D', head: 'straight', span: 40 });
const JOB = [A, B, C, STRAIGHT].map((each, at) => ({ ...each, no: at + 1 }));

const KNIFE: OnHand = { kind: 'knife', profile: 'Casing', face: 3.5, thickness: 0.75, insideRadius: null };
/** Guides of A: half the span and the reveal of 3/16. */
const GUIDES: OnHand = { ...KNIFE, kind: 'guides', insideRadius: 24.1875 };

function sum(standards: Standards, of: 'knives' | 'guides' | 'settingUp' | 'spares', job = JOB): number {
  return takeoff(job, standards).openings.reduce((total, { share }) => total + share![of], 0);
}

describe('the minutes of setting up', () => {
  // Knives: 3-1/2 and 2-1/4 wide. Guides or fences: R 24.188 and R 18.188 of the one, R 24.188 of the other, straight.
  const MONEY = 2 * 10 + 4 * 20;

  it('are one change for each knife and one for each guide set, at the rate of the machine, whatever the order of the rows', () => {
    const orders = [JOB, [...JOB].reverse(), [JOB[2]!, JOB[0]!, JOB[3]!, JOB[1]!]];
    for (const job of orders) {
      expectNear(sum(shop(), 'settingUp', job), MONEY, 1e-12);
      expect(planSetups(takeoff(job, shop())).setupMinutes).toBe(MONEY);
    }
    const shares = orders.map((job) => {
      const { openings } = takeoff(job, shop());
      return openings.map(({ opening: { mark }, share }) => [mark, share!.money]).sort();
    });
    expect(shares[1]).toEqual(shares[0]);
    expect(shares[2]).toEqual(shares[0]);
  });

  it('split: knife changes cost what knives cost, guide changes what guide sets cost', () => {
    expectNear(sum(shop({ knifeChange: 16 }), 'settingUp') - MONEY, 2 * 6, 1e-9);
    expectNear(sum(shop({ guideChange: 29 }), 'settingUp') - MONEY, 4 * 9, 1e-9);
    // The bench has no part in it.
    expectNear(sum(shop({ benchRate: 99 }), 'settingUp'), MONEY, 1e-12);
  });

  it('of one set-up go by its pieces, of which a head may have several', () => {
    // Both have corners or a crown of radius 12; the one has two of them, and a straight piece of its own between.
    const corners = opening({ no: 1, row: 2, head: 'radius corners', span: 48, rise: 12 });
    const round = opening({ no: 2, row: 3, head: 'half round', span: 24 });
    const settingUp = (job: readonly (typeof corners)[]) =>
      takeoff(job, shop()).openings.map(({ share }) => share!.settingUp);
    const [two, one] = settingUp([corners, round]);
    expectNear(two!, 5 + (2 / 3) * 20 + 20, 1e-12);
    expectNear(one!, 5 + (1 / 3) * 20, 1e-12);
    // Two legs and a straight head run between the same fences.
    const legs = opening({ no: 1, row: 2, head: 'half round', span: 36, ends: 'legs', leg: 40 });
    const [pair, single] = settingUp([legs, { ...STRAIGHT, no: 2 }]);
    expectNear(pair!, 5 + 20 + (2 / 3) * 20, 1e-12);
    expectNear(single!, 5 + (1 / 3) * 20, 1e-12);
  });

  it('come by ascending number, whatever the order of the rows', () => {
    const sharers = sharersOf(takeoff(JOB, shop()).openings);
    const orders = [sharers, [...sharers].reverse(), [sharers[2]!, sharers[0]!, sharers[3]!, sharers[1]!]];
    for (const order of orders) expect(sharesOf(order, shop()).map(({ no }) => no)).toEqual([1, 2, 3, 4]);
  });

  it('are borne by heads for the knife, by pieces for the guides', () => {
    const [first, second] = takeoff(JOB, shop()).openings;
    // The knife of A, B and D cuts 3 + 1 + 1 heads; A and B each have guides of their own.
    expectNear(first!.share!.settingUp, (3 / 5) * 10 + 20, 1e-12);
    expectNear(second!.share!.settingUp, (1 / 5) * 10 + 20, 1e-12);
  });
});

describe('knives and guides on hand', () => {
  it('are not charged, in any letter case; changing them is', () => {
    const owned = shop({}, [{ ...KNIFE, profile: 'CASING' }, GUIDES]);
    // Of two knives the other is ground; of three guide sets two are made, in 50 minutes of the bench with 7 of material each.
    expectNear(sum(shop(), 'knives'), 200, 1e-12);
    expectNear(sum(owned, 'knives'), 100, 1e-12);
    expectNear(sum(shop(), 'guides'), 3 * (30 + 7), 1e-12);
    expectNear(sum(owned, 'guides'), 2 * (30 + 7), 1e-12);
    expectNear(sum(owned, 'settingUp'), sum(shop(), 'settingUp'), 1e-12);
  });

  it('of another width, thickness or radius are others', () => {
    for (const other of [
      { ...KNIFE, face: 3.25 },
      { ...KNIFE, thickness: 1 },
      { ...KNIFE, profile: 'Crown' },
    ])
      expectNear(sum(shop({}, [other]), 'knives'), 200, 1e-12);
    expectNear(sum(shop({}, [{ ...GUIDES, insideRadius: 24.25 }]), 'guides'), 3 * 37, 1e-12);
  });

  it('are preferred: within the tolerance rings run on guides of the shop rather than on new ones', () => {
    const standards = (onHand: OnHand[]) => shop({ guideTolerance: 1, bedLine: 5 }, onHand);
    const rings = [24, 24.5].map((radius, at) => ({
      ...opening({ row: at + 2, mark: `E${at}`, head: 'half round', span: 2 * radius - 0.375 }),
      no: at + 1,
    }));
    expectNear(sum(standards([]), 'guides', rings), 37, 1e-12);
    expectNear(sum(standards([{ ...GUIDES, insideRadius: 24.2 }]), 'guides', rings), 0, 1e-12);
    const [setup] = planSetups(takeoff(rings, standards([{ ...GUIDES, insideRadius: 24.2 }]))).setups;
    expect(setup!.insideRadius).toBe(24.2);
  });

  it('a new knife names its charge, one for all openings it cuts', () => {
    const named = shop({}, [{ ...KNIFE, kind: 'new knife', charge: 64 }]);
    expectNear(sum(named, 'knives'), 64 + 100, 1e-12);
    const [first] = takeoff(JOB, named).openings;
    expectNear(first!.share!.knives, (3 / 5) * 64, 1e-12);
  });
});

describe('running and the bench', () => {
  const CASING = { head: 'straight', span: 96, face: 3.5, ends: 'square' } as const;

  it('straight stock runs at its own feed, curved work at its own', () => {
    const minutes = (changes: Partial<Record<SettingKey, unknown>>) => {
      const { openings } = takeoff(
        [opening({ row: 2, mark: 'S', ...CASING }), opening({ row: 3, mark: 'R', head: 'half round', span: 48 })],
        shop({ handling: 0, endAllowance: 0, reveal: 0, ...changes }),
      );
      return openings.map(({ cost }) => cost!.minutes.running);
    };
    const [straight, curved] = minutes({ feed: 10, straightFeed: 20 });
    // 96 in at 20 ft/min is 0.4 minutes a pass; the half circle at the molding's center, π·(24 + 1.75), at 10 ft/min.
    const passes = takeoff([opening({ row: 2, mark: 'S', ...CASING })], shop({ reveal: 0 })).openings[0]!.own!.passes;
    expectNear(straight!, passes * 0.4, 1e-12);
    expectNear(curved!, (passes * Math.PI * 25.75) / 120, 1e-12);
    expect(minutes({ feed: 5, straightFeed: 20 })).toEqual([straight, 2 * curved!]);
    expect(minutes({ feed: 10, straightFeed: 40 })).toEqual([straight! / 2, curved]);
  });

  it('machine and bench have rates of their own: only running is at the machine', () => {
    const labor = (shopRate: number, benchRate: number) => {
      // The number of segments is fixed: rates would choose it.
      const { cost } = takeoff([{ ...A, segmentsWanted: 4 }], shop({ shopRate, benchRate })).openings[0]!;
      return { money: cost!.labor, minutes: cost!.minutes };
    };
    const { money, minutes } = labor(60, 36);
    const all = Object.values(minutes).reduce((total, each) => total + each, 0);
    expect(all).toBeGreaterThan(minutes.running);
    expectNear(money, minutes.running * 1 + (all - minutes.running) * 0.6, 1e-12);
    expectNear(labor(120, 36).money - money, minutes.running, 1e-10);
    expectNear(labor(60, 72).money - money, (all - minutes.running) * 0.6, 1e-10);
  });
});
