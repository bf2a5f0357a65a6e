import { describe, expect, it } from 'vitest';
import { defaultStandards, type Standards } from '../../src/standards';
import { CARD_CAUTIONS, CAUTIONS, CAUTION_PLACES, COMMON_PRACTICE, NOT_A_SUBSTITUTE } from '../../src/takeoff/cautions';
import { setupFlags, straightGuides, tightnessChecks } from '../../src/takeoff/setupFlags';
import { planSetups, type Setup } from '../../src/takeoff/setups';
import { setupSteps, stepSources } from '../../src/takeoff/setupSteps';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from './openings';

function setupOf(given: Parameters<typeof opening>[0], standards: Standards): Setup {
  const [setup] = planSetups(takeoff([opening(given)], standards)).setups;
  if (!setup) expect.fail('the opening needs no set-up');
  return setup;
}

const arched = { head: 'segmental', span: 36, rise: 6 } as const;

describe('the cautions', () => {
  it('each name a source, and federal paragraphs only where their wording was at hand', () => {
    for (const { text, source } of CAUTIONS) {
      expect(text).toMatch(/^[A-Z].*\.$/);
      expect(source).not.toBe('');
      for (const [, paragraph] of source.matchAll(/1910\.213(\([a-z0-9()–]+)/g)) {
        expect(['(a)(1)–(2)', '(a)(10)', '(s)(2)']).toContain(paragraph);
      }
    }
  });

  it('cover guards, disconnecting, balance, dust, hearing, shortest piece and glue joints', () => {
    const said = CAUTIONS.map(({ text }) => text).join(' ');
    for (const word of [/hood/, /disconnect/, /balanced/, /dust/, /Hearing/, /shorter/, /glue joint/, /Feed rolls/]) {
      expect(said).toMatch(word);
    }
  });

  it('matter at every place of the work, and two lines of them stand on each card', () => {
    for (const place of CAUTION_PLACES) expect(CAUTIONS.some((caution) => caution.place === place)).toBe(true);
    expect(CARD_CAUTIONS).toHaveLength(2);
  });

  it('close by saying what they do not replace', () => {
    for (const word of ["machine's manual", 'local code', 'judgment']) expect(NOT_A_SUBSTITUTE).toContain(word);
  });
});

describe('the steps of a set-up', () => {
  const standards = defaultStandards();

  const said = (given: Parameters<typeof opening>[0], shop: Standards = standards) =>
    setupSteps(setupOf(given, shop), shop).map(({ text }) => text);

  it('carry the guide radii, the thin edge and the passes of the set-up', () => {
    const all = said(arched).join(' ');
    // Inside radius 30 + 3/16; margin 1/4 and clearance 1/32 on each edge of a 3-1/2 face.
    expect(all).toContain('R 29 29/32 inside, R 33 31/32 outside');
    expect(all).toContain('Thin edge to the inside');
    expect(all).toContain('in 2 passes');
    expect(all).toContain('counterweight');
    expect(all).toContain('1/32 clear on each side');
  });

  it('say how long a straight test piece may be, rounded down: 4√(c·Ro), and name a curved one for the dry run', () => {
    // Worked out independently: 4·√(33.9375/32) = 4.1193, down to the sixteenth 4 1/16.
    const dry = said(arched).find((text) => text.startsWith('Dry run'))!;
    expect(dry).toContain('curved piece that is scrap');
    expect(dry).toContain('only up to 4 1/16 long');
  });

  it('follow the shop: thin edge outside, several knives, one pass', () => {
    const all = said(arched, { ...standards, thinEdge: 'outside', knives: 2, deepestCut: 1 }).join(' ');
    expect(all).toContain('to the outside');
    expect(all).toContain('2 knives');
    expect(all).toContain('alike endwise as well as to one circle');
    expect(all).not.toContain('passes, each');
    expect(all).not.toContain('counterweight');
  });

  it('stand in the order of a careful hand, power only after the dry run and the hood', () => {
    const steps = said({ head: 'half round', span: 60 });
    const order = [
      'lock it out',
      'bed lines',
      'middle screw',
      'clear on each side',
      'Knife ',
      'sideways with the guides',
      'Wax',
      'Count the turns',
      'Dry run',
      'Hood',
      'extraction',
      'Hold these rings up',
      'first piece',
      'two hours',
    ];
    expect(order.map((word) => steps.findIndex((text) => text.includes(word)))).toEqual(order.map((_, at) => at));
    expect(steps).toHaveLength(order.length);
  });

  it('ask for a stand behind the outfeed only where rings are large', () => {
    expect(said(arched).join(' ')).not.toContain('Hold these rings up');
  });

  it('leave guides and thin edge out of a straight set-up', () => {
    const all = said({ head: 'straight', span: 36 }).join(' ');
    expect(all).not.toContain('uide');
    expect(all).not.toContain('Thin edge');
    expect(all).toContain('fences');
  });

  it('name each source once, and the rest as common practice', () => {
    const steps = setupSteps(setupOf(arched, standards), standards);
    expect(steps.find(({ text }) => text.includes('bevel'))?.source).toContain('1910.213(s)(2)');
    expect(steps.find(({ text }) => text.includes('Wax'))?.source).toBe(COMMON_PRACTICE);
    expect(stepSources(steps)).toBe(
      'step 5: 29 CFR 1910.213(s)(2); step 10: 29 CFR 1910.213; 8 CCR 4318(a)–(c); the other steps: common practice',
    );
  });
});

describe('what stands out in a set-up', () => {
  const standards = defaultStandards();

  it('is nothing for an ordinary one', () => {
    expect(setupFlags(setupOf(arched, standards), standards)).toEqual([]);
  });

  it('is a piece shorter than the rolls hold, with its mark and both lengths', () => {
    const strict: Standards = { ...standards, shortestPiece: 60, shortPieces: 'carrier' };
    const [flag, ...others] = setupFlags(setupOf({ ...arched, mark: 'W7' }, strict), strict);
    expect(flag).toMatch(
      /^Too short for the rolls: W7, 4\d( \d+\/\d+)? along the center; .* no less than 60\. Run them on a carrier\.$/,
    );
    expect(others).toEqual([]);
  });

  it('is a radius under the smallest and a blank over the widest, each at its limit exactly allowed', () => {
    const setup = setupOf(arched, standards);
    const flags = (changed: Partial<Standards>) => setupFlags(setup, { ...standards, ...changed });
    expect(flags({ smallestRadius: 30.1875 })).toEqual([]);
    expect(flags({ smallestRadius: 31 })).toEqual([
      'Too tight: inside radius 30 3/16; the machine takes no less than 31.',
    ]);
    expect(flags({ widestFace: 4 })).toEqual([]);
    expect(flags({ widestFace: 3.75 })).toEqual(['Too wide: the blank is 4; the machine takes no more than 3 3/4.']);
  });

  it('is no piece that misses the shortest by rounding alone', () => {
    const setup = setupOf(arched, standards);
    const flags = (runLength: number) =>
      setupFlags({ ...setup, pieces: [{ ...setup.pieces[0]!, runLength }] }, standards);
    expect(flags(standards.shortestPiece - 1e-9)).toEqual([]);
    expect(flags(standards.shortestPiece - 1e-6)).toHaveLength(1);
  });

  it('is a molding that strays from guides made for another radius, in its unit', () => {
    const setup = setupOf({ ...arched, mark: 'W7' }, standards);
    const flags = (strays: number, insideRadius: number | null, unit: 'in' | 'mm') =>
      setupFlags({ ...setup, pieces: [{ ...setup.pieces[0]!, insideRadius, strays }] }, { ...standards, unit });
    expect(flags(0.01234, 30.5, 'in')).toEqual([
      'Shared guides: W7, inside radius 30 1/2, strays 0.012 in over the length of the guides.',
    ]);
    expect(flags(0.4567, 30.5, 'mm').at(-1)).toBe(
      'Shared guides: W7, inside radius 30.5 mm, strays 0.46 mm over the length of the guides.',
    );
    expect([flags(0, 30.5, 'in'), flags(1, null, 'in')]).toEqual([[], []]);
  });

  // Sagitta s over a chord of 2h: r = h²/2s + s/2, for s of 1/64 in and h an inch past the bed line: 1568.01 in, 38759.46 mm.
  it('is a guide as good as straight over the board, which reaches an inch past each bed line', () => {
    const guides = (inside: number) => ({ guides: { ok: true, value: { inside, outside: inside + 4 } } }) as const;
    expect(straightGuides(guides(1568), standards)).toBeNull();
    expect(straightGuides(guides(1568.02), standards)).toBe('Guides as good as straight over 14');
    const metric = defaultStandards('mm');
    expect(straightGuides(guides(38_759), metric)).toBeNull();
    expect(straightGuides(guides(38_760), metric)).toBe('Guides as good as straight over 350.8 mm');
  });

  it('is a clearance that leaves no inside guide, in the words of the core', () => {
    const tight = { ...standards, clearance: 1, margin: 0, smallestRadius: 0, shortestPiece: 0 };
    const setup = setupOf({ head: 'segmental', span: 1, rise: 0.5, reveal: 0 }, tight);
    expect(setupFlags(setup, tight).some((flag) => flag.startsWith('No guide boards: clearance must be less'))).toBe(
      true,
    );
  });

  it.each([
    [0, 0],
    [119, 0],
    [120, 0],
    [121, 1],
    [240, 1],
    [300, 2],
  ])('is a stop to check tightness about every two hours: %i minutes take %i', (minutes, checks) => {
    expect(tightnessChecks(minutes)).toBe(checks);
    const flags = setupFlags({ ...setupOf(arched, standards), runMinutes: minutes }, standards);
    expect(flags).toHaveLength(checks === 0 ? 0 : 1);
    if (checks === 2)
      expect(flags[0]).toBe('5 hours of running: stop 2 times to check knife, guides and screws for tightness.');
  });
});
