import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { strFromU8, unzipSync } from 'fflate';
import { readAddress } from '../../src/workbook/address';
import { valueOf } from '../value';

/** Makes Calc recalculate every formula on loading, so that cached values prove nothing. */
const ALWAYS_RECALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`;

/** What a cell holds after calculation: a number, text, a truth value, or an error such as "#VALUE!". */
export type Calculated = number | string | boolean;

/** Values by sheet, row and column (from 0). */
export type Book = ReadonlyMap<string, Calculated[][]>;

interface Waiting {
  readonly xlsx: Uint8Array;
  readonly resolve: (book: Book) => void;
  readonly reject: (error: unknown) => void;
}
let waiting: Waiting[] = [];

/**
 * A workbook's values as LibreOffice Calc computes them. Starting it takes longer than most workbooks: those that tests
 * running at once ask for are calculated in one go.
 */
export function calculated(xlsx: Uint8Array): Promise<Book> {
  return new Promise((resolve, reject) => {
    waiting.push({ xlsx, resolve, reject });
    if (waiting.length > 1) return;
    setTimeout(() => {
      const all = waiting;
      waiting = [];
      calculateAll(all.map((one) => one.xlsx)).then(
        (books) => all.forEach((one, at) => one.resolve(books[at]!)),
        (error: unknown) => all.forEach((one) => one.reject(error)),
      );
    }, 50);
  });
}

async function calculateAll(books: readonly Uint8Array[]): Promise<Book[]> {
  const folder = mkdtempSync(join(tmpdir(), 'archwright-calc-'));
  try {
    const profile = profileIn(folder);
    const names = books.map((_, at) => `book${at}.xlsx`);
    books.forEach((xlsx, at) => writeFileSync(join(folder, names[at]!), xlsx));
    const out = join(folder, 'out');
    const args = [`-env:UserInstallation=file://${profile}`, '--headless', '--convert-to', 'xlsx', '--outdir', out];
    const inputs = names.map((name) => join(folder, name));
    await promisify(execFile)('soffice', [...args, ...inputs], { encoding: 'utf8', timeout: 280_000 });
    return names.map((name) => readStored(readFileSync(join(out, name))));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A profile of LibreOffice's own kind, in a folder of the tests. */
export function profileIn(folder: string): string {
  const profile = join(folder, 'profile');
  mkdirSync(join(profile, 'user'), { recursive: true });
  writeFileSync(join(profile, 'user', 'registrymodifications.xcu'), ALWAYS_RECALCULATE);
  return profile;
}

/** Reads the stored values themselves: a general reader may round them, or drop a formula's zero. */
export function readStored(xlsx: Uint8Array): Book {
  const files = unzipSync(xlsx);
  const part = (path: string) => (files[path] ? strFromU8(files[path]) : '');
  const strings = [...part('xl/sharedStrings.xml').matchAll(/<si>([^]*?)<\/si>/g)].map(([, item]) => textIn(item!));
  const names = [...part('xl/workbook.xml').matchAll(/<sheet name="([^"]*)"/g)].map(([, name]) => name!);
  return new Map(names.map((name, at) => [name, cellsIn(part(`xl/worksheets/sheet${at + 1}.xml`), strings)]));
}

function cellsIn(xml: string, strings: readonly string[]): Calculated[][] {
  const rows: Calculated[][] = [];
  for (const [, attributes, content = ''] of xml.matchAll(/<c ([^>]*?)(?:\/>|>([^]*?)<\/c>)/g)) {
    const at = valueOf(readAddress(/r="([A-Z]+\d+)"/.exec(attributes!)![1]!));
    const stored = /<v>([^]*?)<\/v>/.exec(content)?.[1];
    if (stored === undefined) continue;
    const type = /t="(\w+)"/.exec(attributes!)?.[1] ?? 'n';
    const row = (rows[at.row] ??= []);
    row[at.column] =
      type === 'n'
        ? Number(stored)
        : type === 'b'
          ? stored === '1'
          : type === 's'
            ? strings[Number(stored)]!
            : unescaped(stored);
  }
  return rows;
}

function textIn(xml: string): string {
  return [...xml.matchAll(/<t[^>]*>([^]*?)<\/t>/g)].map(([, text]) => unescaped(text!)).join('');
}

function unescaped(text: string): string {
  return text.replace(/&(lt|gt|quot|apos|amp);/g, (_all, name: string) => ENTITIES[name]!);
}

const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', apos: "'", amp: '&' };
