import { blankLength } from '../blank/length';
import { nest, nestPitch } from '../blank/nest';
import { halfSegment, ring, type Ring } from '../blank/ring';
import { blankWidth } from '../blank/width';
import { notNegative, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Unit } from '../unit';
import { lengthText } from '../lengthText';
import { grainLines, sector } from './ring';
import { polygon, text, type Dimension, type Point, type Scene, type Shape } from './scene';

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
  readonly lettersAcross?: number;
}

interface Prepared {
  readonly of: Ring;
  readonly half: number;
  readonly width: number;
  readonly length: number;
  readonly kerf: number;
  readonly letters: number;
}

function prepare(figures: BoardLayoutFigures, cut: 'miter' | 'sawn'): Result<Prepared> {
  const { radius, face, angle, segments, margin = 0, kerf = 0, boardWidth, boardLength, lettersAcross = 60 } = figures;
  const width = blankWidth(radius, face, angle, segments, margin);
  if (!width.ok) return width;
  const length = blankLength(radius, face, angle, segments, margin, cut);
  if (!length.ok) return length;
  const of = ring(radius, face, margin);
  if (!of.ok) return of;
  const refusal =
    notNegative('kerf', kerf) ??
    positive('board width', boardWidth) ??
    positive('board length', boardLength) ??
    positive('letters across', lettersAcross);
  if (refusal) return refusal;
  if (boardWidth < width.value * (1 - 1e-9) || boardLength < length.value * (1 - 1e-9)) {
    return refuse(
      `board must be at least ${lengthText(width.value, figures.unit)} by ${lengthText(length.value, figures.unit)} for one segment; ` +
        `got ${lengthText(boardWidth, figures.unit)} by ${lengthText(boardLength, figures.unit)}`,
    );
  }
  const half = halfSegment(angle, segments);
  return ok({
    of: of.value,
    half,
    width: width.value,
    length: length.value,
    kerf,
    letters: boardLength / lettersAcross,
  });
}

/** Mitered segments end to end along a board, every other one flipped so that two share each cut. */
export function miteredLayoutScene(figures: BoardLayoutFigures): Result<Scene> {
  const prepared = prepare(figures, 'miter');
  if (!prepared.ok) return prepared;
  const { of, half, width, length, kerf, letters } = prepared.value;
  const slant = width * Math.tan(half);
  const short = length - 2 * slant;
  // Along the board a slanting kerf takes more than its width.
  const pitch = length - slant + kerf / Math.cos(half);
  const shapes: Shape[] = [boardShape(figures)];
  let count = 0;
  for (let left = 0; count < figures.segments && left + length <= figures.boardLength + 1e-9; left += pitch, count++) {
    const flipped = count % 2 === 1;
    const [base, crown] = flipped ? [short, length] : [length, short];
    const middle = left + length / 2;
    shapes.push(
      polygon('blank', [
        { x: middle - base / 2, y: 0 },
        { x: middle + base / 2, y: 0 },
        { x: middle + crown / 2, y: width },
        { x: middle - crown / 2, y: width },
      ]),
      ...segment(middle, flipped ? width - of.outside : of.outside, flipped ? 90 : 270, half, of),
      text({ x: middle, y: width / 2 - letters / 2 }, String(count + 1), letters),
    );
  }
  const used = count === 0 ? 0 : (count - 1) * pitch + length;
  shapes.push(
    lengthDimension({ x: 0, y: 0 }, { x: length, y: 0 }, -2 * letters, length, 'one board ', figures.unit, letters),
    lengthDimension(
      { x: 0, y: 0 },
      { x: used, y: 0 },
      -4.4 * letters,
      used,
      `${count} flipped in turn `,
      figures.unit,
      letters,
    ),
    widthDimension(figures, letters),
  );
  return ok({
    title: `Mitered segments on a board ${lengthText(figures.boardWidth, figures.unit)} wide`,
    description: `${count} mitered segments ${lengthText(length, figures.unit)} long, every other one flipped, take ${lengthText(used, figures.unit)} of the board.`,
    unit: figures.unit,
    shapes,
  });
}

/** Segments sawn to the ring before gluing, nested above one another, grain along the chord. */
export function nestedLayoutScene(figures: BoardLayoutFigures): Result<Scene> {
  const prepared = prepare(figures, 'sawn');
  if (!prepared.ok) return prepared;
  const { of, half, width, length, kerf, letters } = prepared.value;
  const { radius, face, angle, segments, boardWidth, boardLength, unit } = figures;
  const rows = nest(radius, face, angle, segments, boardWidth, figures.margin, kerf);
  if (!rows.ok) return rows;
  const pitch = nestPitch(of, half, kerf);
  const shapes: Shape[] = [boardShape(figures)];
  let count = 0;
  for (let left = 0; count < segments && left + length <= boardLength + 1e-9; left += length + kerf) {
    for (let row = 0; row < rows.value && count < segments; row++) {
      count++;
      const center = { x: left + length / 2, y: width - of.outside + row * pitch };
      shapes.push(
        ...segment(center.x, center.y, 90, half, of),
        text({ x: center.x, y: center.y + (of.inside + of.outside) / 2 - letters / 2 }, String(count), letters),
      );
    }
  }
  shapes.push(
    lengthDimension({ x: 0, y: 0 }, { x: length, y: 0 }, -2 * letters, length, 'one segment ', unit, letters),
    widthDimension(figures, letters),
  );
  if (rows.value > 1) {
    const x = length / 2;
    const shown: Dimension = {
      kind: 'dimension',
      layer: 'dimension',
      along: 'y',
      from: { x, y: width },
      to: { x, y: width + pitch },
      line: -2 * letters,
      value: pitch,
      text: lengthText(pitch, unit),
      height: letters,
      beside: 'left',
    };
    shapes.push(shown);
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

function segment(x: number, y: number, direction: number, half: number, of: Ring): Shape[] {
  const center = { x, y };
  return [
    sector('casing', center, direction, (half * 180) / Math.PI, of.inside, of.outside),
    ...grainLines(direction, half, of.inside, of.outside, center),
  ];
}

function lengthDimension(
  from: Point,
  to: Point,
  at: number,
  value: number,
  name: string,
  unit: Unit,
  letters: number,
): Dimension {
  return {
    kind: 'dimension',
    layer: 'dimension',
    along: 'x',
    from,
    to,
    line: at,
    value,
    text: name + lengthText(value, unit),
    height: letters,
  };
}

function widthDimension({ boardLength, boardWidth, unit }: BoardLayoutFigures, letters: number): Dimension {
  return {
    kind: 'dimension',
    layer: 'dimension',
    along: 'y',
    from: { x: boardLength, y: 0 },
    to: { x: boardLength, y: boardWidth },
    line: boardLength + 1.8 * letters,
    value: boardWidth,
    text: lengthText(boardWidth, unit),
    height: letters,
  };
}
