import type { PartPricing, WoodOrder } from '../../src/boards/order';
import type { Highs } from './bounds';
import { rowClasses, type RowClass } from './fullest';

const NEAR = 1e-7;
/** More fillings of a lane, steps or ways to cut than this: not told. */
const MOST_FILLS = 250_000;
const MOST_STEPS = 60_000_000;
const MOST_CUTS = 4_000;

interface Fill {
  readonly length: number;
  /** Place of its widest class; −1: empty. */
  readonly widest: number;
  readonly worth: number;
  readonly made: readonly (readonly [part: number, count: number])[];
}

/**
 * Whether no plan is made of just these boards: all ways to cut them that lose no more than all may lose together, piece by piece, and of these
 * a mixed-integer solver looks for a plan. True: there is none; false: there is one; null: too many to tell.
 */
export function noPlanOf(
  order: WoodOrder,
  wanted: readonly number[],
  counts: readonly number[],
  { worths, most }: PartPricing,
  highs: Highs,
): boolean | null {
  const total = worths.reduce((sum, worth, part) => sum + worth * wanted[part]!, 0);
  const budget = counts.reduce((sum, count, board) => sum + (count === 0 ? 0 : count * most[board]!), 0) - total;
  if (budget < 0) return true;
  const classes = rowClasses(order);
  const rows: string[][] = wanted.map(() => []);
  const used: string[][] = counts.map(() => []);
  const names: string[] = [];
  for (const [board, count] of counts.entries()) {
    if (count === 0) continue;
    const cuts = cutsOf(order, classes, board, wanted, worths, most[board]! - budget);
    if (cuts === null) return null;
    for (const cut of cuts) {
      const name = `x${names.length}`;
      names.push(name);
      used[board]!.push(name);
      cut.forEach((made, part) => made > 0 && rows[part]!.push(`${made} ${name}`));
    }
  }
  if (names.length > MOST_CUTS) return null;
  if (wanted.some((count, part) => count > 0 && rows[part]!.length === 0)) return true;
  const model = [
    `Minimize\n obj: 0 ${names[0]!}\nSubject To`,
    ...rows.flatMap((terms, part) =>
      wanted[part]! > 0 ? [` d${part}: ${terms.join('\n + ')} >= ${wanted[part]}`] : [],
    ),
    ...used.flatMap((terms, board) =>
      terms.length > 0 ? [` l${board}: ${terms.join('\n + ')} <= ${counts[board]}`] : [],
    ),
    `General\n ${names.join('\n ')}\nEnd`,
  ].join('\n');
  const { Status: status } = highs.solve(model, { output_flag: false, time_limit: 60 });
  return status === 'Infeasible' ? true : status === 'Optimal' ? false : null;
}

/** What each way to cut this board makes that is worth at least so much, by part; null: too many. */
function cutsOf(
  { boards, kerf, trim }: WoodOrder,
  classes: readonly RowClass[],
  board: number,
  wanted: readonly number[],
  worths: readonly number[],
  least: number,
): number[][] | null {
  const { width, length } = boards[board]!;
  const room = length - 2 * trim + kerf + NEAR;
  const fits = classes.filter((each) => each.width <= width + NEAR);
  const fills = fillsOf(fits, wanted, worths, room);
  if (fills === null) return null;
  const byWorth = [...fills].sort((a, b) => b.worth - a.worth);
  const found = new Map<string, number[]>();
  const made = wanted.map(() => 0);
  let steps = 0;
  const add = ({ made: its }: Fill, sign: number) => its.forEach(([part, count]) => (made[part]! += sign * count));
  /** The most that one lane holds, up to the end of each of equal stretches. */
  const stretches = new Array<number>(65).fill(0);
  for (const { length: long, worth } of fills) {
    const first = Math.min(64, Math.ceil((64 * long) / room));
    stretches[first] = Math.max(stretches[first]!, worth);
  }
  for (let at = 1; at <= 64; at++) stretches[at] = Math.max(stretches[at]!, stretches[at - 1]!);
  const mostIn = (long: number) => stretches[Math.min(64, Math.ceil((64 * long) / room))]!;
  const narrowest = fits[0]!.width + kerf;
  /** Lanes beside one another, from the fillings worth most on, each no longer than `along`. */
  const beside = (from: number, across: number, along: number, worth: number): boolean => {
    if (worth >= least) found.set(made.join(), [...made]);
    if (found.size > MOST_CUTS) return false;
    const lanes = Math.floor((across + NEAR) / narrowest);
    if (lanes === 0 || worth + lanes * mostIn(along) < least) return true;
    for (let at = from; at < byWorth.length; at++) {
      const fill = byWorth[at]!;
      if (++steps > MOST_STEPS) return false;
      if (worth + lanes * fill.worth < least || fill.widest < 0) break;
      if (fill.length > along || fits[fill.widest]!.width + kerf > across + NEAR) continue;
      if (fill.made.some(([part, count]) => made[part]! + count > wanted[part]!)) continue;
      add(fill, 1);
      const goOn = beside(at, across - fits[fill.widest]!.width - kerf, along, worth + fill.worth);
      add(fill, -1);
      if (!goOn) return false;
    }
    return true;
  };
  const most = Math.floor((width + kerf + NEAR) / narrowest);
  for (const whole of byWorth) {
    if (whole.worth + most * mostIn(room - whole.length) < least) continue;
    add(whole, 1);
    const goOn = beside(0, width + kerf, room - whole.length, whole.worth);
    add(whole, -1);
    if (!goOn) return null;
  }
  return [...found.values()];
}

/** Every filling of a lane, shortest first. */
function fillsOf(
  classes: readonly RowClass[],
  wanted: readonly number[],
  worths: readonly number[],
  room: number,
): Fill[] | null {
  let fills: Fill[] = [{ length: 0, widest: -1, worth: 0, made: [] }];
  for (const [c, { over, parts }] of classes.entries()) {
    for (const { part, step } of parts) {
      const more: Fill[] = [];
      for (const { length, widest, worth, made } of fills) {
        const opened = length + (widest === c ? 0 : over);
        for (let count = 1; count <= wanted[part]! && opened + count * step <= room; count++) {
          more.push({
            length: opened + count * step,
            widest: c,
            worth: worth + count * worths[part]!,
            made: [...made, [part, count]],
          });
        }
      }
      fills = [...fills, ...more];
      if (fills.length > MOST_FILLS) return null;
    }
  }
  return fills.sort((a, b) => a.length - b.length);
}
