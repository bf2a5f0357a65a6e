import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { call } from '../../functions/call';
import { METADATA, type Answer } from '../../functions/metadata';
import { expectNear } from '../value';
import { expectAnswer } from './answer';
import { CASES } from './cases';

function answer(name: string, ...args: unknown[]): Answer {
  const called = call(name, args);
  if ('error' in called) expect.fail(`${name}(${args.join(', ')}) was refused: ${called.message}`);
  return called.value;
}
const figure = (name: string, ...args: unknown[]) => answer(name, ...args) as number;

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const span = size(1, 500);
const offset = size(0, 24);

const LENGTHS = 'span rise radius haunch offset step face reveal margin board_width kerf clearance thickness'.split(
  ' ',
);

/** What a factor on every length does to each answer: to all of it, to none, or to some columns. */
const GROWS: Readonly<Record<string, 'all' | 'none' | readonly boolean[]>> = {
  RADIUS: 'all',
  RISE: 'all',
  SPAN: 'all',
  ANGLE: 'none',
  ARCLENGTH: 'all',
  ORDINATES: 'all',
  HEADLENGTH: 'all',
  HEADARCS: [true, false, true, true],
  HEADRADIUS: 'all',
  HEADMITER: [false, false, false, true],
  MITER: 'none',
  SEGMENTS: 'none',
  BLANKWIDTH: 'all',
  BLANKLENGTH: 'all',
  NEST: 'none',
  PLIES: [false, true],
};

describe('worksheet functions together', () => {
  it('scaling every length by any factor scales the lengths of the answer and nothing else', () => {
    const scalable = CASES.filter(
      ({ name, args }) =>
        name in GROWS && !args.some((arg) => Array.isArray(arg) || (typeof arg === 'string' && /\d/.test(arg))),
    );
    expect(new Set(scalable.map(({ name }) => name)).size).toBe(Object.keys(GROWS).length);
    fc.assert(
      fc.property(fc.constantFrom(...scalable), size(0.01, 100), ({ name, args, answer: expected, within }, factor) => {
        const { parameters } = METADATA.find((one) => one.name === name)!;
        const scaled = args.map((arg, at) =>
          typeof arg === 'number' && LENGTHS.includes(parameters[at]!.name) ? arg * factor : arg,
        );
        const grows = GROWS[name]!;
        const grown = (value: Answer, column = 0): Answer => {
          if (typeof value === 'string') return value;
          if (typeof value === 'number')
            return grows === 'all' || (grows !== 'none' && grows[column]) ? value * factor : value;
          return value.map((row) => row.map((cell, at) => grown(cell, at) as number));
        };
        expectAnswer(answer(name, ...scaled), grown(expected), Math.max(within ?? 0, 1e-11));
      }),
      { numRuns: 2000 },
    );
  });

  it('an exact fit of pieces on a board stays one in any unit that is a common fraction of the inch', () => {
    for (const factor of [25.4, 2.54, 0.0254, 1 / 12, 1 / 3, 0.1, 8]) {
      expect(answer('PERBOARD', 97.375 * factor, 24 * factor, 0.125 * factor, 0.5 * factor)).toBe(4);
      expect(answer('PERBOARD', 97.37 * factor, 24 * factor, 0.125 * factor, 0.5 * factor)).toBe(3);
    }
  });

  it('the pieces of a head add up to its length and its angle', () => {
    fc.assert(
      fc.property(span, size(0.05, 3), offset, fc.constantFrom('radial', 'level', 'legs'), (wide, part, out, ends) => {
        const rise = wide * part;
        fc.pre(part <= 0.5);
        for (const head of ['segmental', 'three-centered']) {
          if (head === 'three-centered' && part > 0.49) continue;
          const arcs = answer('HEADARCS', head, wide, rise, out, ends) as number[][];
          expectNear(
            arcs.reduce((sum, arc) => sum + arc[2]!, 0),
            figure('HEADLENGTH', head, wide, rise, out, ends),
            1e-12,
          );
          for (const [radius, degrees, length] of arcs)
            expectNear((radius! * degrees! * Math.PI) / 180, length!, 1e-12);
        }
        const edge = answer('HEADARCS', 'segmental', wide, rise) as number[][];
        expectNear(edge[0]![1]!, figure('ANGLE', wide, rise), 1e-12);
      }),
    );
  });

  it('up to the half round an outside edge cut level is longer than one mitered to legs, and that longer than one ended radially', () => {
    fc.assert(
      fc.property(span, size(0.01, 0.5), offset, (wide, part, out) => {
        const length = (ends: string) => figure('HEADLENGTH', 'segmental', wide, wide * part, out, ends) * (1 + 1e-12);
        expect(length('level')).toBeGreaterThanOrEqual(length('legs') * (1 - 1e-12));
        expect(length('legs')).toBeGreaterThanOrEqual(length('radial') * (1 - 1e-12));
      }),
    );
  });

  it('above the half round the order of the three is turned round', () => {
    fc.assert(
      fc.property(span, size(0.51, 2), offset, (wide, part, out) => {
        const length = (ends: string) => figure('HEADLENGTH', 'segmental', wide, wide * part, out, ends);
        expect(length('level')).toBeLessThanOrEqual(length('radial') * (1 + 1e-12));
      }),
    );
  });

  it('an argument left out is its default', () => {
    const pairs: [string, unknown[], unknown[]][] = [
      ['ARCLENGTH', [36, 6], [36, 6, 0]],
      ['HEADLENGTH', ['elliptical', 72, 24], ['elliptical', 72, 24, 0, 'radial']],
      ['HEADARCS', ['elliptical', 72, 24], ['elliptical', 72, 24, 0, 'radial', 3]],
      ['HEADRADIUS', ['elliptical', 72, 24], ['elliptical', 72, 24, 3]],
      ['HEADMITER', ['segmental', 36, 6, 3.5], ['segmental', 36, 6, 3.5, 0, 'legs']],
      ['MITER', [36, 6, 3.5], [36, 6, 3.5, 0]],
      ['SEGMENTS', [18, 3.5, 180, 6], [18, 3.5, 180, 6, 0, 30]],
      ['BLANKWIDTH', [18, 3.5, 180, 3], [18, 3.5, 180, 3, 0]],
      ['BLANKLENGTH', [18, 3.5, 180, 3], [18, 3.5, 180, 3, 0, 'miter']],
      ['NEST', [18, 3.5, 180, 4, 12], [18, 3.5, 180, 4, 12, 0, 0]],
      ['GUIDES', [18, 3.5], [18, 3.5, 0, 1 / 32]],
      ['PLIES', [30, 0.75], [30, 0.75, 100]],
      ['RUNTIME', [100, 12], [100, 12, 1, 0]],
      ['BOARDFEET', [1, 6, 120], [1, 6, 120, 1]],
      ['PERBOARD', [96, 24], [96, 24, 0, 0]],
      [
        'BOARDS',
        [
          [[24], [17]],
          [[10], [4]],
          [[96], [120]],
        ],
        [[[24], [17]], [[10], [4]], [[96], [120]], 0, 0, [[96], [120]]],
      ],
      ['FEETINCHES', [42.51], [42.51, 16]],
      ['LENGTHCHECK', [43.36, 'segmental', 36, 6, 3.5], [43.36, 'segmental', 36, 6, 3.5, 0, 'radial', 1 / 8]],
    ];
    for (const [name, short, full] of pairs) expect(answer(name, ...short), name).toEqual(answer(name, ...full));
  });

  it('the blank of SEGMENTS fits the board, and one segment fewer would not, or its grain would be too steep', () => {
    fc.assert(
      fc.property(
        size(4, 300),
        size(1, 8),
        size(1, 360),
        size(0.05, 10),
        size(0, 0.5),
        (radius, face, angle, over, margin) => {
          const board = face + 2 * margin + over;
          const count = figure('SEGMENTS', radius, face, angle, board, margin);
          expect(figure('BLANKWIDTH', radius, face, angle, count, margin)).toBeLessThanOrEqual(board * (1 + 1e-9));
          expect(angle / (2 * count)).toBeLessThanOrEqual(30 + 1e-9);
          if (count === 1) return;
          const steeper = angle / (2 * (count - 1)) > 30;
          expect(steeper || figure('BLANKWIDTH', radius, face, angle, count - 1, margin) > board).toBe(true);
        },
      ),
    );
  });

  it('NEST stands one on a board of one blank, and never more than the face allows', () => {
    fc.assert(
      fc.property(
        size(4, 300),
        size(1, 8),
        size(5, 180),
        fc.integer({ min: 1, max: 8 }),
        size(4, 60),
        size(0, 0.25),
        (radius, face, angle, segments, board, kerf) => {
          const width = figure('BLANKWIDTH', radius, face, angle, segments);
          expect(answer('NEST', radius, face, angle, segments, width, 0, kerf)).toBe(1);
          const count = figure('NEST', radius, face, angle, segments, board, 0, kerf);
          if (count > 0) expect(width + (count - 1) * (face + kerf)).toBeLessThanOrEqual(board * (1 + 1e-9));
          else expect(board).toBeLessThan(width);
        },
      ),
    );
  });

  it('a dimension written by FEETINCHES is read by INCHES to within half its fraction', () => {
    fc.assert(
      fc.property(size(-2000, 2000), fc.constantFrom(2, 4, 8, 16, 32, 64), (inches, denominator) => {
        const text = answer('FEETINCHES', inches, denominator);
        expect(Math.abs(figure('INCHES', text) - inches)).toBeLessThanOrEqual(0.5 / denominator + 1e-9);
      }),
    );
  });
});
