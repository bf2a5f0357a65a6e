import { bounds } from '../src/drawing/bounds';
import { explode } from '../src/drawing/dimension';
import { elevationScene } from '../src/drawing/elevation';
import { scaled } from '../src/drawing/scaled';
import { text, type Scene, type Shape } from '../src/drawing/scene';
import type { Ends, HeadShape } from '../src/head/head';
import { makeHead } from '../src/head/makeHead';
import { sure } from './sure';

interface Drawn {
  readonly span: number;
  readonly rise: number | null;
  readonly ends: Ends;
  readonly leg: number;
  /** Segments of each piece. */
  readonly segments: readonly number[];
}

const HEADS: Readonly<Record<HeadShape, Drawn>> = {
  segmental: { span: 36, rise: 8, ends: 'legs', leg: 12, segments: [3] },
  'half round': { span: 36, rise: null, ends: 'radial', leg: 12, segments: [4] },
  elliptical: { span: 42, rise: 14, ends: 'radial', leg: 12, segments: [2, 2, 2] },
  'three-centered': { span: 42, rise: 14, ends: 'radial', leg: 12, segments: [2, 2, 2] },
  pointed: { span: 36, rise: 30, ends: 'radial', leg: 12, segments: [2, 2] },
  'quarter round': { span: 24, rise: null, ends: 'radial', leg: 12, segments: [2] },
  round: { span: 30, rise: null, ends: 'radial', leg: 0, segments: [6] },
  straight: { span: 36, rise: null, ends: 'legs', leg: 12, segments: [] },
};
const FACE = 3.5;
const REVEAL = 3 / 16;

/** A cell of the picture. */
const [WIDE, HIGH, LETTERS] = [10, 8, 0.55];
const IN_A_ROW = 4;

/** Every head with its casing in a cell of its own, its name below. */
export function headsPicture(): Scene {
  const names = Object.keys(HEADS) as HeadShape[];
  return {
    title: 'The heads of openings',
    description: `Eight openings with their casings: ${names.join(', ')}.`,
    unit: 'in',
    shapes: names.flatMap((name, at) => cell(name, (at % IN_A_ROW) * WIDE, -Math.floor(at / IN_A_ROW) * HIGH)),
  };
}

function cell(name: HeadShape, left: number, foot: number): Shape[] {
  const { span, rise, ...drawn } = HEADS[name];
  const head = sure(makeHead(name, span, rise));
  const scene = sure(elevationScene({ head, reveal: REVEAL, face: FACE, unit: 'in', ...drawn }));
  const shapes = explode(scene.shapes).filter(({ layer }) => !['dimension', 'label', 'spring'].includes(layer));
  const box = bounds(shapes);
  const factor = Math.min((WIDE - 1.4) / (box.right - box.left), (HIGH - 2) / (box.top - box.bottom));
  const [x, y] = [left + WIDE / 2 - ((box.left + box.right) / 2) * factor, foot - box.bottom * factor];
  return [...scaled(shapes, factor, { x, y }), text({ x: left + WIDE / 2, y: foot - 1.1 }, name, LETTERS)];
}
