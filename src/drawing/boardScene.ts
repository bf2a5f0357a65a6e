import type { BoardsAlike, Row } from '../boards/order';
import { lengthText } from '../lengthText';
import type { WoodBoards } from '../takeoff/boards';
import { partLength, partWidth, type WoodPart } from '../takeoff/woodParts';
import type { Unit } from '../unit';
import { dimension, line, polygon, text, type Point, type Scene, type Shape } from './scene';

/** Heights of a letter along the board. */
const LETTERS_ALONG = 70;

/**
 * Boards cut alike as a drawing: the trims, the crosscut, lanes and rows with every piece as it lies, and what is left. Pieces bear
 * the number of their part in the plan's list. `endTrim` is what comes off each end.
 */
export function boardScene(alike: BoardsAlike, plan: WoodBoards, endTrim: number, unit: Unit): Scene {
  const { width, length } = plan.sale[alike.board]!;
  const letters = length / LETTERS_ALONG;
  const shown = (value: number) => lengthText(value, unit);
  const shapes: Shape[] = [polygon('board', box(0, 0, length, width))];
  if (endTrim > 0) shapes.push(cutAcross(endTrim, width), cutAcross(length - endTrim, width));
  const usedParts = new Set<number>();
  for (const [at, section] of alike.sections.entries()) {
    const end = section.at + section.length;
    if (at > 0) shapes.push(cutAcross(section.at, width));
    if (section.lanes.length > 1) {
      shapes.push(cutAcross(end, width));
      for (const lane of section.lanes)
        shapes.push(polygon('grain', box(section.at, lane.at, section.length, lane.width), false));
    }
    for (const lane of section.lanes) {
      for (const row of lane.rows) shapes.push(...rowShapes(row, lane.at, plan, letters, usedParts));
      if (lane.left > 4 * letters) {
        const x = end - lane.left / 2;
        shapes.push(text({ x, y: lane.at + lane.width / 2 - letters / 2 }, `${shown(lane.left)} left`, letters));
      }
    }
    const said = { value: section.length, text: shown(section.length), height: letters };
    shapes.push(dimension('x', { x: section.at, y: 0 }, { x: end, y: 0 }, -2.2 * letters, said));
  }
  if (alike.left > 4 * letters) {
    const x = length - endTrim - alike.left / 2;
    shapes.push(text({ x, y: width / 2 - letters / 2 }, `${shown(alike.left)} left`, letters));
  }
  const across = { value: width, text: shown(width), height: letters };
  shapes.push(dimension('y', { x: length, y: 0 }, { x: length, y: width }, length + 1.8 * letters, across));
  const boards = alike.count === 1 ? '1 board' : `${alike.count} boards`;
  return {
    title: `${boards} ${plan.species} ${shown(width)} × ${shown(length)}, cut alike`,
    description: `${sectionWords(alike, unit)} ${[...usedParts]
      .sort((a, b) => a - b)
      .map((at) => partWords(at, plan.parts[at]!.part, unit))
      .join('; ')}.`,
    unit,
    shapes,
  };
}

/** What the numbers on the pieces stand for: `1: 18 7/8 by 4 1/4 (W1)`. */
export function boardLegend(plan: WoodBoards, unit: Unit): string[] {
  return plan.parts.map(({ part }, at) => partWords(at, part, unit));
}

function partWords(at: number, part: WoodPart, unit: Unit): string {
  const size = `${lengthText(partLength(part.shape), unit)} by ${lengthText(partWidth(part.shape), unit)}`;
  return `${at + 1}: ${size} (${part.for})`;
}

function sectionWords({ sections }: BoardsAlike, unit: Unit): string {
  const ripped = sections.find(({ lanes }) => lanes.length > 1);
  if (ripped === undefined) return 'The whole board keeps its width.';
  const lanes = ripped.lanes.map(({ width }) => lengthText(width, unit)).join(', ');
  const rest = sections.length > 1 ? ' The rest keeps its width.' : '';
  return `${lengthText(ripped.length, unit)} ripped into lanes ${lanes} wide.${rest}`;
}

function rowShapes(row: Row, laneAt: number, plan: WoodBoards, letters: number, used: Set<number>): Shape[] {
  return row.pieces.flatMap(({ part: at, at: left, flipped }): Shape[] => {
    const { part } = plan.parts[at]!;
    used.add(at);
    const long = partLength(part.shape);
    const width = partWidth(part.shape);
    const short = part.shape.kind === 'straight' ? long : 2 * part.shape.ring.inside * Math.sin(part.shape.half);
    const inset = (long - short) / 2;
    const [down, up] = flipped ? [laneAt + width, laneAt] : [laneAt, laneAt + width];
    const corners = [
      { x: left, y: down },
      { x: left + long, y: down },
      { x: left + long - inset, y: up },
      { x: left + inset, y: up },
    ];
    return [
      polygon('blank', corners),
      text({ x: left + long / 2, y: laneAt + width / 2 - letters / 2 }, String(at + 1), letters),
    ];
  });
}

function cutAcross(x: number, width: number): Shape {
  return line('joint', { x, y: 0 }, { x, y: width });
}

function box(x: number, y: number, length: number, width: number): Point[] {
  return [
    { x, y },
    { x: x + length, y },
    { x: x + length, y: y + width },
    { x, y: y + width },
  ];
}
