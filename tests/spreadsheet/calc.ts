import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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

/** A workbook's values by sheet, row and column (from 0), as LibreOffice Calc computes them. */
export function calculated(xlsx: Uint8Array): Map<string, Calculated[][]> {
  const folder = mkdtempSync(join(tmpdir(), 'archwright-calc-'));
  try {
    const profile = join(folder, 'profile');
    mkdirSync(join(profile, 'user'), { recursive: true });
    writeFileSync(join(profile, 'user', 'registrymodifications.xcu'), ALWAYS_RECALCULATE);
    const input = join(folder, 'book.xlsx');
    writeFileSync(input, xlsx);
    const out = join(folder, 'out');
    const args = [
      `-env:UserInstallation=file://${profile}`,
      '--headless',
      '--convert-to',
      'xlsx',
      '--outdir',
      out,
      input,
    ];
    const run = spawnSync('soffice', args, { encoding: 'utf8', timeout: 170_000 });
    if (run.status !== 0) throw new Error(`soffice ended with ${run.status}: ${run.stderr}`);
    return read(readFileSync(join(out, 'book.xlsx')));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Reads the stored values themselves: a general reader may round them, or drop a formula's zero. */
function read(xlsx: Uint8Array): Map<string, Calculated[][]> {
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
