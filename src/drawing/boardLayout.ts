import { degrees } from '../angle';
import { blankLength, type Cut } from '../blank/length';
import { nest, nestPitch } from '../blank/nest';
import { EQUAL_WITHIN, segmentOf, type Ring } from '../blank/ring';
import { flippedRow } from '../blank/rows';
import { blankWidth } from '../blank/width';
import { lengthText } from '../lengthText';
import { notNegative, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Unit } from '../unit';
import { degreesText } from './figureText';
import { dimension, polygon, text, type Scene, type Shape } from './scene';
import { segmentShapes } from './segment';

/** Segments of one ring on one board. */
export interface BoardLayoutFigures {
  readonly radius: number;
  readonly face: number;
  readonly angle: number;
  readonly segments: number;
  readonly margin?: number;
  /** Saw kerf between pieces; default 0. */
  readonly kerf?: number;
  readonly boardWidth: number;
  readonly boardLength: number;
  readonly unit: Unit;
}

/** Heights of a letter along the board. */
const LETTERS_ALONG = 60;

interface Prepared {
  readonly of: Ring;
  /** Half of one segment's angle, in radians. */
  readonly half: number;
  /** Of the board one segment takes. */
  readonly width: number;
  readonly length: number;
  /** Board length up to which a piece is said to fit: rounding must not leave one out. */
  readonly end: number;
  readonly letters: number;
}

function prepare(figures: BoardLayoutFigures, cut: Cut): Result<Prepared> {
  const { radius, face, angle, segments, margin = 0, kerf = 0, boardWidth, boardLength, unit } = figures;
  const width = blankWidth(radius, face, angle, segments, margin);
  if (!width.ok) return width;
  const length = blankLength(radius, face, angle, segments, margin, cut);
  if (!length.ok) return length;
  const segment = segmentOf(radius, face, margin, angle, segments);
  if (!segment.ok) return segment;
  const { of, half } = segment.value;
  const refusal =
    notNegative('kerf', kerf) ?? positive('board width', boardWidth) ?? positive('board length', boardLength);
  if (refusal) return refusal;
  const slack = EQUAL_WITHIN * of.outside;
  const end = boardLength + slack;
  if (boardWidth + slack < width.value || end < length.value) {
    return refuse(
      `board must be at least ${lengthText(width.value, unit)} by ${lengthText(length.value, unit)} for one segment; ` +
        `got ${lengthText(boardWidth, unit)} by ${lengthText(boardLength, unit)}`,
    );
  }
  return ok({
    of,
    half,
    width: width.value,
    length: length.value,
    end,
    letters: boardLength / LETTERS_ALONG,
  });
}

/** Mitered segments end to end along a board, every other one flipped so that two share each cut. */
export function miteredLayoutScene(figures: BoardLayoutFigures): Result<Scene> {
  const prepared = prepare(figures, 'miter');
  if (!prepared.ok) return prepared;
  const { of, half, width, length, end, letters } = prepared.value;
  const { unit, kerf = 0 } = figures;
  const row = flippedRow(of, half, kerf);
  if (row === null) return refuse(`segments of ${degreesText(2 * degrees(half))} can't be mitered`);
  const short = length - 2 * width * Math.tan(half);
  const shapes: Shape[] = [boardShape(figures)];
  let count = 0;
  for (let left = 0; count < figures.segments && left + length <= end; left += row.step, count++) {
    const flipped = count % 2 === 1;
    const [base, crown] = flipped ? [short, length] : [length, short];
    const middle = left + length / 2;
    const center = { x: middle, y: flipped ? width - of.outside : of.outside };
    shapes.push(
      polygon('blank', [
        { x: middle - base / 2, y: 0 },
        { x: middle + base / 2, y: 0 },
        { x: middle + crown / 2, y: width },
        { x: middle - crown / 2, y: width },
      ]),
      ...segmentShapes(of, flipped ? 90 : 270, half, center),
      text({ x: middle, y: width / 2 - letters / 2 }, String(count + 1), letters),
    );
  }
  const used = length + (count - 1) * row.step;
  shapes.push(
    alongBoard(figures, 'one board ', length, -2 * letters, letters),
    alongBoard(figures, `${count} flipped in turn `, used, -4.4 * letters, letters),
    boardWidthDimension(figures, letters),
  );
  return ok({
    title: `Mitered segments on a board ${lengthText(figures.boardWidth, unit)} wide`,
    description: `${count} mitered segments ${lengthText(length, unit)} long, every other one flipped, take ${lengthText(used, unit)} of the board.`,
    unit,
    shapes,
  });
}

/** Segments sawn to the ring before gluing, nested above one another, grain along the chord. */
export function nestedLayoutScene(figures: BoardLayoutFigures): Result<Scene> {
  const prepared = prepare(figures, 'sawn');
  if (!prepared.ok) return prepared;
  const { of, half, width, length, end, letters } = prepared.value;
  const { radius, face, angle, segments, margin, kerf = 0, boardWidth, unit } = figures;
  const rows = nest(radius, face, angle, segments, boardWidth, margin, kerf);
  if (!rows.ok) return rows;
  const pitch = nestPitch(of, half, kerf);
  const shapes: Shape[] = [boardShape(figures)];
  let count = 0;
  for (let left = 0; count < segments && left + length <= end; left += length + kerf) {
    for (let row = 0; row < rows.value && count < segments; row++) {
      count++;
      const center = { x: left + length / 2, y: width - of.outside + row * pitch };
      shapes.push(
        ...segmentShapes(of, 90, half, center),
        text({ x: center.x, y: center.y + (of.inside + of.outside) / 2 - letters / 2 }, String(count), letters),
      );
    }
  }
  shapes.push(
    alongBoard(figures, 'one segment ', length, -2 * letters, letters),
    boardWidthDimension(figures, letters),
  );
  if (rows.value > 1) {
    const x = length / 2;
    const said = { value: pitch, text: lengthText(pitch, unit), height: letters };
    shapes.push(dimension('y', { x, y: width }, { x, y: width + pitch }, -2 * letters, said, 'left'));
  }
  return ok({
    title: `Nested segments on a board ${lengthText(boardWidth, unit)} wide`,
    description: `${count} segments sawn to the ring, ${rows.value} above one another, each ${lengthText(length, unit)} long.`,
    unit,
    shapes,
  });
}

function boardShape({ boardLength, boardWidth }: BoardLayoutFigures): Shape {
  return polygon('board', [
    { x: 0, y: 0 },
    { x: boardLength, y: 0 },
    { x: boardLength, y: boardWidth },
    { x: 0, y: boardWidth },
  ]);
}

/** From the board's left end, below it. */
function alongBoard({ unit }: BoardLayoutFigures, name: string, value: number, at: number, height: number): Shape {
  const said = { value, text: name + lengthText(value, unit), height };
  return dimension('x', { x: 0, y: 0 }, { x: value, y: 0 }, at, said);
}

function boardWidthDimension({ boardLength: x, boardWidth, unit }: BoardLayoutFigures, height: number): Shape {
  const said = { value: boardWidth, text: lengthText(boardWidth, unit), height };
  return dimension('y', { x, y: 0 }, { x, y: boardWidth }, x + 1.8 * height, said);
}
