import { describe, expect, it } from 'vitest';
import { HEAD_SHAPES } from '../../src/head/head';
import { riseFollows, SHAPES } from '../../src/head/shapes';
import { curveOf } from '../../src/takeoff/curve';
import { valueOf } from '../value';

const KINDS = { none: 0, crown: 1, haunches: 2, fitted: 2 };

describe('what a shape says of itself', () => {
  it.each(HEAD_SHAPES)('%s: its kinds of ring are those that its curve comes to', (head) => {
    const { span, rise, haunch = null, ends } = SHAPES[head].example;
    const inputs = { head, span, rise, haunch, ends, reveal: 0.25, face: 3.5, arcs: null };
    const { rings } = valueOf(curveOf(inputs, { endAllowance: 1, overhang: 0, levelMost: 10 }));
    expect(rings).toHaveLength(KINDS[SHAPES[head].rings]);
  });

  it.each(HEAD_SHAPES)('%s: a rise that follows from the span may be left out, another may not', (head) => {
    const { span, haunch = null } = SHAPES[head].example;
    expect(SHAPES[head].make(span, null, haunch).ok).toBe(riseFollows(head));
  });
});
