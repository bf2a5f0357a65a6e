import { coreWith } from '../pane/loadCore';
import { mountPane } from '../pane/mount';
import { askAboutBroken } from './brokenNote';
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
  const locale = Office.context.contentLanguage;
  const ask = async () => {
    const note = document.getElementById('broken');
    if (note) await askAboutBroken(note, locale);
  };
  await ask();
  mountPane(
    root,
    excelHost(ask),
    { locale, theme: Office.context.officeTheme, example, savesFiles: savesFiles() },
    coreWith(() => new Worker(new URL('../pane/build/worker.ts', import.meta.url))),
  );
}

/** In the web view of Excel on a Mac or an iPad a link that downloads does nothing, and says nothing. */
function savesFiles(): boolean {
  const { platform } = Office.context;
  return platform !== Office.PlatformType.Mac && platform !== Office.PlatformType.iOS;
}

async function example(): Promise<{ name: string; bytes: Uint8Array }> {
  const name = 'schedule.csv';
  const answer = await fetch(`examples/${name}`);
  if (!answer.ok) throw new Error(`the example could not be fetched (${answer.status})`);
  return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
}

void start();
