import { describe, expect, it } from 'vitest';
import { HEAD_SHAPES } from '../../src/head/head';
import { defaultStandards } from '../../src/standards';
import { ATTENTION } from '../../src/takeoff/attention';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from './openings';

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

  it('is every shape but the full circle, which has no legs', () => {
    const rises: Partial<Record<string, number>> = { segmental: 6, elliptical: 12, 'three-centered': 12, pointed: 36 };
    const said = HEAD_SHAPES.filter((shape) =>
      attention({ ...head, head: shape, rise: rises[shape] ?? null }).includes(ATTENTION.legless),
    );
    expect(said).toEqual(HEAD_SHAPES.filter((shape) => shape !== 'round'));
  });
});
