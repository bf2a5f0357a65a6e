import { coreWith } from '../pane/loadCore';
import { mountPane } from '../pane/mount';
import { ARCH_FUNCTIONS } from './arch-functions';
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

async function example(): Promise<{ name: string; bytes: Uint8Array }> {
  const name = 'schedule.csv';
  const response = await fetch(`examples/${name}`);
  if (!response.ok) throw new Error(`the example schedule is not there (${response.status})`);
  return { name, bytes: new Uint8Array(await response.arrayBuffer()) };
}

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
    mountPane(pane, host, { example }, coreWith(startWorker));
    globalThis.workbench = { host, settled: engine.settled };
  } catch (thrown) {
    line.textContent = `The workbench could not start: ${thrown instanceof Error ? thrown.message : String(thrown)}`;
  }
}

void start();
