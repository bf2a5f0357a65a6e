import type { CellValue } from '../../../src/schedule/opening';
import { MemoryHost } from '../../../taskpane/memory/host';
import { coreWith } from '../../../taskpane/pane/loadCore';
import { mountPane } from '../../../taskpane/pane/mount';

/** The pane on a workbook in memory, for the browser tests: they drive the workbook through `memory`. */
declare global {
  var memory: MemoryHost;
}

async function example(): Promise<{ name: string; bytes: Uint8Array }> {
  const answer = await fetch('/examples/schedule.csv');
  return { name: 'schedule.csv', bytes: new Uint8Array(await answer.arrayBuffer()) };
}

async function start(): Promise<void> {
  const wanted = new URL(location.href).searchParams;
  const sheets = (await (await fetch('/sheets.json')).json()) as Record<string, CellValue[][]>;
  globalThis.memory = new MemoryHost(sheets);
  const dark = wanted.get('office') === 'dark';
  const theme = {
    bodyBackgroundColor: dark ? '#262626' : '#F3F3F3',
    bodyForegroundColor: dark ? '#FFFFFF' : '#000000',
  };
  mountPane(
    document.getElementById('pane')!,
    globalThis.memory,
    {
      example,
      ...(wanted.has('office') ? { theme } : {}),
      ...(wanted.has('locale') ? { locale: wanted.get('locale')! } : {}),
    },
    coreWith(() => new Worker('/worker.js', { type: 'module' })),
  );
}

void start();
