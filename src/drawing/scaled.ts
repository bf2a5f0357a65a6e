import { explode } from './dimension';
import type { Point, Primitive, Shape } from './scene';

/** Shapes made smaller or larger and then moved; dimensions become lines and words, so that their figures stay. */
export function scaled(shapes: readonly Shape[], factor: number, shift: Point): Primitive[] {
  const at = ({ x, y }: Point): Point => ({ x: x * factor + shift.x, y: y * factor + shift.y });
  return explode(shapes).map((shape): Primitive => {
    switch (shape.kind) {
      case 'line':
        return { ...shape, from: at(shape.from), to: at(shape.to) };
      case 'circle':
      case 'arc':
        return { ...shape, center: at(shape.center), radius: shape.radius * factor };
      case 'polyline':
        return { ...shape, points: shape.points.map(at) };
      case 'text':
        return { ...shape, at: at(shape.at), height: shape.height * factor };
      case 'outline':
        return {
          ...shape,
          start: at(shape.start),
          steps: shape.steps.map(({ to, round }) => ({
            to: at(to),
            ...(round ? { round: { ...round, center: at(round.center) } } : {}),
          })),
        };
    }
  });
}
