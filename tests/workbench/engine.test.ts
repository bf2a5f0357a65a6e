import { afterAll, beforeAll, expect, test } from 'vitest';
import { ok, refuse } from '../../src/result';
import { startHeadless } from '../../taskpane/workbench/headless';
import type { Engine } from '../../taskpane/workbench/engine';
import type { GridFunction } from '../../taskpane/workbench/functions';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';

const parameters = [{ name: 'given', description: 'anything', optional: false }];
const seen: unknown[][] = [];
const FUNCTIONS: GridFunction[] = [
  {
    name: 'ARCH.SEEN',
    description: 'Keeps what it was given.',
    parameters,
    call: (args) => {
      seen.push([...args]);
      return ok(seen.length);
    },
  },
  { name: 'ARCH.TEXT', description: 'Text.', parameters, call: () => ok('1/2') },
  {
    name: 'ARCH.SPILL',
    description: 'A block.',
    parameters,
    call: () =>
      ok([
        [1, 'two'],
        [0.1 + 0.2, 4],
      ]),
  },
  { name: 'ARCH.REFUSE', description: 'Never.', parameters, call: () => refuse('rise must be more than 0; got -3') },
  {
    name: 'ARCH.THROW',
    description: 'Breaks.',
    parameters,
    call: () => {
      throw new Error('broken on purpose');
    },
  },
];

let engine: Engine;
let host: WorkbenchHost;
beforeAll(() => {
  engine = startHeadless(FUNCTIONS);
  host = new WorkbenchHost(engine);
});
afterAll(() => engine.univer.dispose());

async function enter(address: string, rows: (string | number | boolean | null)[][]) {
  expect(await host.writeCells('Sheet1', address, rows, true)).toEqual({ ok: true, value: undefined });
  await engine.settled();
}
async function values() {
  const read = await host.readSheet('Sheet1');
  return read.ok ? (read.value?.rows ?? []) : [];
}

test('a worksheet function is given numbers, text, truth values and blanks as a sheet holds them', async () => {
  await enter('A1', [[1.5, '36 1/2', true]]);
  await enter('F1', [['=ARCH.SEEN(A1,B1,C1,D1,"x",2,TRUE)']]);
  expect(seen.at(-1)).toEqual([1.5, '36 1/2', true, null, 'x', 2, true]);
  await enter('F2', [['=ARCH.SEEN(A1:D2)']]);
  expect(seen.at(-1)).toEqual([
    [
      [1.5, '36 1/2', true, null],
      [null, null, null, null],
    ],
  ]);
  await enter('F3', [['=ARCH.SEEN({1,2;3,4})']]);
  expect(seen.at(-1)).toEqual([
    [
      [1, 2],
      [3, 4],
    ],
  ]);
});

test('a left out argument reaches the function as null', async () => {
  await enter('F4', [['=ARCH.SEEN(1,,3)']]);
  expect(seen.at(-1)).toEqual([1, null, 3]);
});

test('text in a formula reaches the function as text, whatever number or date it looks like', async () => {
  await enter('F5', [['=ARCH.SEEN("1/2","3\'","12%","3-4","10:30","36")']]);
  expect(seen.at(-1)).toEqual(['1/2', "3'", '12%', '3-4', '10:30', '36']);
});

test('returned text stays text, and a block spills with every digit', async () => {
  await enter('H1', [['=ARCH.TEXT(1)']]);
  await enter('H3', [['=ARCH.SPILL(1)']]);
  const rows = await values();
  expect(rows[0]![7]).toBe('1/2');
  expect(rows[2]!.slice(7, 9)).toEqual([1, 'two']);
  expect(rows[3]!.slice(7, 9)).toEqual([0.1 + 0.2, 4]);
});

test('a refusal shows #VALUE! with its sentence, and a throw does too and stops nothing', async () => {
  await enter('H6', [['=ARCH.REFUSE(1)'], ['=ARCH.THROW(1)'], ['=1+H3']]);
  await host.show('Sheet1', 'H6');
  expect(await host.cellAt()).toMatchObject({
    ok: true,
    value: { address: 'H6', value: '#VALUE!', error: 'rise must be more than 0; got -3' },
  });
  await host.show('Sheet1', 'H7');
  expect(await host.cellAt()).toMatchObject({ value: { error: 'ARCH.THROW failed: broken on purpose' } });
  expect((await values())[7]![7]).toBe(2);
});

test('an error in an argument is the answer', async () => {
  await enter('H10', [['=ARCH.SEEN(1/0)'], ['=ARCH.SEEN(H10:H10)']]);
  const rows = await values();
  expect([rows[9]![7], rows[10]![7]]).toEqual(['#DIV/0!', '#DIV/0!']);
});

test('the sentence is gone once the cell calculates', async () => {
  await enter('H6', [['=ARCH.TEXT(1)']]);
  await host.show('Sheet1', 'H6');
  expect(await host.cellAt()).toMatchObject({ value: { value: '1/2', error: null } });
});
