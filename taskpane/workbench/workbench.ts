import { coreWith } from '../pane/loadCore';
import { mountPane, type PaneOptions } from '../pane/mount';
import { ARCH_FUNCTIONS } from './archFunctions';
import { EXAMPLE_SHEET, exampleFile, showExample } from './example';
import { Job } from './file/job';
import { CellNotesShown } from './cellNote';
import { startGrid } from './grid';
import { arrangeLayout } from './layout';
import { watchQuestions } from './page/dialogs';
import { nameLibraryParts } from './page/libraryNames';
import { planNews } from './page/planStrip';
import { mountPage } from './page/page';
import { showStatus } from './status';
import { watchTyping } from './typing';
import { WorkbenchHost } from './workbenchHost';
import './workbench.css';

declare global {
  /** For the browser tests, which read through the same port as the pane. */
  var workbench: { readonly host: WorkbenchHost; readonly job: Job; readonly settled: () => Promise<void> } | undefined;
}

const byId = <T extends HTMLElement>(id: string) => document.getElementById(id) as T;

function startWorker(): Worker {
  return new Worker(new URL('../pane/build/worker.ts', import.meta.url));
}

async function start(): Promise<void> {
  const grid = byId('grid');
  const pane = byId('pane');
  const line = byId('wb-status');
  const showSheet = arrangeLayout(grid, pane, byId('wb-divider'), byId('wb-pane-toggle'), byId('wb-bar'));
  try {
    const engine = await startGrid(grid, ARCH_FUNCTIONS);
    nameLibraryParts(grid);
    const host = new WorkbenchHost(engine);
    const announce = showStatus(engine, host, line);
    const notes = new CellNotesShown(engine);
    let refusedAt = '';
    const ask = watchQuestions();
    watchTyping(engine, {
      refuse(sentence, at) {
        refusedAt = JSON.stringify(at);
        announce(sentence);
        notes.show(at, sentence);
        host.refused(sentence);
      },
      accept(at) {
        notes.hide(at);
        if (refusedAt !== JSON.stringify(at)) return;
        refusedAt = '';
        host.refused(null);
      },
      askOver: async (address) =>
        'over' ===
        (await ask.ask({
          title: `${address} is a figure that follows from others`,
          about:
            'Typed over, it no longer follows its inputs, and is asked about when the workbook is filled again. To agree on a price, use the column for it.',
          choices: [
            ['over', 'Type over it'],
            ['stay', 'Leave it'],
          ],
        })),
    });
    announce('Type =ARCH. into a cell, or fill the takeoff from the pane.');
    // `npm start` prints the address with ?example; without it the workbook starts empty.
    if (new URLSearchParams(location.search).has('example')) {
      const shown = await showExample(engine, host);
      if (!shown.ok) announce(shown.message);
      else announce('This is a made-up schedule to try things on: the pane takes it off.');
    }
    const plans = planNews();
    const options: PaneOptions = {
      example: exampleFile,
      exampleSheet: EXAMPLE_SHEET,
      keepsList: true,
      onPlans: (now, bringUpToDate) => plans.send({ plans: now, bringUpToDate }),
      onPrint: (drawings) => printDrawings(drawings),
    };
    const core = coreWith(startWorker);
    let unmount = mountPane(pane, host, options, core);
    const job = new Job(
      engine,
      () => {
        unmount();
        unmount = mountPane(pane, host, options, core);
      },
      announce,
    );
    host.onSetting(() => job.touch());
    host.onShow(showSheet);
    const printDrawings = mountPage({
      ...{ engine, host, job, plans },
      ...{ say: announce, example: exampleFile, questions: ask, closed: () => notes.clear() },
    });
    await job.start();
    globalThis.workbench = { host, job, settled: engine.settled };
  } catch (thrown) {
    line.textContent = `The workbench could not start: ${thrown instanceof Error ? thrown.message : String(thrown)}`;
  }
}

void start();
