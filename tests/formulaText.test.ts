import { expect, it } from 'vitest';
import { cellsNamed, takenApart, withAddresses } from '../src/formulaText';

const { its, all } = cellsNamed<'span' | 'price'>();

it('a template keeps its texts and the cells between them in order, those of a row apart from whole columns', () => {
  expect(takenApart(`IF(${its.span}>0,SUM(${all.price}),${its.price})`)).toEqual({
    texts: ['IF(', '>0,SUM(', '),', ')'],
    keys: [
      { key: 'span', all: false },
      { key: 'price', all: true },
      { key: 'price', all: false },
    ],
  });
  expect(takenApart('1+1')).toEqual({ texts: ['1+1'], keys: [] });
});

it('each cell gets the address of its own key', () => {
  const of = (key: string, whole: boolean) => (whole ? `T[${key}]` : key === 'span' ? 'B7' : 'C7');
  expect(withAddresses(`${its.span}*2+SUM(${all.price})/${its.price}`, of)).toBe('B7*2+SUM(T[price])/C7');
});
