import type { TextFile } from '../state';
import { fail, type Bench } from './bench';

/** Hands files to the browser to keep; where that would do nothing, shows them to be copied. */
export function download({ store, options }: Bench, files: readonly TextFile[]): void {
  if (options.savesFiles === false) return store.send({ type: 'files shown', files });
  for (const { name, content, type } of files) keep(name, content, type);
}

/** The same for a file that is no text: it can't be shown to be copied. */
export function downloadBytes(bench: Bench, name: string, content: Uint8Array<ArrayBuffer>, type: string): void {
  if (bench.options.savesFiles !== false) return keep(name, content, type);
  fail(bench, `Excel for Mac can't save ${name} from the pane: use the command, or the workbench in a browser.`);
}

function keep(name: string, content: string | Uint8Array<ArrayBuffer>, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
