import { degrees, polar } from '../src/angle';
import { arcAngle, arcRadius } from '../src/arc';
import { blankLength } from '../src/blank/length';
import { nestPitch } from '../src/blank/nest';
import { halfSegment, ring } from '../src/blank/ring';
import { blankWidth } from '../src/blank/width';
import { roundSteps } from '../src/drawing/roundSteps';
import {
  arc,
  dimension,
  leader,
  line,
  outline,
  polygon,
  text,
  type Figure,
  type Layer,
  type Point,
  type Scene,
  type Shape,
} from '../src/drawing/scene';
import { sector } from '../src/drawing/segment';
import { headsPicture } from './headsPicture';
import { sure } from './sure';

/** The drawings of the pages, worked out by the functions they explain. */
export const PICTURES: Readonly<Record<string, () => Scene>> = {
  arc: arcPicture,
  ends: endsPicture,
  miter: miterPicture,
  blank: blankPicture,
  nest: nestPicture,
  guides: guidesPicture,
  heads: headsPicture,
};

/** Which drawing explains which function. */
export const PICTURE_OF: Readonly<Record<string, keyof typeof PICTURES>> = {
  RADIUS: 'arc',
  HEADLENGTH: 'ends',
  MITER: 'miter',
  BLANKWIDTH: 'blank',
  NEST: 'nest',
  GUIDES: 'guides',
};

const SPAN = 36;
const RISE = 6;
const RADIUS = sure(arcRadius(SPAN, RISE));
const TURN = sure(arcAngle(SPAN, RISE));
const CENTER: Point = { x: 0, y: RISE - RADIUS };
const LETTERS = 0.9;

/** A figure that only has a name here. */
function named(text: string, height = LETTERS): Figure {
  return { value: 0, text, height };
}

/** The arc about `center`, its axis up, through `turn` degrees. */
function upright(layer: Layer, center: Point, radius: number, turn: number): Shape {
  return arc(layer, center, radius, 90 - turn / 2, 90 + turn / 2);
}

function arcPicture(): Scene {
  const [left, right] = [
    { x: -SPAN / 2, y: 0 },
    { x: SPAN / 2, y: 0 },
  ];
  return {
    title: 'Span, rise, radius and angle of an arc',
    description: 'An arc over its spring line, with span, rise, radius, angle and two ordinates marked.',
    unit: 'in',
    shapes: [
      upright('casing', CENTER, RADIUS, TURN),
      line('spring', { x: left.x - 2, y: 0 }, { x: right.x + 2, y: 0 }),
      line('center', CENTER, { x: 0, y: RISE + 1 }),
      line('center', CENTER, left),
      line('center', CENTER, right),
      ...[9, 13.5].map((x) => line('fit', { x, y: 0 }, { x, y: CENTER.y + Math.sqrt(RADIUS ** 2 - x ** 2) })),
      text({ x: 10.8, y: -1.7 }, 'ordinates', LETTERS),
      dimension('x', left, right, -4, named('span')),
      dimension('y', { x: 0, y: 0 }, { x: 0, y: RISE }, -6, named('rise')),
      text({ x: -10.2, y: -11 }, 'radius', LETTERS, 'middle', 53),
      upright('dimension', CENTER, 5, TURN),
      text({ x: 0.5, y: CENTER.y + 6 }, 'angle', LETTERS, 'start'),
    ],
  };
}

function endsPicture(): Scene {
  const offset = 3.5;
  const outside = RADIUS + offset;
  const stops = [
    { words: 'radial', turn: TURN },
    { words: 'level', turn: 2 * degrees(Math.acos((RADIUS - RISE) / outside)) },
    { words: 'legs', turn: 2 * degrees(Math.asin((SPAN / 2 + offset) / outside)) },
  ];
  return {
    title: 'Three ways for the outside edge to end',
    description: 'The same casing three times: ends on the radial lines, on the spring line, and mitered to legs.',
    unit: 'in',
    shapes: stops.flatMap(({ words, turn }, at): Shape[] => {
      const center = { x: at * 52, y: CENTER.y };
      const [inLeft, inRight] = [polar(center, RADIUS, 90 + TURN / 2), polar(center, RADIUS, 90 - TURN / 2)];
      const [left, right] = [polar(center, outside, 90 + turn / 2), polar(center, outside, 90 - turn / 2)];
      const legs = [-1, 1].map((side) => {
        const x = center.x + (side * SPAN) / 2;
        return polygon('leg', [
          { x, y: 0 },
          { x: x + side * offset, y: words === 'legs' ? left.y : 0 },
          { x: x + side * offset, y: -7 },
          { x, y: -7 },
        ]);
      });
      return [
        outline('casing', left, [
          ...roundSteps(center, outside, 90 + turn / 2, 90 - turn / 2),
          { to: inRight },
          ...roundSteps(center, RADIUS, 90 - TURN / 2, 90 + TURN / 2),
          { to: left },
        ]),
        ...(words === 'legs' ? legs : []),
        line('joint', inLeft, left),
        line('joint', inRight, right),
        line('spring', { x: center.x - 24, y: 0 }, { x: center.x + 24, y: 0 }),
        text({ x: center.x, y: -12 }, words, 3),
      ];
    }),
  };
}

function miterPicture(): Scene {
  const [face, reveal] = [3.5, 0.5];
  const corner = (offset: number): Point => {
    const x = SPAN / 2 + offset;
    return { x, y: CENTER.y + Math.sqrt((RADIUS + offset) ** 2 - x ** 2) };
  };
  const [inner, outer] = [corner(reveal), corner(reveal + face)];
  const back = 20;
  const direction = (corner: Point) => degrees(Math.atan2(corner.y - CENTER.y, corner.x));
  return {
    title: 'The joint between leg and head',
    description: 'Close-up of a leg meeting the head: the joint runs from the inside corner to the outside corner.',
    unit: 'in',
    shapes: [
      outline('casing', polar(CENTER, RADIUS + reveal + face, direction(outer) + back), [
        ...roundSteps(CENTER, RADIUS + reveal + face, direction(outer) + back, direction(outer)),
        { to: inner },
        ...roundSteps(CENTER, RADIUS + reveal, direction(inner), direction(inner) + back),
        { to: polar(CENTER, RADIUS + reveal + face, direction(outer) + back) },
      ]),
      polygon('leg', [inner, outer, { x: outer.x, y: -6 }, { x: inner.x, y: -6 }]),
      line('joint', inner, outer),
      line('fit', inner, { x: outer.x + 1.5, y: inner.y }),
      arc('dimension', inner, 3, 0, degrees(Math.atan2(outer.y - inner.y, outer.x - inner.x))),
      line('opening', { x: SPAN / 2, y: 0 }, { x: SPAN / 2, y: -6 }),
      arc('opening', CENTER, RADIUS, 90 - TURN / 2, 90 - TURN / 2 + 16),
      leader(polar(inner, 3, 12), { x: outer.x + 1, y: 4 }, named('miter', 0.5)),
      dimension('x', { x: inner.x, y: -6 }, { x: outer.x, y: -6 }, -7.2, named('face', 0.5)),
      leader({ x: SPAN / 2 + reveal / 2, y: -4 }, { x: SPAN / 2 - 2.5, y: -3 }, named('reveal', 0.5)),
    ],
  };
}

function blankPicture(): Scene {
  const [radius, face, angle, count] = [18, 3.5, 180, 4];
  const of = sure(ring(radius, face, 0));
  const turn = angle / count;
  const width = sure(blankWidth(radius, face, angle, count));
  const mitered = sure(blankLength(radius, face, angle, count));
  const [top, foot] = [of.outside, of.outside - width];
  const board = (length: number) => {
    const slope = width * Math.tan(halfSegment(angle, count));
    return [
      { x: -length / 2, y: top },
      { x: length / 2, y: top },
      { x: length / 2 - slope, y: foot },
      { x: -length / 2 + slope, y: foot },
    ];
  };
  return {
    title: 'One segment in its board',
    description: 'A ring segment in a mitered board, with the board width and both board lengths marked.',
    unit: 'in',
    shapes: [
      polygon('board', board(mitered)),
      sector('casing', of, 90, turn / 2),
      line('center', { x: 0, y: foot - 1 }, { x: 0, y: top + 1 }),
      dimension(
        'y',
        { x: mitered / 2, y: foot },
        { x: mitered / 2, y: top },
        mitered / 2 + 1.6,
        named('BLANKWIDTH', 0.5),
      ),
      dimension(
        'x',
        { x: -mitered / 2, y: top },
        { x: mitered / 2, y: top },
        top + 2.6,
        named('BLANKLENGTH, "miter"', 0.5),
      ),
      dimension(
        'x',
        polar({ x: 0, y: 0 }, of.outside, 90 + turn / 2),
        polar({ x: 0, y: 0 }, of.outside, 90 - turn / 2),
        foot - 1.4,
        named('BLANKLENGTH, "sawn"', 0.5),
      ),
    ],
  };
}

function nestPicture(): Scene {
  const [radius, face, angle, count, kerf, board] = [18, 3.5, 180, 4, 0.35, 13.25];
  const of = sure(ring(radius, face, 0));
  const half = halfSegment(angle, count);
  const width = sure(blankWidth(radius, face, angle, count));
  const pitch = nestPitch(of, half, kerf);
  const foot = of.outside - width;
  return {
    title: 'Sawn segments above one another in a board',
    description: 'Three segments stand above one another across a board, the kerf clear between their nearest points.',
    unit: 'in',
    shapes: [
      polygon('board', [
        { x: -11, y: foot },
        { x: 11, y: foot },
        { x: 11, y: foot + board },
        { x: -11, y: foot + board },
      ]),
      ...[0, 1, 2].map((row) => sector('casing', of, 90, angle / count / 2, { x: 0, y: row * pitch })),
      dimension('y', { x: 0, y: of.outside }, { x: 0, y: of.outside + pitch }, 1, named('pitch', 0.5)),
      dimension('y', { x: 11, y: foot }, { x: 11, y: foot + board }, 12.6, named('board_width', 0.5)),
      leader(
        polar({ x: 0, y: pitch }, of.inside - kerf / 2, 90 - angle / count / 2 + 0.5),
        { x: 9.6, y: foot - 1 },
        named('kerf clear here', 0.5),
      ),
    ],
  };
}

function guidesPicture(): Scene {
  const [radius, face, margin, clearance, turn] = [18, 3.5, 0.5, 0.4, 40];
  const center = { x: 0, y: 0 };
  const [inside, outside] = [radius - margin - clearance, radius + face + margin + clearance];
  return {
    title: 'The guides and the blank between them',
    description: 'A blank slides between an inside guide and an outside guide with a little clearance on each edge.',
    unit: 'in',
    shapes: [
      sector('guide', { inside: outside, outside: outside + 2.5 }, 90, turn / 2),
      sector('guide', { inside: inside - 2.5, outside: inside }, 90, turn / 2),
      sector('blank', { inside: radius - margin, outside: radius + face + margin }, 90, turn / 2 + 5),
      sector('casing', { inside: radius, outside: radius + face }, 90, turn / 2 + 5),
      text({ x: 0, y: outside + 1 }, 'outside guide', 0.5),
      text({ x: 0, y: inside - 1.5 }, 'inside guide', 0.5),
      text({ x: 0, y: radius + face / 2 }, 'molding', 0.5),
      leader(polar(center, outside - clearance / 2, 78), { x: 8.5, y: 26 }, named('clearance', 0.5)),
      leader(polar(center, radius + face + margin / 2, 66), { x: 12, y: 23.5 }, named('margin', 0.5)),
    ],
  };
}
