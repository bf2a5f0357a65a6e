import { polar } from '../angle';
import type { Arc } from './head';

/** Where an arc begins, at its left, and where it ends, x from the center line and y up from the spring line. */
export function leftEnd({ center, radius, start }: Arc): Arc['center'] {
  return polar(center, radius, start);
}

export function rightEnd({ center, radius, start, degrees }: Arc): Arc['center'] {
  return polar(center, radius, start - degrees);
}
