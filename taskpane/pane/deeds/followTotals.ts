import { takeoffTotals } from '../../../src/workbook/takeoff/totals';
import type { SheetName } from '../../../src/workbook/sheet';
import type { Bench } from './bench';

/** Edits come in bursts, and a long Takeoff takes a moment to read. */
const PAUSE_MS = 300;
/** What the Takeoff's figures follow from. */
const WATCHED: ReadonlySet<string> = new Set<SheetName>(['Takeoff', 'Standards', 'Stock']);

/** Keeps the totals that the pane shows of a filled workbook those of its Takeoff. Gives back the way to stop. */
export function followTotals({ host, store }: Bench): () => void {
  let pause: ReturnType<typeof setTimeout> | undefined;
  const leave = host.onEdit((sheet) => {
    if (!WATCHED.has(sheet) || store.get().filled === null) return;
    clearTimeout(pause);
    pause = setTimeout(() => {
      void host.readSheet('Takeoff').then((read) => {
        const totals = read.ok && read.value ? takeoffTotals(read.value) : null;
        if (totals) store.send({ type: 'totals read', totals });
      });
    }, PAUSE_MS);
  });
  return () => {
    leave();
    clearTimeout(pause);
  };
}
