import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { boardFor, inStock, longestBoard, stockName, woodFor } from '../../src/takeoff/wood';

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

  it('fits where rounding alone is missing, up to a billionth', () => {
    for (const short of [0.5e-9, 1e-9]) expect(woodFor('Poplar', 0.8125 + short, STANDARDS)!.thickness).toBe(0.8125);
    expect(woodFor('Poplar', 0.8125 + 1e-8, STANDARDS)!.thickness).toBe(1.0625);
    const wood = woodFor('Poplar', 0.75, STANDARDS)!;
    for (const short of [0.5e-9, 1e-9]) {
      expect(boardFor(5.5 + short, wood)!.width).toBe(5.5);
      expect(longestBoard(9.25 + short, wood)).toBe(144);
    }
    expect([boardFor(5.5 + 1e-8, wood)!.width, longestBoard(9.25 + 1e-8, wood)]).toEqual([7.25, 0]);
  });

  it('is called by the first spelling in the stock list and its thickness to four decimals', () => {
    const [board] = STANDARDS.stock;
    const stock = ['Ash', 'ASH'].map((species) => ({ ...board!, species, thickness: 20.63333 }));
    expect(stockName(woodFor('ash', 20, { ...STANDARDS, stock })!)).toBe('Ash 20.6333');
    expect(stockName(woodFor('Ash', 20, { ...STANDARDS, stock: [stock[0]!] })!)).toBe('Ash 20.6333');
  });

  it('costs what its cheapest board of the width costs', () => {
    const [board] = STANDARDS.stock;
    const stock = [4, 3.5, 5].map((pricePerBoardFoot, at) => ({ ...board!, length: 96 + at, pricePerBoardFoot }));
    expect(boardFor(5, woodFor('Poplar', 0.75, { ...STANDARDS, stock })!)).toEqual({ width: 5.5, price: 3.5 });
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
