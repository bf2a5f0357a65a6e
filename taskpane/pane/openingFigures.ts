import { makeHead } from '../../src/head/makeHead';
import { elevationScene } from '../../src/drawing/elevation';
import type { Scene } from '../../src/drawing/scene';
import { refuse, type Result } from '../../src/result';
import type { Opening } from '../../src/schedule/opening';
import type { Standards } from '../../src/standards';
import { takeoff, type OpeningTakeoff } from '../../src/takeoff/takeoff';

/** One opening taken off by itself: its figures, or what it needs. */
export function takeOne(opening: Opening, standards: Standards): OpeningTakeoff | null {
  return takeoff([opening], standards).openings[0] ?? null;
}

/** The opening from the front, to scale, with what is known of it; refused in a sentence while span or rise are missing. */
export function openingScene(opening: Opening, standards: Standards, lettersAcross = 31): Result<Scene> {
  const taken = takeOne(opening, standards);
  if (taken === null) return refuse('There is no opening to draw.');
  const { known: at, own } = taken;
  if (at.head === null) return refuse('The drawing appears once the head is known.');
  if (at.span === null) return refuse('The drawing appears once the span is known.');
  const head = makeHead(at.head, at.span, at.rise, at.haunch);
  if (!head.ok) return refuse(`No drawing yet: ${head.message}.`);
  return elevationScene({
    head: head.value,
    reveal: at.reveal ?? standards.reveal,
    face: at.face ?? standards.face,
    ends: at.ends ?? standards.ends,
    leg: at.leg ?? 0,
    overhang: standards.overhang,
    ...(at.arcs === null ? {} : { arcs: at.arcs }),
    ...(at.otherLeg === null ? {} : { otherLeg: at.otherLeg }),
    ...(own ? { segments: segmentsOf(own) } : {}),
    mark: opening.mark,
    unit: standards.unit,
    wordless: true,
    lettersAcross,
  });
}

/** Segments of each constant-radius piece, left to right. */
function segmentsOf(own: NonNullable<OpeningTakeoff['own']>): readonly number[] {
  const segments: number[] = [];
  for (const { ring, made, blank } of own.rings)
    for (const at of ring.arcs) segments[at] = made.parts * blank.chosen.segments;
  return segments;
}
