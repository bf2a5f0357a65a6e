import { describe, expect, it } from 'vitest';
import { defaultStandards, type Standards } from '../../src/standards';
import { arcPieces } from '../../src/takeoff/arcPieces';
import { expectNear } from '../value';

const radians = (angle: number) => (angle * Math.PI) / 180;
const LARGE = { largestAcross: 1000, largestHigh: 1000, largestTurn: 360, shortestPiece: 0, shortPieces: 'carrier' };
const SHOP = { ...defaultStandards(), ...LARGE, margin: 0.25, endAllowance: 3 } as Standards;
const made = (finishedAngle: number, blankAngle: number, changes: Partial<Standards> = {}, inside = 30) => {
  const ring = { radius: inside, inside, outside: inside + 3.5, angle: finishedAngle, finishedAngle, blankAngle };
  return arcPieces({ ...ring, arcs: [0], count: 1 }, 3.5, { ...SHOP, ...changes });
};

describe('a piece at what the shop carries', () => {
  // Across the long points 2·Ro·sin g, from those to the crown Ro − Ri·cos g, with Ro = 33.75 and Ri = 29.75.
  const [across, deep] = [2 * 33.75 * Math.sin(radians(50)), 33.75 - 29.75 * Math.cos(radians(50))];

  it('is whole at the very limit and in halves past it, across, high and by its turn', () => {
    const parts = (changes: Partial<Standards>) => made(90, 100, changes).parts;
    expect(parts({ largestAcross: across, largestHigh: deep, largestTurn: 90 })).toBe(1);
    expect(parts({ largestAcross: across - 1e-6 })).toBe(2);
    expect(parts({ largestHigh: deep - 1e-6 })).toBe(2);
    expect(parts({ largestTurn: 90 - 1e-6 })).toBe(2);
  });

  it('in halves has each half with the allowance at both ends, and one splice; a full circle has two', () => {
    const half = made(90, 100, { largestTurn: 80 });
    expect([half.splices, half.finishedAngle]).toEqual([1, 45]);
    expectNear(half.ownAngle, 45 + (6 / 30) * (180 / Math.PI), 1e-12);
    expect([made(360, 360, { largestTurn: 180 }).splices, made(350, 360, { largestTurn: 180 }).splices]).toEqual([
      2, 1,
    ]);
    // No blank is more than the ring.
    expect(made(180, 200, { largestTurn: 90 }, 1).ownAngle).toBe(360);
  });

  it('is fixed to a carrier where it is shorter along its center than the rolls hold', () => {
    const length = radians(20) * 31.75;
    const carried = (shortestPiece: number) => made(10, 20, { shortestPiece }).carried;
    expect([carried(length), carried(length + 1e-6), carried(length - 1e-6)]).toEqual([false, true, false]);
    expect(made(0.2, 0.5, { shortestPiece: 5 }).blankAngle).toBe(0.5);
  });
});
