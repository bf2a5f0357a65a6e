import type { BoardsAlike, Lane, Row } from '../boards/order';
import { lengthText } from '../lengthText';
import type { Unit } from '../unit';
import type { WoodBoards } from './boards';
import { partLength, partWidth } from './woodParts';

/** What is cut from a board, a list of items for each lane under the words that say where the lane is. */
export interface LaneWords {
  /** `full width`, `lane 4 1/4 wide`; blank where the whole board is one lane. */
  readonly where: string;
  /** `3 × 18 7/8 by 4 1/4, flipped in turn (W1, W4)` for each kind of piece. */
  readonly items: readonly string[];
}

/** How to saw boards cut alike, section by section from the left end, in the words of the shop. */
export function boardWords({ sections }: BoardsAlike, plan: WoodBoards, unit: Unit): LaneWords[] {
  const shown = (length: number) => lengthText(length, unit);
  return sections.flatMap(({ lanes, length }, at): LaneWords[] => {
    const items = (lane: Lane) => itemsOf(lane, plan, unit);
    if (lanes.length > 1) {
      const cut = sections.length > 1 ? `${shown(length)} cut off, ` : '';
      return lanes.map((lane, number) => ({
        where: `${number === 0 ? cut : ''}lane ${shown(lane.width)} wide`,
        items: items(lane),
      }));
    }
    return [{ where: sections.length > 1 && at > 0 ? 'rest, full width' : '', items: items(lanes[0]!) }];
  });
}

/** Pieces alike in size, purpose and the way they lie are one item to the person at the saw. */
function itemsOf({ rows }: Lane, plan: WoodBoards, unit: Unit): string[] {
  const counts = new Map<string, number>();
  const shown = (length: number) => lengthText(length, unit);
  for (const row of rows) {
    for (const { part: at } of row.pieces) {
      const { part } = plan.parts[at]!;
      const size = `${shown(partLength(part.shape))} by ${shown(partWidth(part.shape))}`;
      const what = `${size}${isFlipped(row) ? ', flipped in turn' : ''} (${part.for})`;
      counts.set(what, (counts.get(what) ?? 0) + 1);
    }
  }
  return [...counts].map(([what, count]) => `${count} × ${what}`);
}

function isFlipped({ pieces }: Row): boolean {
  return pieces.some(({ flipped }) => flipped);
}

/** Whether cheaper boards can exist, of all boards of the wood. */
export function proofWords({ proven, interrupted, cost, lowerBound }: WoodBoards): string {
  if (proven) return 'Proven: under these rules no boards of any width and length on sale cost less.';
  if (lowerBound <= 0) return 'Not proven: the search was cut short before it had a bound.';
  const within = `Within $${(cost - lowerBound).toFixed(2)} of the least possible under these rules.`;
  return interrupted
    ? `${within} The search took too long and was cut short: filled again, it may come out otherwise.`
    : within;
}
