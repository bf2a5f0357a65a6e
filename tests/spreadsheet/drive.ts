import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { profileIn } from './calc';
import { findUnoPython } from './python';

/** What is done to a workbook in Calc, as `drive.py` says. */
export type Step =
  | readonly ['type', sheet: string, cell: string, typed: number | string]
  | readonly ['sort', sheet: string, area: string, column: number, way: 'up' | 'down']
  | readonly ['filter', sheet: string, area: string, column: number, text: string]
  | readonly ['delete', sheet: string, row: number];

/** Opens a workbook in LibreOffice Calc once for each list of steps, does them by Calc's own means, and gives what Calc saves. */
export async function driven(xlsx: Uint8Array, jobs: readonly (readonly Step[])[]): Promise<Uint8Array[]> {
  const python = findUnoPython();
  if (python === null) throw new Error('No Python has the module uno (Debian: apt-get install python3-uno).');
  const folder = mkdtempSync(join(tmpdir(), 'archwright-drive-'));
  try {
    const [open, list] = [join(folder, 'book.xlsx'), join(folder, 'jobs.json')];
    const saved = jobs.map((_, at) => join(folder, `saved${at}.xlsx`));
    writeFileSync(open, xlsx);
    writeFileSync(list, JSON.stringify(jobs.map((steps, at) => ({ open, save: saved[at], steps }))));
    const script = fileURLToPath(new URL('drive.py', import.meta.url));
    await promisify(execFile)(python, [script, profileIn(folder), list], { encoding: 'utf8', timeout: 280_000 });
    return saved.map((path) => new Uint8Array(readFileSync(path)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
