import { expect, it } from 'vitest';
import { degreesText, radiusText } from '../../src/drawing/figureText';

it('a radius is written as a decimal and on the tape, or once where both are the same', () => {
  expect(radiusText(17.96875, 'in')).toBe('17.9688 (17 31/32)');
  expect(radiusText(18, 'in')).toBe('18');
  expect(radiusText(18.5, 'in')).toBe('18.5 (18 1/2)');
});

it('a metric radius is written to a hundredth of a millimeter', () => {
  expect(radiusText(456.40625, 'mm')).toBe('456.41 mm');
});

it('degrees are written to a hundredth', () => {
  expect(degreesText(18.4349)).toBe('18.43°');
  expect(degreesText(22.5)).toBe('22.5°');
});
