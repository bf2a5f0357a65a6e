import type { Bench } from './bench';

/** Follows the selection while a part of the pane that shows it stands open. Gives back the way to stop. */
export function followCell(bench: Bench): () => void {
  let over = false;
  let latest = 0;
  const look = async () => {
    const asked = (latest += 1);
    const cell = await bench.host.cellAt();
    // A later selection may be answered first.
    if (over || asked !== latest) return;
    bench.store.send({ type: 'cell selected', cell: cell.ok ? cell.value : null });
  };
  const leaveSelect = bench.host.onSelect(() => void look());
  const leaveEdit = bench.host.onEdit(() => void look());
  void look();
  return () => {
    over = true;
    leaveSelect();
    leaveEdit();
  };
}
