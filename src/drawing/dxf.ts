import { perInch, unitName } from '../unit';
import { explode } from './dimension';
import { LAYERS } from './layers';
import { arcOfStep } from './roundSteps';
import type { Outline, Point, Primitive, Scene } from './scene';

/**
 * A scene as an ASCII DXF file of release 12 (AC1009), which old and new drawing and router programs read: entities LINE, ARC,
 * CIRCLE, POLYLINE and TEXT only, group codes as Autodesk published them for that release. Coordinates are the real
 * thing's in the scene's unit, stated in the header ($INSUNITS 1 inches, 4 millimeters) and in a comment on top.
 */
export function toDxf(scene: Scene): string {
  const shapes = explode(scene.shapes);
  const groups: Group[] = [
    [999, `${plain(scene.title)}. Units: ${unitName(scene.unit)}, full size`],
    ...section('HEADER', header(scene)),
    ...section('TABLES', [...lineTypes(scene), ...layers(shapes), ...textStyle()]),
    ...section('ENTITIES', shapes.flatMap(entity)),
    [0, 'EOF'],
  ];
  return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
}

type Group = readonly [code: number, value: string | number];

function section(name: string, content: readonly Group[]): Group[] {
  return [[0, 'SECTION'], [2, name], ...content, [0, 'ENDSEC']];
}

function header({ unit }: Scene): Group[] {
  return [
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$INSUNITS'],
    [70, unit === 'in' ? 1 : 4],
    [9, '$MEASUREMENT'],
    [70, unit === 'in' ? 0 : 1],
  ];
}

function table(name: string, entries: readonly (readonly Group[])[]): Group[] {
  return [[0, 'TABLE'], [2, name], [70, entries.length], ...entries.flat(), [0, 'ENDTAB']];
}

/** Dash lengths in drawing units. */
function lineTypes({ unit }: Scene): Group[] {
  const inch = perInch(unit);
  const entry = (name: string, shown: string, dashes: readonly number[]): Group[] => [
    [0, 'LTYPE'],
    [2, name],
    [70, 0],
    [3, shown],
    [72, 65],
    [73, dashes.length],
    [40, decimal(dashes.reduce((sum, dash) => sum + Math.abs(dash) * inch, 0))],
    ...dashes.map((dash): Group => [49, decimal(dash * inch)]),
  ];
  return table('LTYPE', [
    entry('CONTINUOUS', 'Solid line', []),
    entry('DASHED', '__ __ __ __', [0.25, -0.125]),
    entry('CENTER', '____ _ ____ _', [0.75, -0.125, 0.125, -0.125]),
  ]);
}

function layers(shapes: readonly Primitive[]): Group[] {
  const used = LAYERS.filter(({ layer }) => shapes.some((shape) => shape.layer === layer));
  return table('LAYER', [
    [
      [0, 'LAYER'],
      [2, '0'],
      [70, 0],
      [62, 7],
      [6, 'CONTINUOUS'],
    ],
    ...used.map(({ layer, color, lineType }): Group[] => [
      [0, 'LAYER'],
      [2, layer.toUpperCase()],
      [70, 0],
      [62, color],
      [6, lineType],
    ]),
  ]);
}

function textStyle(): Group[] {
  return table('STYLE', [
    [
      [0, 'STYLE'],
      [2, 'STANDARD'],
      [70, 0],
      [40, '0.0'],
      [41, '1.0'],
      [50, '0.0'],
      [71, 0],
      [42, '0.2'],
      [3, 'txt'],
      [4, ''],
    ],
  ]);
}

function entity(shape: Primitive): Group[] {
  const on: Group = [8, shape.layer.toUpperCase()];
  switch (shape.kind) {
    case 'line':
      return lineEntity(on, shape.from, shape.to);
    case 'circle':
      return [[0, 'CIRCLE'], on, ...at(shape.center), [40, decimal(shape.radius)]];
    case 'arc':
      // A full turn is a circle: an ARC from an angle to itself is read as nothing.
      return shape.end - shape.start >= 360
        ? entity({ ...shape, kind: 'circle' })
        : arcEntity(on, shape.center, shape.radius, shape.start, shape.end);
    case 'polyline':
      return polylineEntity(on, shape.points, shape.closed);
    case 'outline': {
      // Without arcs it is one closed polyline: easier to pick and to follow than its edges.
      if (shape.steps.every((step) => !step.round)) {
        return polylineEntity(on, corners(shape), true);
      }
      let from = shape.start;
      return shape.steps.flatMap(({ to, round }) => {
        const start = from;
        from = to;
        if (!round) return lineEntity(on, start, to);
        const { radius, start: first, end } = arcOfStep(start, to, round);
        return arcEntity(on, round.center, radius, first, end);
      });
    }
    case 'text': {
      const align = { start: 0, middle: 1, end: 2 }[shape.anchor];
      return [
        [0, 'TEXT'],
        on,
        ...at(shape.at),
        [40, decimal(shape.height)],
        [1, plain(shape.text)],
        [50, decimal(shape.turned)],
        ...(align === 0 ? [] : [[72, align] as Group, ...at(shape.at, 1)]),
      ];
    }
  }
}

/** Each corner once: the last step returns to the start. */
function corners({ start, steps }: Outline): Point[] {
  const points = [start, ...steps.map((step) => step.to)];
  const last = points.at(-1);
  return last && last.x === start.x && last.y === start.y ? points.slice(0, -1) : points;
}

function lineEntity(on: Group, from: Point, to: Point): Group[] {
  return [[0, 'LINE'], on, ...at(from), ...at(to, 1)];
}

function arcEntity(on: Group, center: Point, radius: number, start: number, end: number): Group[] {
  return [[0, 'ARC'], on, ...at(center), [40, decimal(radius)], [50, decimal(turn(start))], [51, decimal(turn(end))]];
}

function polylineEntity(on: Group, points: readonly Point[], closed: boolean): Group[] {
  return [
    [0, 'POLYLINE'],
    on,
    [66, 1],
    ...at({ x: 0, y: 0 }),
    [70, closed ? 1 : 0],
    ...points.flatMap((point): Group[] => [[0, 'VERTEX'], on, ...at(point)]),
    [0, 'SEQEND'],
    on,
  ];
}

/** A point: codes 10, 20, 30, or 11, 21, 31 for a second one. */
function at({ x, y }: Point, second: 0 | 1 = 0): Group[] {
  return [
    [10 + second, decimal(x)],
    [20 + second, decimal(y)],
    [30 + second, '0.0'],
  ];
}

/** Degrees from 0 up to 360. */
function turn(degrees: number): number {
  return ((degrees % 360) + 360) % 360;
}

/** Twelve decimals, no exponent, always with a decimal point. */
function decimal(value: number): string {
  const written = value.toFixed(12).replace(/(\.\d+?)0+$/, '$1');
  return written === '-0.0' ? '0.0' : written;
}

/** Text a release 12 reader takes: one line, ASCII; degree signs by their code, other characters as \U+XXXX; at most 250. */
function plain(words: string): string {
  const coded = [...words].map((character) => {
    const code = character.codePointAt(0) ?? 0xfffd;
    if (character === '%') return '%%%';
    if (character === '°') return '%%d';
    if (code < 32 || code === 127) return ' ';
    if (code < 127) return character;
    return code > 0xffff ? '?' : `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
  });
  const fits: string[] = [];
  let length = 0;
  for (const part of coded) {
    length += part.length;
    if (length > 250) return fits.join('') + '...';
    fits.push(part);
  }
  return fits.join('');
}
