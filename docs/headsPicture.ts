import { bounds } from '../src/drawing/bounds';
import { explode } from '../src/drawing/dimension';
import { elevationScene } from '../src/drawing/elevation';
import { scaled } from '../src/drawing/scaled';
import { text, type Scene, type Shape } from '../src/drawing/scene';
import { HEAD_SHAPES, type HeadShape } from '../src/head/head';
import { makeHead } from '../src/head/makeHead';
import { SHAPES } from '../src/head/shapes';
import { sure } from './sure';

const FACE = 3.5;
const REVEAL = 3 / 16;

/** A cell of the picture. */
const [WIDE, HIGH, LETTERS] = [10, 8, 0.55];
const IN_A_ROW = 4;

/** Every head with its casing in a cell of its own, its name below. */
export function headsPicture(): Scene {
  return {
    title: 'The heads of openings',
    description: `Openings with their casings: ${HEAD_SHAPES.join(', ')}.`,
    unit: 'in',
    shapes: HEAD_SHAPES.flatMap((name, at) => cell(name, (at % IN_A_ROW) * WIDE, -Math.floor(at / IN_A_ROW) * HIGH)),
  };
}

function cell(name: HeadShape, left: number, foot: number): Shape[] {
  const { span, rise, haunch, ...drawn } = SHAPES[name].example;
  const head = sure(makeHead(name, span, rise, haunch ?? null));
  const scene = sure(elevationScene({ head, reveal: REVEAL, face: FACE, unit: 'in', ...drawn }));
  const shapes = explode(scene.shapes).filter(({ layer }) => !['dimension', 'label', 'spring'].includes(layer));
  const box = bounds(shapes);
  const factor = Math.min((WIDE - 1.4) / (box.right - box.left), (HIGH - 2) / (box.top - box.bottom));
  const [x, y] = [left + WIDE / 2 - ((box.left + box.right) / 2) * factor, foot - box.bottom * factor];
  return [...scaled(shapes, factor, { x, y }), text({ x: left + WIDE / 2, y: foot - 1.1 }, name, LETTERS)];
}
