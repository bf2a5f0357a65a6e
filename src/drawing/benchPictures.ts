import type { Standards } from '../standards';
import { SAWING_RULES, type BoardNeeds } from '../takeoff/boards';
import type { Takeoff } from '../takeoff/takeoff';
import { lengthText } from '../lengthText';
import { boardLegend, boardScene } from './boardScene';
import { pictureSheet, type Picture, type PictureGroup } from './pictureSheet';
import { ringScene } from './ring';

/** What the glue-up looks at: how the segments lie on the boards of each wood, and every ring as it is glued. */
export function benchPictures(takeoff: Takeoff, boards: BoardNeeds, source: string): string {
  const { standards } = takeoff;
  return pictureSheet(`Glue-up, ${source}`, [
    ...boardGroups(boards, standards),
    ringGroup(takeoff),
    { title: 'How the boards are sawn', columns: 1, pictures: [], notes: boards.plans.length > 0 ? SAWING_RULES : [] },
  ]);
}

function boardGroups({ plans }: BoardNeeds, { endTrim, unit }: Standards): PictureGroup[] {
  return plans.map((plan) => ({
    title: `Segments and straight pieces on the boards: ${plan.species}, dressed ${lengthText(plan.thickness, unit)}`,
    // One below another: a board is long and low, and its figures must be read at the saw.
    columns: 1,
    pictures: plan.boards.map((alike): Picture => {
      const scene = boardScene(alike, plan, endTrim, unit);
      return { scene, caption: scene.title };
    }),
    notes: boardLegend(plan, unit),
  }));
}

/** Each ring once, with the openings it is glued for. */
function ringGroup({ openings, standards }: Takeoff): PictureGroup {
  const found = new Map<string, { scene: Picture['scene']; names: string[] }>();
  for (const { no, opening, inputs, own } of openings) {
    if (inputs === null || own === null) continue;
    for (const { ring, blank } of own.rings) {
      const figures = {
        radius: ring.inside,
        face: inputs.face,
        angle: ring.blankAngle,
        segments: blank.chosen.segments,
        margin: standards.margin,
        unit: standards.unit,
      };
      const key = JSON.stringify(figures);
      const name = `No. ${no} ${opening.mark}`.trim();
      const before = found.get(key);
      const scene = before ? null : ringScene(figures);
      if (before) before.names.push(name);
      else if (scene?.ok) found.set(key, { scene: scene.value, names: [name] });
    }
  }
  const pictures = [...found.values()].map(({ scene, names }) => ({
    scene,
    caption: `${names.join(', ')}: ${scene.title}`,
  }));
  return { title: 'Rings', columns: 2, pictures };
}
