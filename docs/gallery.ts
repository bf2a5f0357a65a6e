/** `npm run pictures`: the pictures of the README, drawn by the same scenes as the pane and the set-up sheet. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { bounds } from '../src/drawing/bounds';
import { miteredLayoutScene, nestedLayoutScene } from '../src/drawing/boardLayout';
import { explode } from '../src/drawing/dimension';
import { elevationScene } from '../src/drawing/elevation';
import type { ElevationFigures } from '../src/drawing/elevationFigures';
import type { GuideBoards } from '../src/drawing/guideLayout';
import { guideScene } from '../src/drawing/guideScene';
import { LETTER_PAGE, guideOverview } from '../src/drawing/overview';
import { ringScene } from '../src/drawing/ring';
import { scaled } from '../src/drawing/scaled';
import { text, type Scene, type Shape } from '../src/drawing/scene';
import { toSvg } from '../src/drawing/svg';
import type { Ends, HeadShape } from '../src/head/head';
import { makeHead } from '../src/head/makeHead';
import type { Result } from '../src/result';

const HERE = new URL('./pictures/', import.meta.url).pathname;

/** One casing all through: 3-1/2 wide, 3/16 reveal, 1/4 margin. */
const FACE = 3.5;
const REVEAL = 3 / 16;
const RING = { radius: 18 + REVEAL, face: FACE, angle: 180, segments: 4, margin: 0.25, unit: 'in' } as const;
const BOARDS: GuideBoards = {
  marks: ['101', '104', '212'],
  profile: 'Casing',
  radius: 18 + REVEAL,
  face: FACE,
  margin: 0.25,
  thinEdge: 'inside',
  unit: 'in',
};

const HEADS: readonly (readonly [
  HeadShape,
  span: number,
  rise: number | null,
  ends: Ends,
  segments: readonly number[],
])[] = [
  ['segmental', 36, 8, 'legs', [3]],
  ['half round', 36, null, 'radial', [4]],
  ['elliptical', 42, 14, 'radial', [2, 2, 2]],
  ['three-centered', 42, 14, 'radial', [2, 2, 2]],
  ['pointed', 36, 30, 'radial', [2, 2]],
  ['quarter round', 24, null, 'radial', [2]],
  ['round', 30, null, 'radial', [6]],
  ['straight', 36, null, 'legs', []],
];

function sure<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

function elevationOf(
  shape: HeadShape,
  span: number,
  rise: number | null,
  ends: Ends,
  segments: readonly number[],
  more: Partial<ElevationFigures> = {},
): Scene {
  const head = sure(makeHead(shape, span, rise));
  return sure(elevationScene({ head, reveal: REVEAL, face: FACE, ends, segments, leg: 80, unit: 'in', ...more }));
}

/** Every head in a cell of its own, without dimensions, its name below. */
function headsPicture(): Scene {
  const [wide, high, name] = [10, 8, 0.55];
  const shapes = HEADS.flatMap(([shape, span, rise, ends, segments], index): Shape[] => {
    const own = elevationOf(shape, span, rise, ends, segments, { leg: shape === 'round' ? 0 : 12 });
    const drawn = explode(own.shapes).filter(({ layer }) => !['dimension', 'label', 'spring'].includes(layer));
    const box = bounds(drawn);
    const factor = Math.min((wide - 1.4) / (box.right - box.left), (high - 2) / (box.top - box.bottom));
    const [left, foot] = [(index % 4) * wide, -Math.floor(index / 4) * high];
    return [
      ...scaled(drawn, factor, {
        x: left + wide / 2 - ((box.left + box.right) / 2) * factor,
        y: foot - box.bottom * factor,
      }),
      text({ x: left + wide / 2, y: foot - 1.1 }, shape, name),
    ];
  });
  return {
    title: 'The heads of openings',
    description: `Eight openings with their casings: ${HEADS.map(([shape]) => shape).join(', ')}.`,
    unit: 'in',
    shapes,
  };
}

const PICTURES: Readonly<Record<string, () => string>> = {
  heads: () => screen(headsPicture()),
  'opening-segmental': () => screen(elevationOf('segmental', 36, 8, 'legs', [3])),
  'opening-elliptical': () => screen(elevationOf('elliptical', 72, 20, 'radial', [2, 3, 2])),
  'opening-pointed': () => screen(elevationOf('pointed', 36, 30, 'radial', [2, 2])),
  ring: () => screen(sure(ringScene(RING))),
  'board-mitered': () => screen(sure(miteredLayoutScene({ ...RING, kerf: 0.125, boardWidth: 5.5, boardLength: 96 }))),
  'board-nested': () =>
    screen(sure(nestedLayoutScene({ ...RING, segments: 5, kerf: 0.125, boardWidth: 9.25, boardLength: 48 }))),
  'guide-boards': () => screen(sure(guideScene(BOARDS))),
  'guide-overview': () => toSvg(sure(guideOverview(BOARDS)), { size: 'true size', page: LETTER_PAGE, ownColors: true }),
};

function screen(scene: Scene): string {
  return toSvg(scene, { ownColors: true });
}

mkdirSync(HERE, { recursive: true });
for (const [name, draw] of Object.entries(PICTURES)) writeFileSync(`${HERE}${name}.svg`, `${draw()}\n`);
console.log(`${Object.keys(PICTURES).length} pictures written`);
