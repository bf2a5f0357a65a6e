import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { archwright } from './archwright';

describe('archwright fn', () => {
  test('prints a number in full precision on one line', () => {
    expect(archwright(['fn', 'RADIUS', '36', '6'])).toEqual({ code: 0, out: '30\n', err: '' });
    // 4·atan(2·6/36) in degrees, by Math: an independent spelling of the contract's formula.
    expect(Number(archwright(['fn', 'ANGLE', '36', '6']).out)).toBeCloseTo((Math.atan(1 / 3) * 720) / Math.PI, 12);
  });

  test('reads JSON arguments as values and the rest as text', () => {
    expect(archwright(['fn', 'INCHES', `3'-6 1/2"`]).out).toBe('42.5\n');
    expect(archwright(['fn', 'HEADLENGTH', 'half round', '36', 'null', '0']).out).toBe(`${18 * Math.PI}\n`);
    expect(archwright(['fn', 'BOARDS', '[[24],[17]]', '[[10],[4]]', '[[96]]', '0.125']).out).toBe('4\n');
  });

  test('a negative argument is an argument, not an option', () => {
    expect(archwright(['fn', 'ARCLENGTH', '36', '6', '-1']).code).toBe(0);
  });

  test('a refused argument prints the error and exits 1', () => {
    const { code, out } = archwright(['fn', 'RADIUS', '36', '-3']);
    expect(code).toBe(1);
    expect(JSON.parse(out)).toEqual({ error: '#VALUE!', message: 'rise must be more than 0; got -3' });
  });

  test('no name and an unknown option are wrong usage', () => {
    expect(archwright(['fn'])).toMatchObject({ code: 2, out: '' });
    expect(archwright(['fn', '--every'])).toMatchObject({ code: 2, out: '' });
  });

  test('an unknown function is named in the error', () => {
    const { code, out } = archwright(['fn', 'NOSUCH', '1']);
    expect(code).toBe(1);
    expect(out).toContain('NOSUCH');
  });

  test('--lines answers every line in order, broken ones too', () => {
    const { code, out } = archwright(
      ['fn', '--lines'],
      '["RADIUS",36,6]\n\nnot json\n["RADIUS",36,0]\n["GUIDES",30,3.5]\n',
    );
    const answers = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as unknown);
    expect(code).toBe(0);
    expect(answers).toHaveLength(5);
    expect(answers[0]).toBe(30);
    expect(answers.slice(1, 4)).toEqual(
      Array.from({ length: 3 }, () => ({ error: '#VALUE!', message: expect.any(String) as string })),
    );
    expect(answers[4]).toEqual([[30 - 1 / 32, 33.5 + 1 / 32]]);
  });
});

describe('archwright', () => {
  test('without a command is wrong usage, and lists the commands', () => {
    const { code, out, err } = archwright([]);
    expect([code, out]).toEqual([2, '']);
    for (const name of ['fn', 'takeoff', 'stock']) expect(err).toContain(`  ${name} `);
  });

  test('--help of every command goes to stdout and exits 0', () => {
    const listed = archwright(['--help']);
    expect(listed.code).toBe(0);
    const names = [...listed.out.matchAll(/^ {2}(\w+) {2,}/gm)].map((match) => match[1]!);
    expect(names.length).toBeGreaterThanOrEqual(3);
    for (const name of names) {
      expect(archwright([name, '--help'])).toMatchObject({
        code: 0,
        err: '',
        out: expect.stringContaining(`archwright ${name}`) as string,
      });
    }
  });

  test('an unknown command, also one named like an object member, is wrong usage', () => {
    for (const name of ['bake', 'constructor', '__proto__']) expect(archwright([name]).code).toBe(2);
  });

  test('--version is that of package.json', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    expect(archwright(['--version']).out).toBe(`${version}\n`);
  });
});
