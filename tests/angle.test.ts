import { expect, it } from 'vitest';
import { degrees, polar, radians } from '../src/angle';
import { expectNear } from './value';

it('a half turn is π radians and 180 degrees, either way exactly', () => {
  expect(degrees(Math.PI)).toBe(180);
  expect(radians(180)).toBe(Math.PI);
});

it('directions run counterclockwise from +x', () => {
  const up = polar({ x: 3, y: 4 }, 5, 90);
  expectNear(up.x, 3, 1e-15);
  expect(up.y).toBe(9);
  const left = polar({ x: 3, y: 4 }, 5, 180);
  expect(left.x).toBe(-2);
  expectNear(left.y, 4, 1e-15);
});
