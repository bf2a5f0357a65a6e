import { elevationScene } from '../../drawing/elevation';
import type { Layer, Scene } from '../../drawing/scene';
import type { Proposal } from '../../job/proposal';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';

/** A small drawing on the proposal, with the marks of the openings that look so. */
export interface ProposalDrawing {
  readonly marks: readonly string[];
  readonly scene: Scene;
}

/** What a customer is shown: no joints of segments, no dimensions, which would be too small to read. */
const SHOWN: readonly Layer[] = ['casing', 'leg', 'opening'];

/** The proposal's priced openings from the front, alike ones once; none unless the job asks for them. */
export function proposalDrawings(proposal: Proposal, { openings, standards }: Takeoff): readonly ProposalDrawing[] {
  if (proposal.job.drawings !== 'shown') return [];
  const byNo = new Map(openings.map((row) => [row.no, row]));
  const drawings = new Map<string, { marks: string[]; scene: Scene }>();
  for (const { openings: shown } of [...proposal.lines, ...proposal.alternates])
    for (const { no, mark, words } of shown) {
      const alike = drawings.get(words);
      const said = mark === '' ? 'No mark' : mark;
      const scene = alike ? null : sceneOf(byNo.get(no), standards.unit);
      if (alike) alike.marks.push(said);
      else if (scene) drawings.set(words, { marks: [said], scene });
    }
  return [...drawings.values()];
}

function sceneOf(row: OpeningTakeoff | undefined, unit: Takeoff['standards']['unit']): Scene | null {
  const { known, curve } = row ?? {};
  if (!known || !curve || known.reveal === null || known.face === null || known.ends === null) return null;
  const { head } = curve;
  const scene = elevationScene({
    head,
    reveal: known.reveal,
    face: known.face,
    ends: known.ends,
    leg: known.leg ?? 0,
    unit,
  });
  if (!scene.ok) return null;
  return { ...scene.value, shapes: scene.value.shapes.filter(({ layer }) => SHOWN.includes(layer)) };
}
