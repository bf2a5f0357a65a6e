import { mkdir, readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { ListKind } from '../src/pdf/found';
import { isPdf } from '../src/pdf/isPdf';
import { chooseOffered, type TableChoice } from '../src/pdf/offer';
import type { OnPage } from '../src/pdf/readPdf';
import { ok, refuse, type Result } from '../src/result';
import type { Table } from '../src/schedule/opening';
import { readTables, refusedSize } from '../src/schedule/readTables';
import type { Book, SheetSource } from '../src/workbook/sheet';
import { writeWhole } from './wholeFile';

/** What the operating system's codes mean to the person who typed the name. */
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EEXIST: 'there is a file of that name',
  EACCES: 'it may not be opened',
  EPERM: 'it may not be opened',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'its folder does not exist',
  EROFS: 'the disk can only be read',
};

/** Why the operating system would not, in words. */
export function reason(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return (code === undefined ? undefined : REASONS[code]) ?? message;
}

export async function readBytes(path: string): Promise<Result<Uint8Array>> {
  try {
    return ok(await readFile(path));
  } catch (error) {
    return refuse(`"${path}" can't be read: ${reason(error)}.`);
  }
}

export async function writeOut(path: string, content: Uint8Array | string): Promise<Result<void>> {
  try {
    return ok(await writeWhole(path, content));
  } catch (error) {
    // A file that isn't there can be written; what is missing then is its folder.
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return refuse(`"${path}" can't be written: ${missing ? REASONS.ENOTDIR : reason(error)}.`);
  }
}

export async function makeFolder(path: string): Promise<Result<void>> {
  try {
    await mkdir(path, { recursive: true });
    return ok(undefined);
  } catch (error) {
    return refuse(`"${path}" can't be made: ${reason(error)}.`);
  }
}

/** The writer of workbooks is loaded only where one is wanted. */
export async function writeWorkbook(
  path: string,
  sheets: readonly SheetSource[],
  settings?: Book['settings'],
): Promise<Result<void>> {
  const { writeXlsx } = await import('../src/workbook/xlsx');
  const bytes = writeXlsx(sheets, settings);
  return bytes.ok ? writeOut(path, bytes.value) : bytes;
}

/** Which table of a PDF is wanted, and who is told of each page. */
export interface PdfWish {
  readonly choice?: TableChoice;
  readonly onPage?: OnPage;
}

/** The tables of a file; of a PDF, the only one that reads like such a list, or the one chosen. */
export async function readAllTables(
  path: string,
  kind: ListKind['name'] = 'schedule',
  { choice = {}, onPage = () => undefined }: PdfWish = {},
): Promise<Result<readonly Table[]>> {
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  const name = basename(path);
  if (!isPdf(bytes.value)) return readTables(name, bytes.value);
  const tooLarge = refusedSize(bytes.value);
  if (tooLarge !== null) return refuse(`"${name}" can't be read. ${tooLarge}`);
  const { readPdfFile } = await import('./pdf/readPdfFile');
  const read = await readPdfFile(name, bytes.value, kind, onPage);
  if (!read.ok) return refuse(`"${name}" can't be read. ${read.message}`);
  const table = chooseOffered(name, read.value, choice);
  return table.ok ? ok([table.value]) : table;
}
