import { useMemo } from 'preact/hooks';
import type { Opening } from '../../../src/schedule/opening';
import type { Standards } from '../../../src/standards';
import { count, onTape } from '../format';
import { openingScene, takeOne } from '../openingFigures';
import { Drawing } from './drawing';

interface OpeningDrawingProps {
  readonly opening: Opening;
  readonly standards: Standards;
  readonly locale?: string | undefined;
}

/** The opening to scale with its casing and what it takes, or the sentence that says what is missing to draw it. */
export function OpeningDrawing({ opening, standards, locale }: OpeningDrawingProps) {
  const scene = useMemo(() => openingScene(opening, standards), [opening, standards]);
  const own = useMemo(() => takeOne(opening, standards)?.own, [opening, standards]);
  if (!scene.ok) return <p class="no-drawing soft">{scene.message}</p>;
  const blank = own?.crown?.blank.chosen;
  const say = (length: number) => onTape(length, standards.unit, locale);
  return (
    <figure class="sheet">
      <Drawing scene={scene.value} />
      {own && (
        <figcaption>
          Outside length <strong>{say(own.curve.length)}</strong>
          {blank && !own.haunch && (
            <>
              , {count(blank.segments, 'segment')} from boards {say(blank.width)} × {say(blank.length)}
            </>
          )}
        </figcaption>
      )}
    </figure>
  );
}
