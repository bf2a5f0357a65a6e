import { describe, expect, it } from 'vitest';
import { call } from '../../functions/call';
import { SETTINGS, defaultStandards } from '../../src/standards';
import { FIGURES, figureOf } from '../../src/takeoff/figures';
import { MAIN, MORE } from '../../src/takeoff/row';
import { takeoff } from '../../src/takeoff/takeoff';
import { random } from '../random';
import { randomOpenings } from '../takeoff/openings';

const STANDARDS = defaultStandards();
const SHOP = SETTINGS.map(({ key, label }) => [label, STANDARDS[key]]);
const WOOD = STANDARDS.stock.map((board) => [
  ...[board.species, board.quarters, board.thickness, board.width, board.length],
  ...[board.pricePerBoardFoot, board.onHand],
]);
const TAKEN = takeoff(randomOpenings(80, random(23)), STANDARDS);
const blocks = TAKEN.openings.map(({ cells }) => ({
  main: [MAIN.map((field) => cells[field])],
  more: [MORE.map((field) => cells[field])],
}));
const opening = (figure: string, main: unknown, more: unknown, shop: unknown = SHOP) =>
  call('OPENING', [figure, main, more, shop, WOOD]);

describe('ARCH.OPENING', () => {
  it('gives every figure of 80 random openings as the takeoff has it', () => {
    TAKEN.openings.forEach((row, at) => {
      for (const figure of FIGURES)
        expect(opening(figure.name, blocks[at]!.main, blocks[at]!.more)).toEqual({
          value: figureOf(figure, row, 'in'),
        });
    });
  });

  it('takes a blank for the standard, however it arrives, and cells that are missing at the end', () => {
    const whole = opening(
      'long point',
      [[1, 'segmental', 36, 6]],
      [['radial', 0.1875, 3.5, 0.75, 'Poplar', 'Casing', 0]],
    );
    for (const more of [[['', '', '']], [[null]], '', null, [['radial']]])
      expect(opening('long point', [[1, 'segmental', 36, 6]], more)).toEqual(whole);
  });

  it('a setting that is blank means its default, and one that is wrong blanks only what rests on it', () => {
    const shop = SHOP.map(([label, value]) => [label, label === 'Feed' ? 'fast' : label === 'Reveal' ? '' : value]);
    const arch = [[1, 'segmental', 36, 6]];
    for (const figure of ['radius', 'inside radius', 'long point', 'blank', 'stock'])
      expect(opening(figure, arch, [[]], shop)).toEqual(opening(figure, arch, [[]]));
    for (const figure of ['cuts', 'run minutes', 'labor'])
      expect(opening(figure, arch, [[]], shop)).toEqual({ value: '' });
    expect(opening('needs', arch, [[]], shop)).toEqual({ value: 'Feed must be a number from 0.1 to 200; got "fast".' });
  });

  it('says the doubt that a cell holds in place of a figure, and prices nothing on it', () => {
    const doubtful = [[1, 'segmental', '? The span is 36 or 38.', 6]];
    expect(opening('needs', doubtful, [[]])).toEqual({ value: 'The span is 36 or 38.' });
    expect(opening('labor', doubtful, [[]])).toEqual({ value: '' });
  });

  it.each([
    ['volume', SHOP, WOOD, /^figure must be the name of a figure, .*; got "volume"$/],
    ['radius', [['Reveal']], [['Poplar']], /^Stock list, row 1: quarters must be a number, more than 0; got nothing\./],
    ['radius', [['no', 'setting']], WOOD, /^shop must be the range Shop/],
    ['radius', null, WOOD, /^shop is missing/],
    ['radius', [['Unit of length', 'yd']], WOOD, /^the unit of length must be in or mm; got "yd"$/],
  ])('refuses %s with a sentence', (figure, shop, wood, sentence) => {
    const refused = call('OPENING', [figure, [[1, 'segmental', 36, 6]], [[]], shop, wood]);
    expect(refused).toMatchObject({ error: '#VALUE!' });
    expect((refused as { message: string }).message).toMatch(sentence);
  });

  it('reads every setting by the name beside it', () => {
    const other = SETTINGS.filter(({ key }) => !['unit', 'species', 'profile'].includes(key)).map(({ label }) => label);
    for (const label of other) {
      const shop = SHOP.map(([name, value]) => [name, name === label ? 'nonsense' : value]);
      const said = opening('needs', [[1, 'elliptical', 60, 20]], [['legs', null, null, null, null, null, 40]], shop);
      expect(said, label).toHaveProperty('value');
    }
  });
});

describe('ARCH.SHARES', () => {
  const no = TAKEN.openings.map((row) => [row.no]);
  const main = blocks.map((block) => block.main[0]!);
  const more = blocks.map((block) => block.more[0]!);

  it('gives by ascending number what the takeoff has, whatever the order of the rows', () => {
    const expected = TAKEN.openings.map((row) => [row.no, row.share?.money ?? 0, row.share?.wood ?? 0]);
    expect(call('SHARES', [no, main, more, SHOP, WOOD])).toEqual({ value: expected });
    const back = [no, main, more].map((rows) => [...rows].reverse());
    expect(call('SHARES', [...back, SHOP, WOOD, [['', '', '', '', '']]])).toEqual({ value: expected });
  });

  it('refuses rows of different height and a number given twice', () => {
    expect(call('SHARES', [no, main.slice(1), more, SHOP, WOOD])).toMatchObject({
      message: 'no, main and more must have the same number of rows; got 80, 79 and 80',
    });
    expect(call('SHARES', [no.map(() => [7]), main, more, SHOP, WOOD])).toMatchObject({
      message: 'no must name each opening once; got 7 twice',
    });
  });
});
