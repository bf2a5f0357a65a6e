import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll } from 'vitest';

/** A folder of a test's own, gone when its tests are done. */
export function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'archwright-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  return folder;
}

/** Writes a file and gives its path. */
export function put(folder: string, name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** The parts of a written workbook as text, by name; with `under`, those of one folder. */
export function partsOf(path: string, under = ''): Record<string, string> {
  const parts = Object.entries(unzipSync(readFileSync(path))).filter(([name]) => name.startsWith(under));
  return Object.fromEntries(parts.map(([name, bytes]) => [name, strFromU8(bytes)]));
}

/** All that the sheets of a written workbook hold. */
export function cellsOf(path: string): string {
  return Object.values(partsOf(path, 'xl/worksheets/')).join('');
}
