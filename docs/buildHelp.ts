/** A part of `npm run build`: the pages of help beside the workbench and the add-in, in dist/web/docs. */
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { HELP_PAGES, helpPage } from './help';

/** Writes all pages and what they show into this folder. */
export function writeHelp(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const source of HELP_PAGES) {
    const { html, files } = helpPage(source);
    writeFileSync(join(folder, source.page), html);
    for (const file of files) cpSync(file, join(folder, file.replace(/^docs\//, '')));
  }
}

if (process.argv[1]?.endsWith('buildHelp.ts')) writeHelp('dist/web/docs');
