import { expect, it } from 'vitest';
import { insideOffset } from '../src/insideOffset';

it('a curve is followed on its inside to anywhere short of its tightest radius, not to it', () => {
  expect(insideOffset(-29.999, 30, 'at the center')).toBeNull();
  expect(insideOffset(-30, 30, 'at the center', 'reveal')?.message).toBe(
    'reveal must be more than -30, at the center; got -30',
  );
  expect(insideOffset(5, 30, 'at the center')).toBeNull();
});
