import { expect, it } from 'vitest';
import { bounds } from '../../src/drawing/bounds';
import { roundSteps } from '../../src/drawing/roundSteps';
import { scaled } from '../../src/drawing/scaled';
import { arc, circle, dimension, line, outline, polyline, text, type Primitive } from '../../src/drawing/scene';

const A = { x: 1, y: 2 };
const B = { x: 4, y: -3 };
const SHAPES: readonly (readonly [string, Primitive])[] = [
  ['line', line('center', A, B)],
  ['circle', circle('screw', A, 2)],
  ['arc', arc('guide', A, 2, 30, 200)],
  ['polyline', polyline('casing', [A, B, { x: 0, y: 0 }])],
  ['outline', outline('casing', { x: 3, y: 2 }, [...roundSteps(A, 2, 0, 200), { to: { x: 3, y: 2 } }])],
  ['text', text(A, 'bed line', 0.5, 'end', 30)],
];

it.each(SHAPES)('a %s made smaller and moved takes up the room of before, made smaller and moved', (_, shape) => {
  const before = bounds([shape]);
  const after = bounds(scaled([shape], 0.25, { x: 10, y: -20 }));
  expect(after.left).toBeCloseTo(10 + before.left / 4, 12);
  expect(after.right).toBeCloseTo(10 + before.right / 4, 12);
  expect(after.bottom).toBeCloseTo(-20 + before.bottom / 4, 12);
  expect(after.top).toBeCloseTo(-20 + before.top / 4, 12);
});

it('a dimension keeps its figure', () => {
  const shown = scaled([dimension('x', A, B, 5, { value: 3, text: '3', height: 1 })], 0.25, { x: 0, y: 0 });
  expect(shown.flatMap((shape) => (shape.kind === 'text' ? [[shape.text, shape.height]] : []))).toEqual([['3', 0.25]]);
});
