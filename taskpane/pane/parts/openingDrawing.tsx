import { useMemo } from 'preact/hooks';
import type { Opening } from '../../../src/schedule/opening';
import type { Standards } from '../../../src/standards';
import { openingScene } from '../openingFigures';
import { Drawing } from './drawing';

/** The opening to scale with its casing, or the sentence that says what is missing to draw it. */
export function OpeningDrawing({ opening, standards }: { readonly opening: Opening; readonly standards: Standards }) {
  const scene = useMemo(() => openingScene(opening, standards), [opening, standards]);
  return scene.ok ? <Drawing scene={scene.value} /> : <p class="no-drawing soft">{scene.message}</p>;
}
