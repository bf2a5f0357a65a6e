import { describe, expect, it } from 'vitest';
import { readSchedule } from '../../src/schedule/readSchedule';
import type { Opening } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { valueOf } from '../value';

/** One row of a list with these cells under Mark, Qty, Head, Width, Rise. */
function read(head: string, width: string, rise = ''): Opening {
  const rows = [
    ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
    ['W1', '1', head, width, rise],
  ];
  const schedule = valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards()));
  return schedule.openings[0]!;
}

describe('names of heads that say more than a shape are taken as they are meant', () => {
  it.each([
    ['eyebrow on legs', '36', '6', { head: 'segmental', span: 36, rise: 6, ends: 'legs' }],
    ['half round top w/ legs', '36', '', { head: 'half round', span: 36, ends: 'legs' }],
    ['drop pointed', '36', '24', { head: 'pointed', span: 36, rise: 24 }],
    ['Flat top w/ radius corners', '36', '6', { head: 'radius corners', span: 36, rise: 6 }],
    ['oval', '36', '24', { head: 'full ellipse', span: 36, rise: 24 }],
    ['half eyebrow', '18', '6', { head: 'half segmental', span: 18, rise: 6 }],
    ['1/4 ellipse', '36', '18', { head: 'quarter ellipse', span: 36, rise: 18 }],
    ['Tudor arch', '36', '12', { head: 'four-centered', span: 36, rise: 12 }],
    ['gable', '36', '12', { head: 'gable', span: 36, rise: 12 }],
    ['clipped corners', '36', '9', { head: 'clipped corners', span: 36, rise: 9 }],
    ['shed', '36', '12', { head: 'shed', span: 36, rise: 12 }],
    ['octagon', '24', '', { head: 'octagon', span: 24 }],
  ] as const)('%s', (head, width, rise, expected) => {
    const opening = read(head, width, rise);
    expect(opening.problems).toEqual([]);
    expect(opening).toMatchObject(expected);
    expect(takeoff([opening], defaultStandards()).openings[0]!.needs).toEqual([]);
  });

  it('an equilateral head has its own rise', () => {
    const opening = read('equilateral', '36');
    expect(opening.head).toBe('pointed');
    expect(opening.rise).toBeCloseTo(18 * Math.sqrt(3), 9);
  });

  it('a horseshoe is taken by its width at the spring line, or at its widest, and asked for which', () => {
    // Worked out independently here: a circle of radius 15, its center 9 above the spring line, is 24 wide there.
    expect(read('horseshoe at spring', '24', '24')).toMatchObject({ head: 'segmental', span: 24, rise: 24 });
    const widest = read('horseshoe at widest', '30', '24');
    expect(widest).toMatchObject({ head: 'segmental', rise: 24, problems: [] });
    expect(widest.span).toBeCloseTo(24, 9);
    expect(widest.notes.join(' ')).toContain('at the spring line');
    expect(read('horseshoe', '30', '24').problems[0]!.message).toContain('horseshoe at widest');
    expect(read('horseshoe at widest', '30', '12').problems[0]!.message).toContain('more than 15');
  });

  it('ogee, parabola, catenary, curves in plan and what is no casing are refused by name', () => {
    for (const [head, needed] of [
      ['ogee', 'drawing'],
      ['parabolic', 'drawing'],
      ['catenary', 'drawing'],
      ['radius in plan', 'drawing'],
      ['bow window', 'drawing'],
      ['jamb extension', 'not run here'],
      ['sill', 'not run here'],
      ['brick molding', 'not run here'],
    ] as const) {
      const { head: shape, problems } = read(head, '36', '6');
      expect(shape, head).toBeNull();
      expect(problems.map(({ message }) => message).join(' '), head).toContain(needed);
    }
  });

  it('a four-centered head without its haunch radius is priced by the published rule, and said to be', () => {
    const { attention, curve } = takeoff([read('Tudor', '36', '12')], defaultStandards()).openings[0]!;
    expect(curve!.head.haunch).toBe(9);
    expect(attention.join(' ')).toContain('published rule');
    const given = takeoff([{ ...read('Tudor', '36', '12'), haunch: 8.5 }], defaultStandards()).openings[0]!;
    expect(given.attention.join(' ')).not.toContain('published rule');
    const outside = takeoff([read('Tudor', '48', '12')], defaultStandards()).openings[0]!;
    expect(outside.needs.join(' ')).toMatch(/haunch/);
  });
});
