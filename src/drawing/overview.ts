import { ok, type Result } from '../result';
import { perInch } from '../unit';
import { lengthText } from '../lengthText';
import { bounds, type Bounds } from './bounds';
import { explode } from './dimension';
import { guideLayout, guideOrdinates, laidOutByOrdinates, ordinateStep, type GuideBoards } from './guideLayout';
import { guideScene } from './guideScene';
import { radiusText } from './figureText';
import { scaled } from './scaled';
import { line, text, type Scene, type Shape } from './scene';
import { shortList, wrap } from './words';

/** A letter-size sheet, upright, in inches. */
export const LETTER_PAGE: Bounds = { left: 0, bottom: 0, right: 8.5, top: 11 };

const MARGIN = 0.6;
const SMALL = 0.105;
const ROW = 0.21;
/** More rows would leave no room for the picture; the file of ordinates has them all. */
const SHOWN_ORDINATES = 16;
/** Scales a person can work with: one on paper to so many of the real thing. */
const SCALES = [1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 50, 64, 80, 100];

/** The pair on one letter-size sheet: its figures in words, the picture scaled to fit, ordinates where they are needed. */
export function guideOverview(boards: GuideBoards): Result<Scene> {
  const scene = guideScene(boards);
  if (!scene.ok) return scene;
  const layout = guideLayout(boards);
  if (!layout.ok) return layout;
  const { inside, outside, blankWidth, bedLine, clearance, straight } = layout.value;
  const { unit, radius, face } = boards;
  const length = (value: number) => lengthText(value, unit, 32);
  const facts = [
    ['Openings', shortList(boards.marks, 30) || 'none named'],
    ['Profile', boards.profile],
    ['Molding', `${length(face)} wide, inside radius ${length(radius)}, outside radius ${length(radius + face)}`],
    ['Blank', `${length(blankWidth)} wide; it slides with ${length(clearance)} clear on each edge`],
    [
      'Guide arcs',
      `inside guide R ${radiusText(inside.radius, unit)}, outside guide R ${radiusText(outside.radius, unit)}` +
        (straight ? `; as good as straight over ${length(2 * inside.halfLength)}` : ''),
    ],
    ['Thin edge', `${boards.thinEdge} edge of the radius`],
    ['Bed lines', `${length(bedLine)} on each side of the center line`],
  ] as const;
  const shapes: Shape[] = [text({ x: MARGIN, y: 10.2 }, 'Guide boards', 0.2, 'start')];
  let y = 9.8;
  for (const [name, said] of facts) {
    shapes.push(text({ x: MARGIN, y }, name, SMALL, 'start'));
    for (const words of wrap(said, LETTER_PAGE.right - 2.15 - MARGIN, SMALL, 4)) {
      shapes.push(text({ x: 2.15, y }, words, SMALL, 'start'));
      y -= ROW;
    }
  }
  const table = ordinateTable(boards, Math.max(inside.halfLength, outside.halfLength));
  if (!table.ok) return table;
  const bottom = MARGIN + table.value.height + 0.3;
  const box = bounds(explode(scene.value.shapes));
  const inch = perInch(unit);
  const room = { width: LETTER_PAGE.right - 2 * MARGIN, height: y - 0.35 - bottom };
  const needed = Math.max((box.right - box.left) / inch / room.width, (box.top - box.bottom) / inch / room.height);
  const scale = SCALES.find((each) => each >= needed) ?? Math.ceil(needed);
  const factor = 1 / scale / inch;
  const left = (LETTER_PAGE.right - (box.right - box.left) * factor) / 2;
  const top = y - 0.35 - (room.height - (box.top - box.bottom) * factor) / 2;
  shapes.push(
    ...scaled(scene.value.shapes, factor, { x: left - box.left * factor, y: top - box.top * factor }),
    line('dimension', { x: MARGIN, y: y - 0.05 }, { x: LETTER_PAGE.right - MARGIN, y: y - 0.05 }),
    ...table.value.shapes,
    text(
      { x: MARGIN, y: MARGIN },
      `Scale 1:${scale}. Not for tracing: print the full-size drawing at 100 percent.`,
      SMALL,
      'start',
    ),
  );
  return ok({ title: scene.value.title, description: scene.value.description, unit: 'in', shapes });
}

/** Heights of both arcs over the straight line between their ends, for radii beyond a trammel; as many as the page has room for. */
function ordinateTable(boards: GuideBoards, halfLength: number): Result<{ height: number; shapes: Shape[] }> {
  if (!laidOutByOrdinates(boards)) return ok({ height: 0, shapes: [] });
  const step = ordinateStep(boards.unit);
  const found = guideOrdinates(boards, step * Math.ceil(halfLength / step / SHOWN_ORDINATES));
  if (!found.ok) return found;
  // Each arc with its own distances: a tight one ends before the other.
  const columns = found.value.flatMap(({ guide, rows }) => [
    ['from center line', ...rows.map(([x]) => lengthText(x, boards.unit, 32))],
    [`${guide} guide`, ...rows.map(([, height]) => height.toFixed(4))],
  ]);
  // A row for the heading, and one between it and the picture.
  const height = (Math.max(...columns.map((cells) => cells.length)) + 2) * ROW;
  const top = MARGIN + 0.3 + height - 2 * ROW;
  const heading = 'Ordinates: height of each arc over the straight line between its ends';
  const cells = columns.flatMap((column, at) =>
    column.map((cell, row) => text({ x: 2.1 + at * 1.6, y: top - row * ROW }, cell, SMALL, 'end')),
  );
  return ok({ height, shapes: [text({ x: MARGIN, y: top + ROW * 0.9 }, heading, SMALL, 'start'), ...cells] });
}
