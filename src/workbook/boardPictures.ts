import { boardScene } from '../drawing/boardScene';
import type { Standards } from '../standards';
import { lengthText } from '../lengthText';
import type { BoardNeeds } from '../takeoff/boards';
import type { Cell, Picture } from './sheet';
import { inStrips } from './strips';

/** Drawings side by side. */
const ACROSS = 2;
/** A long job has hundreds of boards cut in different ways: so many are drawn. */
const MOST = 120;

/**
 * The cutting plan drawn: for boards cut alike the trims, the crosscut, lanes and every piece as it lies, flipped or not. Adds the
 * rows that the drawings lie over. They are in files alone, see `Picture`; sizes and marks are in the words of the cutting plan.
 */
export function addBoardPictures(
  rows: (Cell | null)[][],
  { plans }: BoardNeeds,
  { endTrim, unit }: Standards,
  widths: readonly number[],
): Picture[] {
  const all = plans.flatMap((plan) => plan.boards.map((alike) => ({ plan, alike })));
  if (all.length === 0) return [];
  const shown = all.slice(0, MOST);
  const rest = all.length > MOST ? `, the first ${MOST} of ${all.length}` : '';
  rows.push([], [{ value: `The cutting plan drawn, in the order above${rest}`, style: 'group' }]);
  const drawings = shown.map(({ plan, alike }, at) => {
    const { width, length } = plan.sale[alike.board]!;
    const scene = boardScene(alike, plan, endTrim, unit);
    const size = `${lengthText(width, unit)} × ${lengthText(length, unit)}`;
    return {
      caption: `${at + 1}. ${alike.count} × ${plan.species} ${size}, ${lengthText(alike.left, unit)} left`,
      // Letters are not drawn on a sheet, and dimensions without them say nothing.
      scene: { ...scene, shapes: scene.shapes.filter(({ kind }) => kind !== 'text' && kind !== 'dimension') },
    };
  });
  return inStrips(rows, drawings, ACROSS, widths);
}
