import { describe, expect, it } from 'vitest';
import { call } from '../../functions/call';
import { METADATA } from '../../functions/metadata';
import { expectAnswer } from './answer';
import { CASES, REFUSALS } from './cases';

const shown = (one: { name: string; args: readonly unknown[] }) =>
  `${one.name}(${JSON.stringify(one.args).slice(1, -1)})`;

describe('a worksheet function', () => {
  for (const one of CASES) {
    it(`${shown(one)} gives ${JSON.stringify(one.answer)}: ${one.source}`, () => {
      const called = call(one.name, one.args);
      if ('error' in called) expect.fail(called.message);
      expectAnswer(called.value, one.answer, one.within);
    });
  }

  for (const one of REFUSALS) {
    it(`${shown(one)} is refused in words`, () => {
      expect(call(one.name, one.args)).toEqual({ error: '#VALUE!', message: one.message });
    });
  }

  it.each(METADATA.flatMap(({ name, examples }) => examples.map((example) => ({ name, ...example }))))(
    'gives what its docstring says: $formula → $answer',
    ({ name, args, answer }) => {
      const called = call(name, args);
      if ('error' in called) expect.fail(called.message);
      expectAnswer(called.value, answer, 5e-12); // examples print 12 digits
    },
  );

  it('has cases for every function there is', () => {
    const tested = new Set(CASES.map(({ name }) => name));
    expect(METADATA.map(({ name }) => name).filter((name) => !tested.has(name))).toEqual([]);
  });
});
