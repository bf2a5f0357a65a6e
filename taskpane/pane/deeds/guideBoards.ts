import type { Scene } from '../../../src/drawing/scene';
import type { Result } from '../../../src/result';
import type { Setup } from '../../../src/takeoff/setups';
import { breathe, fail, work, type Bench } from './bench';
import { download, downloadBytes } from './download';
import { takeoffBefore } from './fill';

/** The same drawings give the same archive. */
const ZIP_TIME = new Date(1980, 0, 1);

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
    const [{ unplannedTakeoff }, { planSetups }] = await Promise.all([
      import('../../../src/workbook/withEdits'),
      import('../../../src/takeoff/setups'),
    ]);
    const { taken } = unplannedTakeoff({ schedule, standards, before: before.value });
    return planSetups(taken).setups.filter((one) => one.insideRadius !== null);
  });
}

/** The guide boards of a set-up, to look at. */
export async function guideDrawing(bench: Bench, setup: Setup): Promise<Result<Scene>> {
  const [{ guideBoardsOf }, { guideOverview }] = await Promise.all([
    import('../../../src/drawing/template'),
    import('../../../src/drawing/overview'),
  ]);
  const boards = guideBoardsOf(setup, bench.store.get().standards);
  return boards.ok ? guideOverview(boards.value) : boards;
}

/** Shows drawings as pages to print. */
export async function printDrawings({ options }: Bench, drawings: readonly { caption: string; scene: Scene }[]) {
  const { toSvg } = await import('../../../src/drawing/svg');
  options.onPrint?.(drawings.map(({ caption, scene }) => ({ caption, svg: toSvg(scene) })));
}

/** The guide boards of set-ups as pages to print, one each. */
export function printGuides(bench: Bench, setups: readonly Setup[]): Promise<void> {
  return work(bench, 'Drawing the guide boards', async () => {
    const drawings: { caption: string; scene: Scene }[] = [];
    for (const setup of setups) {
      const scene = await guideDrawing(bench, setup);
      if (!scene.ok) return fail(bench, `${setup.name}: ${scene.message}`);
      drawings.push({ caption: setup.name, scene: scene.value });
      await breathe();
    }
    await printDrawings(bench, drawings);
  });
}

/** The drawings of all pairs of guides in one archive, each pair's files under its name, with pictures of all and one table of ordinates. */
export function saveAllGuides(bench: Bench, setups: readonly Setup[]): Promise<void> {
  return work(bench, 'Drawing all guide boards', async () => {
    const [{ jobFiles, pairsOf, templateFiles }, { strToU8, zipSync }] = await Promise.all([
      import('../../../src/drawing/template'),
      import('fflate'),
    ]);
    const all: Record<string, Uint8Array> = {};
    const pairs = pairsOf(setups, bench.store.get().standards);
    if (!pairs.ok) return fail(bench, pairs.message);
    for (const { name, boards } of pairs.value) {
      const files = templateFiles(boards, name);
      if (!files.ok) return fail(bench, `${name}: ${files.message}`);
      for (const file of files.value) all[file.name] = strToU8(file.content);
      // A long job draws for seconds: the page answers meanwhile.
      await breathe();
    }
    const together = jobFiles(pairs.value);
    if (!together.ok) return fail(bench, together.message);
    for (const { name, content } of together.value) all[name] = strToU8(content);
    downloadBytes(bench, 'guide boards.zip', zipSync(all, { mtime: ZIP_TIME }), 'application/zip');
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
