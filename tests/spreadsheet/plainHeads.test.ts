import { describe, expect, it } from 'vitest';
import { ENDS, HEAD_SHAPES } from '../../src/head/head';
import type { Opening } from '../../src/schedule/opening';
import { defaultStandards, withSettings, type Standards } from '../../src/standards';
import { ATTENTION } from '../../src/takeoff/attention';
import { takeoff } from '../../src/takeoff/takeoff';
import { random } from '../random';
import { valueOf } from '../value';
import { opening, randomOpenings, scheduleOf } from '../takeoff/openings';
import { quickSheets } from '../takeoff/quickPlan';
import { compare } from './compare';

const plainSheets = (openings: readonly Opening[], standards: Standards) =>
  quickSheets(scheduleOf(openings), takeoff(openings, standards), { plain: true });

/** Each head at every end rule, with legs alike, legs that differ and none, and with more arcs or a haunch where it takes them. */
function everyHead(): Opening[] {
  const any = random(1717);
  const made: Opening[] = [];
  for (const head of HEAD_SHAPES) {
    for (const ends of [...ENDS, null]) {
      const legs = [
        [null, null],
        [60, null],
        [48, 52.5],
        [0, 40],
      ] as const;
      for (const [leg, otherLeg] of [any.pick(legs), any.pick(legs)]) {
        const [one] = randomOpenings(1, any, defaultStandards(), [head]);
        if (one!.span === null || one!.rough !== undefined || one!.problems.length > 0) continue;
        const arcs = any.pick([null, 3, 5, 7]);
        const haunch =
          head === 'clipped corners' && any.between(0, 1) < 0.5
            ? one!.span * 0.2
            : head === 'four-centered' && any.between(0, 1) < 0.5
              ? one!.span * 0.24
              : null;
        const row = made.length + 2;
        const sides = any.pick([null, 1, 2]);
        made.push({ ...one!, row, mark: `H${row}`, head, ends, leg, otherLeg, arcs, haunch, sides });
      }
    }
  }
  return made;
}

/** What the core refuses in its own sentences. */
function refused(): Opening[] {
  return [
    opening({ head: 'segmental', span: 120, rise: 0.0625, ends: 'level' }),
    opening({ head: 'gable', span: 60, rise: 1, ends: 'level', leg: 40 }),
    opening({ head: 'segmental', span: 36, rise: 6, ends: 'between legs' }),
    opening({ head: 'four-centered', span: 36, rise: 6 }),
    opening({ head: 'four-centered', span: 36, rise: 12, haunch: 17 }),
    opening({ head: 'clipped corners', span: 36, rise: 18 }),
    opening({ head: 'segmental', span: 36, rise: 6, haunch: 4 }),
    opening({ head: 'quarter round', span: 36, rise: 30 }),
    opening({ head: 'straight', span: 36, rise: 4 }),
    opening({ head: 'half round', span: 40, segmentsWanted: 2 }),
    opening({ head: 'three-centered', span: 160, rise: 70, segmentsWanted: 1 }),
    opening({ head: 'segmental', span: 36, rise: 6, haunch: 4, species: 'Ebony' }),
    opening({ head: 'half segmental', span: 36, rise: 40 }),
  ].map((each, at) => ({ ...each, row: at + 2, mark: `R${at}` }));
}

describe.concurrent(
  'LibreOffice Calc, made to recalculate, agrees with the core on every cell of the plain workbook',
  () => {
    it('for every head at every end rule, with legs, sides, arcs and haunches', async () => {
      const openings = everyHead();
      expect(openings.length).toBeGreaterThan(200);
      const priced = new Set(
        takeoff(openings, defaultStandards()).openings.flatMap(({ inputs, needs }) =>
          needs.length > 0 ? [] : [inputs!.head],
        ),
      );
      // A head that `randomOpenings` knows no rise of would be compared while it lacks one.
      expect(HEAD_SHAPES.filter((head) => !priced.has(head))).toEqual([]);
      const sheets = plainSheets(openings, { ...defaultStandards(), overhang: 0.25 });
      const { differences } = await compare(sheets);
      expect(differences).toEqual([]);
    });

    it.each(['overlong', 'carrier'])(
      'for heads of straight pieces too long for the shop and too short for the rolls: %s',
      async (shortPieces) => {
        const heads = ['straight', 'radius corners', 'gable', 'clipped corners', 'shed', 'octagon', 'segmental'];
        const openings = everyHead().filter(({ head }) => heads.includes(head!));
        expect(openings.length).toBeGreaterThan(50);
        const shop = { shortPieces, shortestPiece: 20, largestAcross: 60 };
        const standards = valueOf(withSettings(defaultStandards(), shop));
        const taken = takeoff(openings, standards).openings;
        for (const kind of [ATTENTION.split, ATTENTION.large])
          expect(taken.some(({ attention, own }) => attention.includes(kind) && own?.rings.length === 0)).toBe(true);
        expect((await compare(plainSheets(openings, standards))).differences).toEqual([]);
      },
    );

    it('for random openings of every head, many at once', async () => {
      const openings = randomOpenings(60, random(4), defaultStandards(), HEAD_SHAPES);
      expect((await compare(plainSheets(openings, defaultStandards()))).differences).toEqual([]);
    });

    it('for heads that are refused, which say why', async () => {
      const openings = refused();
      const taken = takeoff(openings, defaultStandards());
      for (const row of taken.openings) if (row.needs.length === 0) expect.fail(`${row.opening.mark} is taken`);
      expect((await compare(plainSheets(openings, defaultStandards()))).differences).toEqual([]);
    });
  },
);
