import { describe, expect, it } from 'vitest';
import { marksOf } from '../../src/quote/marks';

function marksFor(...marks: string[]) {
  const { find, within } = marksOf(marks);
  const named = (places: readonly number[]) => places.map((place) => marks[place]);
  return { find: (text: string) => named(find(text)), within: (text: string) => within(text).flatMap(named) };
}

describe('a mark', () => {
  it('is found in any case, and without its spaces and hyphens', () => {
    const { find } = marksFor('W1', 'W-2', 'Window 3');
    expect([find('W1'), find('w1'), find(' W-1 '), find('W 1'), find('w2'), find('WINDOW-3')].flat()).toEqual([
      'W1',
      'W1',
      'W1',
      'W1',
      'W-2',
      'Window 3',
    ]);
    expect([find('W10'), find(''), find('-'), find('1')].flat()).toEqual([]);
  });

  it('that is another one without its hyphen is only found as it is written', () => {
    const { find } = marksFor('W1-1', 'W11');
    expect([find('W1-1'), find('W11')].flat()).toEqual(['W1-1', 'W11']);
    expect(find('W1.1')).toEqual([]);
  });

  it.each<[string, string[]]>([
    ['Arch casing W3, poplar', ['W3']],
    ['arch casing (w3)', ['W3']],
    ['Casing for W 3', ['W3']],
    ['W3: segmental arch, 3-1/2 casing', ['W3']],
    ['Casing W1 and W3', ['W1', 'W3']],
    ['W1, W2 & W3', ['W1', 'W2', 'W3']],
    ['W1/W2', ['W1', 'W2']],
    ['W1-W3 arch heads', ['W1', 'W2', 'W3']],
    ['W1 thru W3', ['W1', 'W2', 'W3']],
    ['W3 with legs to suit W3', ['W3']],
    ['W30 casing', []],
    ['3 arches, 36 wide', []],
    ['a casing', []],
    ['', []],
  ])('is found in "%s": %j', (text, found) => {
    expect(marksFor('W1', 'W2', 'W3').within(text)).toEqual(found);
  });

  it('that is a bare number or letter is only one where the words say so', () => {
    const { within } = marksFor('3', 'A');
    expect(within('Arch casing for opening 3')).toEqual(['3']);
    expect(within('Casing, mark A')).toEqual(['A']);
    expect(within('3 pieces of a casing, 36 x 6')).toEqual([]);
  });
});
