import { coreWith } from '../pane/loadCore';
import { mountPane } from '../pane/mount';
import { ARCH_FUNCTIONS } from './arch-functions';
import { EXAMPLE_SHEET, exampleFile, showExample } from './example';
import { startGrid } from './grid';
import { arrangeLayout } from './layout';
import { showStatus } from './status';
import { watchTyping } from './typing';
import { WorkbenchHost } from './workbench-host';
import './workbench.css';

declare global {
  /** For the browser tests, which read through the same port as the pane. */
  var workbench: { readonly host: WorkbenchHost; readonly settled: () => Promise<void> } | undefined;
}

const byId = <T extends HTMLElement>(id: string) => document.getElementById(id) as T;

function startWorker(): Worker {
  return new Worker(new URL('../pane/build/worker.ts', import.meta.url));
}

async function start(): Promise<void> {
  const grid = byId('grid');
  const pane = byId('pane');
  const line = byId('wb-status');
  arrangeLayout(grid, pane, byId('wb-divider'), byId('wb-pane-toggle'));
  try {
    const engine = await startGrid(grid, ARCH_FUNCTIONS);
    const host = new WorkbenchHost(engine);
    const announce = showStatus(engine, host, line);
    watchTyping(engine, announce);
    announce('Type =ARCH. into a cell, or fill the takeoff from the pane.');
    // `npm start` prints the address with ?example; without it the workbook starts empty.
    if (new URLSearchParams(location.search).has('example')) {
      const shown = await showExample(engine, host);
      if (!shown.ok) announce(shown.message);
      else announce('This is a made-up schedule to try things on: the pane takes it off.');
    }
    const options = { example: exampleFile, exampleSheet: EXAMPLE_SHEET };
    mountPane(pane, host, options, coreWith(startWorker));
    globalThis.workbench = { host, settled: engine.settled };
  } catch (thrown) {
    line.textContent = `The workbench could not start: ${thrown instanceof Error ? thrown.message : String(thrown)}`;
  }
}

void start();
