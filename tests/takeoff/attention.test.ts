import { describe, expect, it } from 'vitest';
import { HEAD_SHAPES } from '../../src/head/head';
import { defaultStandards } from '../../src/standards';
import { ATTENTION } from '../../src/takeoff/attention';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from './openings';

const RISES: Partial<Record<string, number>> = { segmental: 6, elliptical: 12, 'three-centered': 12, pointed: 36 };

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
    const said = HEAD_SHAPES.filter((shape) =>
      attention({ ...head, head: shape, rise: RISES[shape] ?? null }).includes(ATTENTION.legless),
    );
    expect(said).toEqual(HEAD_SHAPES.filter((shape) => shape !== 'round'));
  });
});

describe('legs under a head that is not mitered to them', () => {
  it('are to be looked at under a segmental or straight head, which does not spring plumb', () => {
    const said = HEAD_SHAPES.filter((shape) =>
      attention({ head: shape, span: 36, rise: RISES[shape] ?? null, leg: 60, ends: 'level' }).includes(
        ATTENTION.unmitered,
      ),
    );
    expect(said).toEqual(['segmental', 'straight']);
    expect(attention({ head: 'segmental', span: 36, rise: 6, leg: 60, ends: 'legs' })).not.toContain(
      ATTENTION.unmitered,
    );
    expect(attention({ head: 'segmental', span: 36, rise: 6, leg: 0 })).not.toContain(ATTENTION.unmitered);
  });
});
