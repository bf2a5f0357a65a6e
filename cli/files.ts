import { readFile, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { ok, refuse, type Result } from '../src/result';
import type { Table } from '../src/schedule/opening';
import { chooseTable, readTables } from '../src/schedule/readTables';

/** What the operating system's codes mean to the person who typed the name. */
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
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

/** The table of a file that reads most like a schedule. */
export async function readTable(path: string): Promise<Result<Table>> {
  const tables = await readAllTables(path);
  if (!tables.ok) return tables;
  const table = chooseTable(tables.value);
  return table === null ? refuse(`"${path}" holds no table.`) : ok(table);
}

export async function readAllTables(path: string): Promise<Result<readonly Table[]>> {
  const bytes = await readBytes(path);
  return bytes.ok ? readTables(basename(path), bytes.value) : bytes;
}
