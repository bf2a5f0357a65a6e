import type { Takeoff } from '../../../src/takeoff/takeoff';
import type { Host } from '../../host';
import type { Bench } from './bench';
import { takeoffAtHand } from './job';

interface Kept {
  readonly of: readonly unknown[];
  readonly taken: Takeoff;
}

const kept = new WeakMap<Host, { last: Kept | null }>();

/**
 * The takeoff at hand, read and computed once between two edits: whoever walks through its rows doesn't wait for all of them
 * again. Null where it can't be read.
 */
export async function takeoffOnce(bench: Bench): Promise<Takeoff | null> {
  const { host, store } = bench;
  let own = kept.get(host);
  if (own === undefined) {
    const made: { last: Kept | null } = { last: null };
    kept.set(host, made);
    host.onEdit(() => {
      made.last = null;
    });
    own = made;
  }
  const { filled, plans, standards } = store.get();
  const of = [filled, plans, standards];
  const { last } = own;
  if (last !== null && of.every((each, at) => each === last.of[at])) return last.taken;
  const read = await takeoffAtHand(bench);
  if (!read.ok) return null;
  own.last = { of: [filled, plans, store.get().standards], taken: read.value };
  return read.value;
}
