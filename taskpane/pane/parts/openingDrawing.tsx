import type { Opening } from '../../../src/schedule/opening';
import type { Standards } from '../../../src/standards';

/** The opening to scale with its casing, or the sentence that says what is missing to draw it. */
export function OpeningDrawing(_: { readonly opening: Opening; readonly standards: Standards }) {
  return null;
}
