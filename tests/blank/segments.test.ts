import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { segments } from '../../src/blank/segments';
import { blankWidth } from '../../src/blank/width';
import { refusalOf, valueOf } from '../value';

const anyRing = {
  radius: fc.double({ min: 0.5, max: 5000, noNaN: true }),
  face: fc.double({ min: 0.25, max: 24, noNaN: true }),
  angle: fc.double({ min: 0.5, max: 360, noNaN: true }),
  margin: fc.double({ min: 0, max: 0.4, noNaN: true }),
};

describe('the least number of segments', () => {
  it('keeps the grain within 30° at a joint: ANSI/AWI 0622-2024, 3.3.2', () => {
    const wide = 1000;
    expect(segments(18, 3.5, 180, wide)).toEqual({ ok: true, value: 3 });
    expect(segments(18, 3.5, 74, wide)).toEqual({ ok: true, value: 2 });
    expect(segments(18, 3.5, 60, wide)).toEqual({ ok: true, value: 1 });
    expect(segments(18, 3.5, 60.001, wide)).toEqual({ ok: true, value: 2 });
    expect(segments(18, 3.5, 360, wide)).toEqual({ ok: true, value: 6 });
    expect(segments(18, 3.5, 180, wide, 0, 10)).toEqual({ ok: true, value: 9 });
    expect(segments(18, 3.5, 360, wide, 0, 180)).toEqual({ ok: true, value: 1 });
  });

  it('is what a count from 1 up finds, for any board', () => {
    fc.assert(
      fc.property(
        fc.record({
          ...anyRing,
          over: fc.double({ min: 0.001, max: 30, noNaN: true }),
          grain: fc.constantFrom(10, 30, 90, 180),
        }),
        ({ radius, face, angle, margin, over, grain }) => {
          const board = face + 2 * margin + over;
          const found = valueOf(segments(radius, face, angle, board, margin, grain));
          // Sizes within 1e-12 of the outside radius count as equal.
          const slack = 1e-12 * (radius + face + margin);
          const fits = (count: number) => valueOf(blankWidth(radius, face, angle, count, margin)) <= board + slack;
          let counted = 1;
          while (!fits(counted) || (angle / (2 * grain)) * (1 - 1e-12) > counted) counted++;
          expect(found).toBe(counted);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('lets a board exactly as wide as the blank take it, and one narrower by 1e-9 of the radius not', () => {
    fc.assert(
      fc.property(
        fc.record({
          ...anyRing,
          radius: fc.double({ min: 1, max: 500, noNaN: true }),
          count: fc.integer({ min: 1, max: 60 }),
        }),
        ({ radius, face, angle, margin, count }) => {
          const board = valueOf(blankWidth(radius, face, angle, count, margin));
          const versine = board - face - 2 * margin;
          const outside = radius + face + margin;
          fc.pre(versine > 1e-6 * outside);
          expect(valueOf(segments(radius, face, angle, board, margin, 180))).toBe(count);
          expect(valueOf(segments(radius, face, angle, board - 1e-9 * outside, margin, 180))).toBe(count + 1);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('does not depend on the unit of length', () => {
    fc.assert(
      fc.property(
        fc.record({ ...anyRing, over: fc.double({ min: 0.01, max: 10, noNaN: true }) }),
        ({ radius, face, angle, margin, over }) => {
          const scale = 25.4;
          const inches = segments(radius, face, angle, face + 2 * margin + over, margin);
          const metric = segments(
            radius * scale,
            face * scale,
            angle,
            (face + 2 * margin + over) * scale,
            margin * scale,
          );
          expect(metric).toEqual(inches);
        },
      ),
    );
  });

  it('takes sizes within 1e-12 of the outside radius as equal, however large the ring', () => {
    const board = valueOf(blankWidth(4996.5, 3.5, 180, 60));
    expect(valueOf(segments(4996.5, 3.5, 180, board - 0.5e-12 * 5000))).toBe(60);
    expect(valueOf(segments(4996.5, 3.5, 180, board - 2e-12 * 5000))).toBe(61);
    expect(refusalOf(segments(18, 3.5, 180, 3.5 + 1e-12 * 21.5))).toContain('must be more than face');
  });

  it('may be 10,000, for the grain and for the board', () => {
    expect(valueOf(segments(18, 3.5, 360, 1000, 0, 0.018))).toBe(10_000);
    expect(valueOf(segments(900, 3.5, 360, valueOf(blankWidth(900, 3.5, 360, 10_000))))).toBe(10_000);
    expect(refusalOf(segments(18, 3.5, 360, 1000, 0, 0.0179))).toContain('grain 0.0179 is too small');
  });

  it('refuses a board that no number of segments fits, and says what it must be more than', () => {
    expect(refusalOf(segments(18, 3.5, 180, 3.5))).toBe(
      'board_width must be more than face + 2·margin, here 3.5; got 3.5',
    );
    expect(refusalOf(segments(18, 3.5, 180, 4, 0.25))).toBe(
      'board_width must be more than face + 2·margin, here 4; got 4',
    );
    expect(refusalOf(segments(18, 3.5, 180, 3.5000001))).toMatch(/^no more than 10000 segments/);
    expect(refusalOf(segments(18, 3.5, 180, 6, 0, 181))).toBe('grain must be no more than 180; got 181');
    expect(refusalOf(segments(18, 3.5, 180, 0))).toBe('board_width must be more than 0; got 0');
  });
});
