import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { boardFor, inStock, woodFor } from '../../src/takeoff/wood';

const STANDARDS = defaultStandards();

describe('the wood for a molding', () => {
  it('is the thinnest dressed thickness that is thick enough: 3/4 from 4/4, 1 from 5/4 (common practice)', () => {
    expect(woodFor('Poplar', 0.75, STANDARDS)).toMatchObject({ thickness: 13 / 16, quarters: 4, widest: 9.25 });
    expect(woodFor('Poplar', 1, STANDARDS)).toMatchObject({ thickness: 17 / 16, quarters: 5 });
  });

  it('is found whatever the letter case, and not by half a name', () => {
    expect(woodFor('RED OAK', 0.75, STANDARDS)).not.toBeNull();
    expect(woodFor('Red', 0.75, STANDARDS)).toBeNull();
    expect(inStock('red oak', STANDARDS)).toBe(true);
    expect(inStock('Red*', STANDARDS)).toBe(false);
  });

  it('is none where every board is too thin', () => {
    expect(woodFor('Poplar', 3, STANDARDS)).toBeNull();
  });

  it('comes from the narrowest board that is wide enough, one exactly as wide included', () => {
    const wood = woodFor('Poplar', 0.75, STANDARDS)!;
    expect(boardFor(5.5, wood)).toEqual({ width: 5.5, price: 3.9 });
    expect(boardFor(5.51, wood)).toEqual({ width: 7.25, price: 3.9 });
    expect(boardFor(9.3, wood)).toBeNull();
  });
});
