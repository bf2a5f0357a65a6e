import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

/** Flat spreadsheets saved as PDF by LibreOffice Calc, all in one start. */
export async function savedAsPdf(sheets: readonly string[]): Promise<Uint8Array[]> {
  const folder = mkdtempSync(join(tmpdir(), 'archwright-pdf-'));
  try {
    sheets.forEach((fods, at) => writeFileSync(join(folder, `sheet${at}.fods`), fods));
    const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    const inputs = sheets.map((_, at) => join(folder, `sheet${at}.fods`));
    const args = [profile, '--headless', '--convert-to', 'pdf', '--outdir', folder, ...inputs];
    await promisify(execFile)('soffice', args, { encoding: 'utf8', timeout: 280_000 });
    return sheets.map((_, at) => readFileSync(join(folder, `sheet${at}.pdf`)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
