import { describe, expect, it } from 'vitest';
import { defaultStandards, type Standards } from '../../src/standards';
import { CAUTIONS, CAUTION_PLACES, cautionsFor, COMMON_PRACTICE, NOT_A_SUBSTITUTE } from '../../src/takeoff/cautions';
import { setupFlags, tightnessChecks } from '../../src/takeoff/setupFlags';
import { planSetups, type Setup } from '../../src/takeoff/setups';
import { setupSteps } from '../../src/takeoff/setupSteps';
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
    for (const word of [/hood/, /Disconnect/, /balanced/, /dust/i, /hearing/, /shorter/, /glue joint/, /feed rolls/]) {
      expect(said).toMatch(word);
    }
  });

  it('are shown where they matter: every place has some, and asking for a place gives no others', () => {
    for (const place of CAUTION_PLACES) {
      const own = cautionsFor(place);
      expect(own.length).toBeGreaterThan(0);
      expect(own.every((caution) => caution.place === place)).toBe(true);
    }
    expect(cautionsFor(...CAUTION_PLACES)).toHaveLength(CAUTIONS.length);
  });

  it('close by saying what they do not replace', () => {
    for (const word of ["machine's manual", 'local code', 'judgment']) expect(NOT_A_SUBSTITUTE).toContain(word);
  });
});

describe('the steps of a set-up', () => {
  const standards = defaultStandards();

  it('carry the guide radii, the thin edge and the passes of the set-up', () => {
    const said = setupSteps(setupOf(arched, standards), standards).map(({ text }) => text);
    const all = said.join(' ');
    // Inside radius 30 + 3/16; margin 1/4 and clearance 1/32 on each edge of a 3-1/2 face.
    expect(all).toContain('R 29 29/32 inside and R 33 31/32 outside');
    expect(all).toContain('thin edge of the molding lies to the inside');
    expect(all).toContain('in 2 passes');
    expect(all).toContain('counterweight');
  });

  it('follow the shop: thin edge outside, several knives, one pass', () => {
    const other: Standards = { ...standards, thinEdge: 'outside', knives: 2, deepestCut: 1 };
    const all = setupSteps(setupOf(arched, other), other)
      .map(({ text }) => text)
      .join(' ');
    expect(all).toContain('lies to the outside');
    expect(all).toContain('Mount 2 knives');
    expect(all).toContain('in one pass');
    expect(all).not.toContain('counterweight');
  });

  it('disconnect the cutter first, and connect it only after the dry run, the hood and dust collection', () => {
    const said = setupSteps(setupOf(arched, standards), standards).map(({ text }) => text);
    const at = (word: string) => said.findIndex((text) => text.includes(word));
    expect(at('Disconnect')).toBe(0);
    expect(at('Dry run')).toBeGreaterThan(at('guide boards'));
    expect(at('hood')).toBeGreaterThan(at('Dry run'));
    expect(at('connect the cutter.')).toBe(at('hood'));
    expect(at('dust collection')).toBe(at('hood'));
    expect(at('Run the test piece')).toBeGreaterThan(at('hood'));
  });

  it('leave guide boards and thin edge out of a straight set-up', () => {
    const setup = setupOf({ head: 'straight', span: 36 }, standards);
    const all = setupSteps(setup, standards)
      .map(({ text }) => text)
      .join(' ');
    expect(all).not.toContain('guide boards');
    expect(all).not.toContain('thin edge');
    expect(all).toContain('fences');
  });

  it('mark what has no published source as common practice', () => {
    const steps = setupSteps(setupOf(arched, standards), standards);
    const bevel = steps.find(({ text }) => text.includes('bevel'));
    expect(bevel?.source).toBe(COMMON_PRACTICE);
    expect(steps.find(({ text }) => text.includes('balance'))?.source).toContain('1910.213(s)(2)');
  });
});

describe('what stands out in a set-up', () => {
  const standards = defaultStandards();

  it('is nothing for an ordinary one', () => {
    expect(setupFlags(setupOf(arched, standards), standards)).toEqual([]);
  });

  it('is a piece shorter than the rolls hold, with its mark and both lengths', () => {
    const strict = { ...standards, shortestPiece: 60 };
    const [flag, ...others] = setupFlags(setupOf({ ...arched, mark: 'W7' }, strict), strict);
    expect(flag).toMatch(/^Too short for the rolls: W7, 4\d( \d+\/\d+)? along the center; .* no less than 60\.$/);
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
