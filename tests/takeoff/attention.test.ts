import { describe, expect, it } from 'vitest';
import { HEAD_SHAPES, type HeadShape } from '../../src/head/head';
import { SHAPES } from '../../src/head/shapes';
import { defaultStandards } from '../../src/standards';
import { ATTENTION } from '../../src/takeoff/attention';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from './openings';

const sizeOf = (shape: HeadShape) => ({ span: SHAPES[shape].example.span, rise: SHAPES[shape].example.rise });

function attention(given: Parameters<typeof opening>[0]): readonly string[] {
  return takeoff([opening(given)], defaultStandards()).openings[0]!.attention;
}

describe('a head mitered to legs', () => {
  const head = { head: 'segmental', span: 36, rise: 6, ends: 'legs' } as const;

  it('without a leg length, blank or 0, is to be looked at: the price holds no legs', () => {
    expect(attention(head)).toContain(ATTENTION.legless);
    expect(attention({ ...head, leg: 0 })).toContain(ATTENTION.legless);
  });

  it('with a leg length, or with other ends, is not', () => {
    expect(attention({ ...head, leg: 84 })).not.toContain(ATTENTION.legless);
    expect(attention({ ...head, ends: 'level' })).not.toContain(ATTENTION.legless);
  });

  it('is every shape that has ends', () => {
    const said = HEAD_SHAPES.filter((shape) =>
      attention({ ...head, head: shape, ...sizeOf(shape) }).includes(ATTENTION.legless),
    );
    expect(said).toEqual(HEAD_SHAPES.filter((shape) => !['round', 'full ellipse', 'octagon'].includes(shape)));
  });
});

describe('legs under a head that is not mitered to them', () => {
  it('are to be looked at under a head that does not spring plumb', () => {
    const said = HEAD_SHAPES.filter((shape) =>
      attention({ head: shape, ...sizeOf(shape), leg: 60, ends: 'level' }).includes(ATTENTION.unmitered),
    );
    expect(said).toEqual(['segmental', 'half segmental', 'gable', 'clipped corners', 'shed']);
    expect(attention({ head: 'segmental', span: 36, rise: 6, leg: 60, ends: 'legs' })).not.toContain(
      ATTENTION.unmitered,
    );
    expect(attention({ head: 'segmental', span: 36, rise: 6, leg: 0 })).not.toContain(ATTENTION.unmitered);
  });
});
