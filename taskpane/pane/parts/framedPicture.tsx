import { useEffect, useRef, useState } from 'preact/hooks';
import type { Box } from '../../../src/pdf/marks';
import type { FoundTable, Frame } from '../../../src/pdf/found';
import { drawPage } from '../deeds/choosePdf';

interface FramedPictureProps {
  readonly part: FoundTable;
  /** The other tables of the page: a click marks one. */
  readonly others: readonly { readonly box: Box; readonly name: string; readonly choose: () => void }[];
  readonly onFrame: (frame: Frame) => void;
}

const PIXELS_A_POINT = 2;
/** Points that an arrow key moves a line. */
const KEY_STEP = 2;
/** Columns and frames stay at least this wide. */
const LEAST = 4;

type Side = 'left' | 'right' | 'top' | 'bottom';
const SIDES: readonly Side[] = ['left', 'right', 'top', 'bottom'];

/** A page's picture with the table's frame and column lines, which can be dragged, or moved with the arrow keys. */
export function FramedPicture({ part, others, onFrame }: FramedPictureProps) {
  const place = useRef<HTMLDivElement>(null);
  /** How far from the line's own place it was taken hold of, in points, and whether it was moved since. */
  const hold = useRef({ off: 0, dragged: false });
  const [page, setPage] = useState<HTMLCanvasElement | null>(null);
  const [moved, setMoved] = useState<{ box: Box; edges: readonly number[] } | null>(null);
  const { box, edges } = moved ?? part;
  useEffect(() => setMoved(null), [part]);
  useEffect(() => {
    let over = false;
    void drawPage(part.page, part.turn, PIXELS_A_POINT).then((canvas) => {
      if (!over) setPage(canvas);
    });
    return () => {
      over = true;
    };
  }, [part.page, part.turn]);
  useEffect(() => {
    const host = place.current;
    if (!host || !page) return;
    page.setAttribute('role', 'img');
    page.setAttribute('aria-label', `Page ${part.page}`);
    host.prepend(page);
    return () => page.remove();
  }, [page, part.page]);

  const width = page === null ? 1 : page.width / PIXELS_A_POINT;
  const height = page === null ? 1 : page.height / PIXELS_A_POINT;
  const percent = (at: number, of: number) => `${(100 * at) / of}%`;
  const send = (next: { box: Box; edges: readonly number[] }) => {
    setMoved(next);
    onFrame({ page: part.page, turn: part.turn, ...next });
  };
  const withSide = (side: Side, at: number) => {
    const next = { ...box, [side]: at };
    const fits = next.right - next.left > LEAST && next.bottom - next.top > LEAST;
    if (!fits) return { box, edges };
    const inner = edges.slice(1, -1).filter((edge) => edge > next.left + LEAST && edge < next.right - LEAST);
    return { box: next, edges: side === 'top' || side === 'bottom' ? edges : [next.left, ...inner, next.right] };
  };
  const withEdge = (index: number, at: number) => {
    const fits = at > edges[index - 1]! + LEAST && at < edges[index + 1]! - LEAST;
    return fits ? { box, edges: edges.map((edge, each) => (each === index ? at : edge)) } : { box, edges };
  };

  /** Where on the page a pointer is, in points: from its left side, or from its top for a horizontal line. */
  const pointed = ({ clientX, clientY }: PointerEvent, horizontal: boolean) => {
    const { left, top, width: wide, height: high } = place.current!.getBoundingClientRect();
    return horizontal ? ((clientY - top) / high) * height : ((clientX - left) / wide) * width;
  };

  /** What a line needs so that a pointer and the arrow keys can move it. */
  const movable = (horizontal: boolean, at: number, move: (to: number) => { box: Box; edges: readonly number[] }) => ({
    role: 'slider' as const,
    tabIndex: 0,
    'aria-orientation': horizontal ? ('vertical' as const) : ('horizontal' as const),
    'aria-valuenow': Math.round(at),
    'aria-valuemin': 0,
    'aria-valuemax': Math.round(horizontal ? height : width),
    onKeyDown: (event: KeyboardEvent) => {
      const step = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }[event.key];
      if (step === undefined) return;
      event.preventDefault();
      send(move(at + step * KEY_STEP));
    },
    onPointerDown: (event: PointerEvent) => {
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
      hold.current = { off: at - pointed(event, horizontal), dragged: false };
    },
    onPointerMove: (event: PointerEvent) => {
      if (!(event.currentTarget as Element).hasPointerCapture(event.pointerId)) return;
      hold.current.dragged = true;
      setMoved(move(pointed(event, horizontal) + hold.current.off));
    },
    onPointerUp: (event: PointerEvent) => {
      (event.currentTarget as Element).releasePointerCapture(event.pointerId);
      // Where it is let go counts, also where no picture was drawn since the last move.
      if (hold.current.dragged) send(move(pointed(event, horizontal) + hold.current.off));
    },
  });
  const span = { top: percent(box.top, height), height: percent(box.bottom - box.top, height) };
  const reach = { left: percent(box.left, width), width: percent(box.right - box.left, width) };
  return (
    <div class="pdf-scroll">
      <div class="pdf-page" ref={place}>
        {page !== null && (
          <>
            {others.map(({ box: other, name, choose }) => (
              <button
                key={name}
                type="button"
                class="pdf-other"
                aria-label={`${name} on page ${part.page}`}
                style={{
                  left: percent(other.left, width),
                  top: percent(other.top, height),
                  width: percent(other.right - other.left, width),
                  height: percent(other.bottom - other.top, height),
                }}
                onClick={choose}
              />
            ))}
            <div class="pdf-frame" style={{ ...span, ...reach }} />
            {edges.slice(1, -1).map((edge, index) => (
              <div
                key={`edge ${index}`}
                class="pdf-line between"
                aria-label={`Line between columns ${index + 1} and ${index + 2}`}
                style={{ ...span, left: percent(edge, width) }}
                {...movable(false, edge, (to) => withEdge(index + 1, to))}
              />
            ))}
            {SIDES.map((side) => (
              <div
                key={side}
                class={`pdf-line side ${side}`}
                aria-label={`Frame, ${side}`}
                style={
                  side === 'left' || side === 'right'
                    ? { ...span, left: percent(box[side], width) }
                    : { ...reach, top: percent(box[side], height) }
                }
                {...movable(side === 'top' || side === 'bottom', box[side], (to) => withSide(side, to))}
              />
            ))}
          </>
        )}
      </div>
    </div>
  );
}
