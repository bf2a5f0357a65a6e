import { describe, expect, it } from 'vitest';
import { lengthText } from '../../src/lengthText';
import { defaultStandards } from '../../src/standards';
import {
  FIGURES,
  FIGURES_OF_EVERY_RING,
  figureNamed,
  figureOf,
  numberOf,
  numberOfRing,
} from '../../src/takeoff/figures';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from './openings';

const rowOf = (given: Parameters<typeof opening>[0]) => takeoff([opening(given)], defaultStandards()).openings[0]!;
const THREE = rowOf({ head: 'three-centered', span: 48, rise: 14 });
const ROUND = rowOf({ head: 'half round', span: 36 });
const shown = (name: string, row: ReturnType<typeof rowOf>) => figureOf(figureNamed(name)!, row, 'in');

describe('the figures of an opening', () => {
  it('are found by name, letter case and spaces forgiven', () => {
    expect(figureNamed('  Long   POINT ')?.name).toBe('long point');
    expect(figureNamed('short point')).toBeNull();
  });

  it('are the crown’s and the haunch’s, headed as such, and of each further ring there is', () => {
    const headings = new Map(FIGURES_OF_EVERY_RING.map(({ name, heading }) => [name, heading]));
    expect(headings.size).toBe(FIGURES_OF_EVERY_RING.length);
    expect(FIGURES_OF_EVERY_RING).toHaveLength(FIGURES.length + 2 * 9);
    expect(headings.get('radius')).toBe('Opening radius');
    expect(headings.get('haunch radius')).toBe('Haunch: opening radius');
    expect(headings.get('second haunch segments')).toBe('Second haunch: segments');
    expect(headings.get('third haunch board width')).toBe('Third haunch: board width');
    expect(FIGURES.map(({ name }) => name as string)).not.toContain('second haunch radius');
    // An ellipse of seven arcs has four radii, the crown's the longest.
    const row = rowOf({ head: 'elliptical', span: 48, rise: 16, arcs: 7 });
    const radii = ['', 'haunch ', 'second haunch ', 'third haunch '].map((ring) => {
      const figure = FIGURES_OF_EVERY_RING.find(({ name }) => name === `${ring}radius`)!;
      return Number(figureOf(figure, row, 'in'));
    });
    expect(radii).toEqual(row.curve!.rings.map(({ radius }) => radius));
    expect([...new Set(radii)].sort((one, other) => other - one)).toEqual(radii);
  });

  it('are blank, all but what it needs, where the opening lacks something', () => {
    const row = rowOf({ head: 'half round', span: null });
    for (const { name } of FIGURES) {
      if (name === 'needs' || name === 'look at') expect(shown(name, row)).toContain('span');
      else if (name !== 'knife' && name !== 'passes') expect([name, shown(name, row)]).toEqual([name, '']);
    }
  });

  it('say what is to be looked at only where nothing is needed', () => {
    const legless = rowOf({ head: 'segmental', span: 36, rise: 6, ends: 'legs' });
    expect([shown('needs', legless), shown('look at', legless)]).toEqual(['', legless.attention.join(' ')]);
    expect(legless.attention.length).toBeGreaterThan(0);
    const lacking = rowOf({ head: 'segmental', span: 36, rise: null, ends: 'legs' });
    expect(lacking.needs).toHaveLength(1);
    expect(shown('look at', lacking)).toBe(lacking.needs[0]);
  });

  it('tell the blanks of every ring, how many alike where there are several', () => {
    const board = (row: typeof ROUND, ring: number) => {
      const [segments, width, length] = (['segments', 'blank width', 'blank length'] as const).map((name) =>
        numberOfRing(name, row, ring)!,
      );
      return `${segments} of ${lengthText(width!, 'in')} x ${lengthText(length!, 'in')}`;
    };
    expect(shown('blank', ROUND)).toBe(board(ROUND, 0));
    expect(shown('blank', THREE)).toBe(`${board(THREE, 0)}; 2 × ${board(THREE, 1)}`);
  });

  it('are numbers by their names, of a ring by its place; a text is none, and there is no third ring of two', () => {
    expect(numberOf('radius', ROUND, 'in')).toBe(18);
    expect(numberOf('set-up', ROUND, 'in')).toBeNull();
    expect(numberOf('haunch radius', THREE, 'in')).toBe(numberOfRing('radius', THREE, 1));
    expect(numberOf('haunch segments', THREE, 'in')).toBe(numberOfRing('segments', THREE, 1));
    expect(numberOfRing('radius', THREE, 1)).toBeGreaterThan(0);
    expect([numberOfRing('radius', THREE, 2), numberOfRing('segments', THREE, 2)]).toEqual([null, null]);
  });

  it('are blank where a setting that they rest on can’t be read, and only those', () => {
    const doubted = { ...ROUND, isInDoubt: (stage: string) => stage === 'blank' };
    expect(figureOf(figureNamed('segments')!, doubted, 'in')).toBe('');
    expect(figureOf(figureNamed('radius')!, doubted, 'in')).toBe(18);
    expect([numberOfRing('segments', doubted, 0), numberOfRing('radius', doubted, 0)]).toEqual([null, 18]);
  });
});
