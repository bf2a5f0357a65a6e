import { ARCH_FUNCTIONS } from './arch-functions';
import { startGrid } from './grid';
import { WorkbenchHost } from './workbench-host';
import './workbench.css';

async function start(): Promise<void> {
  const grid = document.getElementById('grid')!;
  const status = document.getElementById('wb-status')!;
  const engine = await startGrid(grid, ARCH_FUNCTIONS);
  const host = new WorkbenchHost(engine);
  status.textContent = 'Ready';
  Object.assign(globalThis, { workbench: { host, engine } });
}

void start();
