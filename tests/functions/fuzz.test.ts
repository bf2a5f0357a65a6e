import { describe, expect, it } from 'vitest';
import { refusalMessage } from '../../functions/error';
import type { Answer, FunctionMetadata, Parameter } from '../../functions/metadata';
import { FUNCTIONS } from '../../functions/registry';
import { ENDS, HEAD_SHAPES } from '../../src/head/head';
import { random, type Random } from '../random';
import type { Case } from './case';
import { CASES } from './cases';

/** Calls of each function; FUZZ_CALLS=1000000 runs longer, FUZZ_SEED another lot. */
const CALLS = Number(process.env['FUZZ_CALLS'] ?? 4_000);
const SEED = Number(process.env['FUZZ_SEED'] ?? 3);

const ODD: readonly unknown[] = [
  null,
  undefined,
  '',
  ' ',
  true,
  false,
  NaN,
  Infinity,
  -Infinity,
  0,
  -0,
  5e-324,
  1e-300,
  1e-17,
  1e15,
  1e16,
  1e300,
  Number.MAX_VALUE,
  -1,
  0.1,
  'abc',
  '36 1/2',
  '3\'-6 1/2"',
  '914 mm',
  '1/0',
  '-',
  '=1+1',
  '\u0000',
  '٣٦',
  '9'.repeat(400),
  [],
  [[]],
  [[36]],
  [[1, 2], [3]],
  [[null, '', 0]],
  [[['deep']]],
  {},
  new Date(0),
  Symbol('no value'),
  10n,
];
const WORDS = [...HEAD_SHAPES, ...ENDS, 'miter', 'sawn', 'HR', 'gothic', 'toString', '__proto__'];

const TAKES_WORDS = ['head', 'ends', 'cut'];

/** Half the arguments are what a shop might type, the other half anything at all. */
function argument(any: Random, { name, range }: Parameter): unknown {
  const sort = any.whole(0, 9);
  if (TAKES_WORDS.includes(name) && sort < 7) return any.pick(WORDS);
  if (sort >= 8) return any.pick(ODD);
  if (sort === 7) return any.pick(WORDS);
  if (range && sort > 1) {
    const rows = any.whole(1, 4);
    return Array.from({ length: rows }, () => [sort > 2 ? any.whole(0, 60) : any.pick(ODD)]);
  }
  if (sort === 6) return any.size(1e-12, 1e12) * any.pick([1, 1, -1]);
  if (sort >= 4) return any.whole(-2, 400);
  return any.between(0, 100);
}

/** Anything at all for every argument, now and then too few of them. */
function invented(any: Random, { parameters }: FunctionMetadata): unknown[] {
  const given = any.whole(0, 20) === 0 ? any.whole(0, parameters.length) : parameters.length;
  return parameters.slice(0, given).map((parameter) => argument(any, parameter));
}

/** A call that works, with about one argument in four replaced. */
function mutated(any: Random, { parameters }: FunctionMetadata, { args }: Case): unknown[] {
  return parameters.map((parameter, at) => (any.whole(0, 3) === 0 ? argument(any, parameter) : args[at]));
}

/** Why an answer can't stand in a cell; null where it can. */
function unfit(answer: Answer): string | null {
  if (typeof answer === 'number') return Number.isFinite(answer) ? null : String(answer);
  // What a row needs quotes the cell, whatever stands in it.
  if (typeof answer === 'string')
    return /NaN|Infinity|undefined|null/.test(answer.replace(/[;,] got .*$/s, '').replace(/^Needs .*$/s, ''))
      ? answer
      : null;
  if (answer.length === 0 || answer[0]!.length === 0) return 'an empty block';
  if (answer.some((row) => row.length !== answer[0]!.length)) return 'a ragged block';
  return (
    answer
      .flat()
      .map((cell) => unfit(cell))
      .find((why) => why !== null) ?? null
  );
}

describe('any arguments whatever', () => {
  it.each(FUNCTIONS)(
    `give $name a finite answer or a refusal of one sentence, in ${CALLS} calls`,
    ({ name, metadata, run }) => {
      const any = random(SEED + name.length * 7919 + name.charCodeAt(0));
      const known = CASES.filter(
        (one) => one.name === name && one.args.every((arg) => !Array.isArray(arg) || arg.length < 9),
      );
      let answered = 0;
      for (let trial = 0; trial < CALLS; trial++) {
        const args = any.whole(0, 1) === 0 ? mutated(any, metadata, any.pick(known)) : invented(any, metadata);
        const said = () => `${name}(${args.map(String).join(', ')})`;
        let answer: Answer;
        try {
          answer = run(...args);
        } catch (thrown) {
          const message = refusalMessage(thrown);
          if (message === null) expect.fail(`${said()} threw ${String(thrown)}`);
          if (!/^[^\n]{10,400}$/.test(message) || /NaN(?!$)|undefined|\[object/.test(message.replace(/got .*$/, ''))) {
            expect.fail(`${said()} was refused with "${message}"`);
          }
          // Within the limits on every size no answer overflows: that sentence would hide a fault.
          if (message.startsWith('the arguments are too far apart')) expect.fail(`${said()} is not computed`);
          continue;
        }
        const why = unfit(answer);
        if (why !== null) expect.fail(`${said()} gave ${why}`);
        answered++;
      }
      // Fuzz that is refused every time would find nothing.
      expect(answered).toBeGreaterThan(CALLS / 20);
    },
    120_000,
  );
});
