import { coreWith } from '../pane/loadCore';
import { mountPane } from '../pane/mount';
import { recover } from './backup';
import { excelHost } from './excelHost';

/** Excel's entry: the pane on the open workbook. */
async function start(): Promise<void> {
  const root = document.getElementById('pane');
  if (root === null) return;
  const { host } = await Office.onReady();
  if (host !== Office.HostType.Excel) {
    root.textContent = 'This pane works inside Excel. Open Archwright from the Home tab of a workbook.';
    return;
  }
  await tellRecovered();
  mountPane(
    root,
    excelHost(),
    { locale: Office.context.contentLanguage, theme: Office.context.officeTheme, example },
    coreWith(() => new Worker(new URL('../pane/build/worker.ts', import.meta.url))),
  );
}

/** The add-in may have been closed while it was filling sheets: what stood there before is put back, and the user is told. */
async function tellRecovered(): Promise<void> {
  const recovered = await recover();
  const line = document.getElementById('recovered');
  if (line === null || (recovered.ok && recovered.value.length === 0)) return;
  line.hidden = false;
  line.textContent = recovered.ok
    ? `Filling was broken off the last time. These sheets are as they were before it: ${recovered.value.join(', ')}.`
    : recovered.message;
}

async function example(): Promise<{ name: string; bytes: Uint8Array }> {
  const name = 'schedule.csv';
  const answer = await fetch(`examples/${name}`);
  if (!answer.ok) throw new Error(`the example could not be fetched (${answer.status})`);
  return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
}

void start();
