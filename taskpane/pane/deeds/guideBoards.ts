import type { Setup } from '../../../src/takeoff/setups';
import { fail, work, type Bench } from './bench';
import { download } from './download';
import { takeoffBefore } from './fill';

const TYPES: Readonly<Record<string, string>> = { dxf: 'image/vnd.dxf', svg: 'image/svg+xml', csv: 'text/csv' };

/**
 * The set-ups of the chosen list that run between guides, with what was changed by hand in the workbook; undefined where
 * that can't be read, which is told.
 */
export function listGuides(bench: Bench): Promise<readonly Setup[] | undefined> {
  return work(bench, 'Listing the pairs of guides', async () => {
    const { schedule, standards } = bench.store.get();
    const before = await takeoffBefore(bench);
    if (!schedule) return undefined;
    if (!before.ok) {
      fail(bench, before.message);
      return undefined;
    }
    const [{ takeoffWithEdits }, { planSetups }] = await Promise.all([
      import('../build/job'),
      import('../../../src/takeoff/setups'),
    ]);
    const { taken } = takeoffWithEdits({ schedule, standards, before: before.value });
    return planSetups(taken).setups.filter((one) => one.insideRadius !== null);
  });
}

/** The drawings of a set-up's guide boards, as files to cut or print from. */
export function saveGuides(bench: Bench, setup: Setup): Promise<void> {
  return work(bench, 'Drawing the guide boards', async () => {
    const { guideBoardsOf, templateFiles } = await import('../../../src/drawing/template');
    const boards = guideBoardsOf(setup, bench.store.get().standards);
    const files = boards.ok ? templateFiles(boards.value, setup.name) : boards;
    if (!files.ok) return fail(bench, files.message);
    const typeOf = (name: string) => TYPES[name.split('.').pop() ?? ''] ?? 'text/plain';
    download(
      bench,
      files.value.map(({ name, content }) => ({ name, content, type: typeOf(name) })),
    );
  });
}
