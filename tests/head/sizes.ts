import type { HeadShape } from '../../src/head/head';
import type { Random } from '../random';

export interface Sizes {
  readonly span: number;
  readonly rise: number | null;
  readonly haunch: number | null;
}

/** Sizes over the whole of what the head can be. */
export function sizesOf(shape: HeadShape, any: Random): Sizes {
  const span = any.between(8, 200);
  const of = (least: number, most: number, haunch: number | null = null) => ({
    span,
    rise: span * any.between(least, most),
    haunch,
  });
  switch (shape) {
    case 'segmental':
      return of(0.02, 1.4);
    case 'elliptical':
    case 'quarter ellipse':
    case 'full ellipse':
      return of(0.1, 1.5);
    case 'three-centered':
      return of(0.05, 0.49);
    case 'pointed':
      return of(0.51, 2);
    case 'radius corners':
      return of(0.02, 0.49);
    case 'half segmental':
      return of(0.03, 1);
    case 'four-centered': {
      // Haunch radii between the two where the head stops being one.
      const rise = span * any.between(0.15, 0.56);
      const half = span / 2;
      const least = Math.max(0, Math.sqrt(3) * rise - half);
      const most = Math.min(half, ((Math.sqrt(3) + 1) * rise - (Math.sqrt(3) - 1) * half) / 2);
      return { span, rise, haunch: least + (most - least) * any.between(0.05, 0.9) };
    }
    case 'gable':
    case 'shed':
      return of(0.03, 1.5);
    case 'clipped corners':
      return of(0.03, 0.6, span * any.between(0.03, 0.48));
    default:
      return { span, rise: null, haunch: null };
  }
}
