import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { ok, refuse, type Result } from '../src/result';
import type { Schedule, Table } from '../src/schedule/opening';
import { readSchedule } from '../src/schedule/readSchedule';
import { chooseTable, readTables } from '../src/schedule/readTables';
import type { Standards } from '../src/standards';
import type { SheetSource } from '../src/workbook/sheet';

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

function reason(error: unknown): string {
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
    return ok(await writeFile(path, content));
  } catch (error) {
    return refuse(`"${path}" can't be written: ${reason(error)}.`);
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
export async function writeWorkbook(path: string, sheets: readonly SheetSource[]): Promise<Result<void>> {
  const { writeXlsx } = await import('../src/workbook/xlsx');
  const bytes = writeXlsx(sheets);
  return bytes.ok ? writeOut(path, bytes.value) : bytes;
}

/** The schedule in a file, from the table of it that reads most like one. */
export async function readScheduleFile(path: string, standards: Standards): Promise<Result<Schedule>> {
  const tables = await readAllTables(path);
  if (!tables.ok) return tables;
  const table = chooseTable(tables.value);
  return table === null ? refuse(`"${path}" holds no table.`) : readSchedule(table, standards);
}

export async function readAllTables(path: string): Promise<Result<readonly Table[]>> {
  const bytes = await readBytes(path);
  return bytes.ok ? readTables(basename(path), bytes.value) : bytes;
}
