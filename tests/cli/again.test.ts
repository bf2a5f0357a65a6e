import { spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { archwright } from './archwright';
import { ownFolder, partsOf, put } from './folder';

const folder = ownFolder();
const SCHEDULE = put(
  folder,
  'job.csv',
  'Mark,Qty,Head,Width,Rise,Casing\nA1,2,segmental,36,6,3-1/2\nA2,1,elliptical,48,12,3.5\n',
);

/** A takeoff of the schedule under this name. */
function written(name: string): string {
  const out = join(folder, name);
  expect(archwright(['takeoff', SCHEDULE, '--out', out])).toMatchObject({ code: 0 });
  return out;
}

const TAKEOFF = 'xl/worksheets/sheet1.xml';

/** Changes the first opening's span from 36 to 40, as somebody in a spreadsheet program does. */
function editSpan(path: string): void {
  const files = unzipSync(readFileSync(path));
  const xml = strFromU8(files[TAKEOFF]!);
  const edited = xml.replace(/(<c r="F6"[^>]*>)<v>36<\/v>/, '$1<v>40</v>');
  expect(edited).not.toBe(xml);
  writeFileSync(path, zipSync({ ...files, [TAKEOFF]: strToU8(edited) }));
}

const spanIn = (path: string) => /<c r="F6"[^>]*><v>(.*?)<\/v>/.exec(partsOf(path)[TAKEOFF]!)?.[1];

describe('--out onto a takeoff that stands there', () => {
  test('fills it again: a span changed by hand is kept, and said', () => {
    const out = written('again.xlsx');
    editSpan(out);
    const { code, err } = archwright(['takeoff', SCHEDULE, '--out', out]);
    expect(code).toBe(0);
    expect(err).toContain('A1: kept span 40 from the workbook; the list says 36.');
    expect(err).toContain(`Filled again ${out}.`);
    expect(spanIn(out)).toBe('40');
  });

  test('of the first version: says what has become of its prices', () => {
    const out = join(folder, 'first.xlsx');
    copyFileSync('tests/workbook/firstVersion.xlsx', out);
    const list = put(folder, 'first.csv', 'Mark,Qty,Head,Width,Rise\n\nA2,1,half round,40,\n');
    const { code, err } = archwright(['takeoff', list, '--out', out]);
    expect(code).toBe(0);
    expect(err).toMatch(/^1 of 1 prices of the first version are others now: \$[\d.]+ together then, \$[\d.]+ now\.$/m);
    expect(err).toMatch(/^They pay for planing blanks /m);
  });

  test('filled again without a change is byte for byte the same', () => {
    const out = written('same.xlsx');
    const before = readFileSync(out);
    expect(archwright(['takeoff', SCHEDULE, '--out', out]).code).toBe(0);
    expect(readFileSync(out).equals(before)).toBe(true);
  });

  test('--replace writes a new one', () => {
    const out = written('new.xlsx');
    editSpan(out);
    expect(archwright(['takeoff', SCHEDULE, '--out', out, '--replace']).err).toContain(`Wrote ${out}.`);
    expect(spanIn(out)).toBe('36');
  });

  test('with a sheet of another kind beside it is refused, and untouched', () => {
    const out = join(folder, 'proposal.xlsx');
    expect(archwright(['takeoff', SCHEDULE, '--out', out, '--job', put(folder, 'job.json', '{}')]).code).toBe(0);
    const before = readFileSync(out);
    const { code, err } = archwright(['takeoff', SCHEDULE, '--out', out]);
    expect(code).toBe(1);
    expect(err).toContain('also holds Proposal, which would be lost');
    expect(readFileSync(out).equals(before)).toBe(true);
  });

  test.each(['check', 'proposal', 'tickets'])(
    '%s writes over one as it was filled, not over one changed by hand',
    (command) => {
      const out = written(`${command}-edited.xlsx`);
      const args =
        command === 'check'
          ? ['check', put(folder, 'quote.csv', 'Mark,Qty,Length\nA1,2,50\n'), '--schedule', SCHEDULE, '--out', out]
          : [command, SCHEDULE, '--out', out];
      editSpan(out);
      const before = readFileSync(out);
      const refused = archwright(args);
      expect(refused.code).toBe(1);
      expect(refused.err).toContain('is a takeoff with changes that would be lost (A1)');
      expect(readFileSync(out).equals(before)).toBe(true);
      expect(archwright([...args, '--replace']).code).toBe(0);
      written(`${command}-clean.xlsx`);
      expect(archwright(args.map((one) => one.replace('-edited.xlsx', '-clean.xlsx'))).code).toBe(0);
    },
  );

  test('a file that is no takeoff, or half a one, is refused by what it is; an empty one is filled', () => {
    const half = written('half.xlsx');
    writeFileSync(half, readFileSync(half).subarray(0, 9000));
    const refused = archwright(['takeoff', SCHEDULE, '--out', half]);
    expect(refused.code).toBe(1);
    expect(refused.err).toContain('add --replace to write over it');
    const other = archwright(['takeoff', SCHEDULE, '--out', put(folder, 'other.xlsx', '')]);
    expect(other.code).toBe(0);
  });
});

describe('a workbook is written whole or not at all', () => {
  test('where the disk is full the good old file stays, and nothing is left beside it', () => {
    // A limit on a file's size stands in for the full disk: the write fails half-way all the same.
    const own = join(folder, 'full');
    mkdirSync(own);
    const out = join(own, 'job.xlsx');
    expect(archwright(['takeoff', SCHEDULE, '--out', out]).code).toBe(0);
    const before = readFileSync(out);
    const limited = spawnLimited(['takeoff', SCHEDULE, '--out', out, '--replace']);
    return limited.then((code) => {
      expect(code).not.toBe(0);
      expect(readFileSync(out).equals(before)).toBe(true);
      expect(readdirSync(own)).toEqual(['job.xlsx']);
    });
  });
});

/** The command with files held to 4 kB each. */
function spawnLimited(args: readonly string[]): Promise<number | null> {
  const line = `trap '' XFSZ; ulimit -f 4; exec "$0" dist/cli/archwright.cjs "$@"`;
  const child = spawn('bash', ['-c', line, process.execPath, ...args], { stdio: 'ignore' });
  return new Promise((done) => child.on('close', done));
}
