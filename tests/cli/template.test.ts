import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import DxfParser, { type IArcEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { archwright } from './archwright';
import { ownFolder, put } from './folder';

const folder = ownFolder();

const SCHEDULE = put(
  folder,
  'job.csv',
  'Mark,Qty,Head,Width,Rise,Casing,Profile\nA1,2,segmental,36,6,3.5,Casing\n../A2,1,elliptical,72,24,3.5,Back/band\nA3,1,straight,36,,3.5,Casing\nA4,1,segmental,,6,3.5,Casing\nA5,1,segmental,96,6,3.5,Casing\n',
);
const out = (name: string) => join(folder, name);
const run = (mark: string, name: string, ...more: string[]) =>
  archwright(['template', mark, '--schedule', SCHEDULE, '--out', out(name), ...more]);

describe('archwright template', () => {
  test('writes the drawings of one opening and prints their paths', () => {
    const { code, out: printed, err } = run('a1', 'one');
    expect(err).toBe('');
    expect(code).toBe(0);
    const files = readdirSync(out('one'));
    expect(files.map((file) => file.replace(/^.*-(?=\w+\.\w+$)/, '')).sort()).toEqual([
      'guides.dxf',
      'guides.svg',
      'overview.svg',
    ]);
    expect(printed.trim().split('\n').sort()).toEqual(files.map((file) => join(out('one'), file)).sort());
    const dxf = new DxfParser().parseSync(
      readFileSync(
        join(
          out('one'),
          files.find((file) => file.endsWith('.dxf'))!,
        ),
        'utf8',
      ),
    )!;
    const radii = dxf.entities.flatMap((entity) =>
      entity.type === 'ARC' && entity.layer === 'GUIDE' ? [(entity as IArcEntity).radius] : [],
    );
    // Radius 30, reveal 3/16, margin 1/4, clearance 1/32: the contract's guides.
    expect(Math.min(...radii)).toBeCloseTo(30.1875 - 0.25 - 1 / 32, 9);
    expect(Math.max(...radii)).toBeCloseTo(33.6875 + 0.25 + 1 / 32, 9);
  });

  test('writes both pairs of an elliptical head, whatever its mark and profile, into the folder only', () => {
    expect(run('../A2', 'two').code).toBe(0);
    expect(readdirSync(out('two')).filter((file) => file.endsWith('.dxf'))).toHaveLength(2);
    expect(readdirSync(folder).sort()).toEqual(expect.arrayContaining(['job.csv', 'two']));
  });

  test('adds ordinates to a radius longer than the trammel', () => {
    expect(run('A5', 'long').code).toBe(0);
    expect(readdirSync(out('long')).some((file) => file.endsWith('-ordinates.csv'))).toBe(true);
    expect(run('A5', 'longer', '--trammel', '400').code).toBe(0);
    expect(readdirSync(out('longer')).some((file) => file.endsWith('-ordinates.csv'))).toBe(false);
  });

  test('--all writes every pair of guide boards once', () => {
    const { code } = archwright(['template', '--all', '--schedule', SCHEDULE, '--out', out('all')]);
    expect(code).toBe(0);
    expect(readdirSync(out('all')).filter((file) => file.endsWith('.dxf'))).toHaveLength(4);
  });

  test.each([
    ['a mark that is not there', 'B9', 'The schedule has no opening "B9"; it has A1, ../A2, A3, A4, A5.'],
    ['a straight head', 'A3', 'A3 is straight: it needs no guide boards.'],
    ['an opening that is not complete', 'A4', "A4 can't be drawn yet."],
  ])('says why %s gives no drawing, and writes nothing', (_, mark, sentence) => {
    const { code, err } = run(mark, 'none');
    expect(code).toBe(1);
    expect(err).toContain(sentence);
    expect(existsSync(out('none'))).toBe(false);
  });

  test('says in a sentence why the folder cannot be made', () => {
    const { code, err } = run('A1', 'job.csv');
    expect([code, err]).toEqual([1, `"${SCHEDULE}" can't be made: there is a file of that name.\n`]);
  });

  test.each([
    ['no mark', ['--schedule', SCHEDULE, '--out', out('x')], 'template needs the mark'],
    ['a mark and --all', ['A1', '--all', '--schedule', SCHEDULE, '--out', out('x')], 'template needs the mark'],
    ['no schedule', ['A1', '--out', out('x')], 'template needs --schedule'],
    ['no folder', ['A1', '--schedule', SCHEDULE], 'template needs --out'],
    [
      'a bed line of 0',
      ['A1', '--schedule', SCHEDULE, '--out', out('x'), '--bed-line', '0'],
      '--bed-line must be a number',
    ],
  ])('refuses %s', (_, args, sentence) => {
    const { code, err } = archwright(['template', ...args]);
    expect(code).toBe(2);
    expect(err).toContain(sentence);
  });
});
