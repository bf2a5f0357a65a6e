import { partLength, partWidth } from '../../src/takeoff/woodParts';
import type { WoodOrder } from '../../src/boards/order';
import type { Standards } from '../../src/standards';
import type { WoodBoards } from '../../src/takeoff/boards';
import { faultsOf } from './geometry';

/**
 * What is wrong with the boards of a wood, by the independent look at each piece: nothing where they can be sawn, hold every
 * piece, cost what is said and no less than their bound. For woods of which as many boards can be had as are wanted.
 */
export function faultsOfWood(plan: WoodBoards, { kerf, endTrim }: Standards): string[] {
  const order: WoodOrder = {
    parts: plan.parts.map(({ part: { shape, count } }) =>
      shape.kind === 'straight'
        ? { kind: 'straight', length: partLength(shape), width: partWidth(shape), count }
        : { kind: 'segment', inside: shape.ring.inside, outside: shape.ring.outside, half: shape.half, count },
    ),
    boards: plan.sale.map(({ width, length, quarters, pricePerBoardFoot, onHand: limit }) => ({
      ...{ width, length, limit },
      price: Math.round(((quarters / 4) * width * length * pricePerBoardFoot * 100) / 144) / 100,
    })),
    kerf,
    trim: endTrim,
  };
  return faultsOf({ ...plan, tooLarge: [], short: [], grounds: { pricings: [], lookedThrough: [] } }, order);
}

/** How much of the boards' face lies under pieces at the least, and the money that much of the cheapest wood costs: no plan is cheaper. */
export function woodAlone({ parts, sale }: WoodBoards): number {
  const face = parts.reduce((sum, { part: { shape, count } }) => {
    if (shape.kind === 'straight') return sum + count * shape.length * shape.width;
    const { inside, outside } = shape.ring;
    const width = outside - inside * Math.cos(shape.half);
    return sum + count * width * (outside * Math.tan(shape.half) + inside * Math.sin(shape.half));
  }, 0);
  const cheapest = Math.min(...sale.map(({ quarters, pricePerBoardFoot }) => (quarters / 4) * pricePerBoardFoot));
  return (face * cheapest) / 144;
}
