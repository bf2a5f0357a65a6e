import { describe, expect, it } from 'vitest';
import { call } from '../../functions/call';
import { METADATA, type Parameter } from '../../functions/metadata';
import { CASES } from './cases';

/** Where a head needs its rise, the rise can't be left out; this one doesn't. */
const CHOSEN: Readonly<Record<string, readonly unknown[]>> = {
  HEADLENGTH: ['half round', 36, 18, 1, 'level'],
  HEADRADIUS: ['half round', 36, 18, 5],
  HEADARCS: ['half round', 36, 18, 1, 'level', 5],
};

/** A call of each function that works, from the shared table, with as many arguments as any case has. */
const WORKING = METADATA.map((metadata) => {
  const cases = CASES.filter((one) => one.name === metadata.name && !one.args.some(Array.isArray));
  const candidates = cases.length > 0 ? cases : CASES.filter((one) => one.name === metadata.name);
  const longest = candidates.reduce((one, other) => (other.args.length > one.args.length ? other : one));
  return { metadata, args: CHOSEN[metadata.name] ?? longest.args };
});

const PAIRED = ['feed_radius', 'edge_radius'];

/** Blocks of a sheet's rows may hold anything: what is wrong in a row is a figure of it (tests/functions/opening.test.ts). */
const OF_ROWS = ['OPENING', 'SHARES'];

const PARAMETERS = WORKING.flatMap(({ metadata, args }) =>
  metadata.parameters.map((parameter, at) => ({ name: metadata.name, argument: parameter.name, parameter, at, args })),
).filter(({ name, parameter }) => !(OF_ROWS.includes(name) && parameter.range));

function withArgument(args: readonly unknown[], at: number, value: unknown): unknown[] {
  const changed = [...args];
  while (changed.length < at) changed.push(null);
  changed[at] = value;
  return changed;
}

function messageOf(name: string, args: readonly unknown[]): string {
  const called = call(name, args);
  if (!('error' in called)) expect.fail(`${name} accepted it and gave ${JSON.stringify(called.value)}`);
  expect(called.error).toBe('#VALUE!');
  expect(called.message).not.toContain('fault');
  return called.message;
}

const names = (parameter: Parameter) => new RegExp(`\\b${parameter.name}\\b`);

describe.each(PARAMETERS)('$name, argument $argument', ({ name, parameter, at, args }) => {
  it('refuses a truth value, naming the argument and the value', () => {
    const message = messageOf(name, withArgument(args, at, true));
    expect(message).toMatch(names(parameter));
    expect(message).toContain('TRUE');
  });

  it('refuses what is no number: NaN, infinities, an object', () => {
    for (const bad of [NaN, Infinity, -Infinity, {}, () => 1]) {
      expect(messageOf(name, withArgument(args, at, bad))).toMatch(names(parameter));
    }
  });

  it('refuses an absurd size', () => {
    expect(messageOf(name, withArgument(args, at, 1e300))).toMatch(names(parameter));
    expect(messageOf(name, withArgument(args, at, -1e300))).toMatch(names(parameter));
  });

  it('refuses text that is not what it takes, quoting it', () => {
    const message = messageOf(name, withArgument(args, at, 'a bit more'));
    expect(message).toMatch(names(parameter));
    expect(message).toContain('"a bit more"');
  });

  if (!parameter.range) {
    it('takes one cell that arrives as a range, and refuses more cells', () => {
      const plain = call(name, args);
      if (at < args.length) expect(call(name, withArgument(args, at, [[args[at]]]))).toEqual(plain);
      for (const range of [
        [[1, 2]],
        [[1], [2]],
        [
          [1, 2],
          [3, 4],
        ],
        [],
        [[]],
      ]) {
        const message = messageOf(name, withArgument(args, at, range));
        expect(message).toMatch(names(parameter));
        expect(message).toContain('range');
      }
    });
  }

  if (parameter.optional) {
    it('takes a blank, as null, undefined, "" or a blank cell, for left out', () => {
      const leftOut = call(name, withArgument(args, at, undefined));
      // One radius of a pair can't be left out alone.
      if (!PAIRED.includes(parameter.name)) expect(leftOut).toHaveProperty('value');
      for (const blank of [null, '', ' ', [[null]], [['']]]) {
        expect(call(name, withArgument(args, at, blank))).toEqual(leftOut);
      }
    });
  } else {
    it('says that it is missing when blank', () => {
      for (const blank of [null, undefined, '', '  ', [[null]]]) {
        const message = messageOf(name, withArgument(args, at, blank));
        expect(message).toMatch(names(parameter));
        expect(message).toMatch(/ is missing/);
      }
    });
  }
});

describe('a call', () => {
  it.each(WORKING)('of $metadata.name with an argument too many is refused', ({ metadata, args }) => {
    const full = [...args];
    while (full.length < metadata.parameters.length) full.push(null);
    expect(messageOf(metadata.name, [...full, 1])).toBe(
      `${metadata.name} takes at most ${metadata.parameters.length} arguments; got ${full.length + 1}`,
    );
  });

  it('forgives letter case and the name space, and names a function it does not know', () => {
    expect(call('arch.radius', [36, 6])).toEqual({ value: 30 });
    expect(call('RADII', [36, 6])).toEqual({ error: '#NAME?', message: 'there is no worksheet function RADII' });
  });

  it('reads a number with its decimals written out as text as that number', () => {
    expect(call('FEEDRATE', [' 20 ', '7000.0', '1'])).toEqual(call('FEEDRATE', [20, 7000, 1]));
  });
});
