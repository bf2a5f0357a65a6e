/* eslint-disable @typescript-eslint/no-explicit-any -- ranges arrive as they are */
import type { StockOrder } from '../src/stock/order';
import { planStock, type StockPlan } from '../src/stock/plan';
import { isLeftOut, lengths as readLengths, numbers, optionalLength } from './arguments';
import { give } from './error';

/**
 * Sheets ask for boards, yield and plan of one cutting list side by side. The last few plans are kept, so that the
 * work is done once.
 */
const MOST_KEPT = 20;
const kept = new Map<string, StockPlan>();

/** The plan for a cutting list as the worksheet hands it over. */
export function planOf(lengths: any, quantities: any, stock: any, kerf: any, trim: any, prices: any): StockPlan {
  const order = withBlanks({
    lengths: readLengths('lengths', lengths),
    quantities: numbers('quantities', quantities),
    stock: readLengths('stock', stock),
    kerf: optionalLength('kerf', kerf),
    trim: optionalLength('trim', trim),
    prices: isLeftOut(prices) ? undefined : numbers('prices', prices),
  });
  const key = JSON.stringify(order);
  const known = kept.get(key);
  if (known) return known;
  const plan = give(planStock(order));
  kept.set(key, plan);
  if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value!);
  return plan;
}

/** A blank cell arrives as 0 on the desktop. No length or price is 0, so there it is a blank; a quantity may well be. */
function withBlanks(order: StockOrder): StockOrder {
  const lengths = order.lengths.map(zeroAsBlank);
  const prices = order.prices?.map(zeroAsBlank);
  return {
    ...order,
    lengths,
    quantities: order.quantities.map((quantity, at) => (lengths[at] === null ? zeroAsBlank(quantity) : quantity)),
    stock: order.stock.map(zeroAsBlank),
    prices: prices?.some((price) => price !== null) ? prices : undefined,
  };
}

function zeroAsBlank(value: number | null): number | null {
  return value === 0 ? null : value;
}
