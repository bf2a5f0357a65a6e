import { expect, it } from 'vitest';
import { pagesWide } from '../../src/workbook/pagesWide';

const columns = (count: number, width: number) => Array.from({ length: count }, () => width);

it('a sheet prints one page wide up to 206 characters, two beyond', () => {
  expect(pagesWide(columns(206, 1), 0)).toBe(1);
  expect(pagesWide(columns(207, 1), 0)).toBe(2);
  expect(pagesWide([], 0)).toBe(1);
});

it('columns repeated on every page leave less room for the others', () => {
  expect(pagesWide(columns(41, 10), 0)).toBe(2);
  expect(pagesWide(columns(41, 10), 2)).toBe(3);
});

it('repeated columns wider than a page still leave a number of pages', () => {
  expect(pagesWide([500, 10, 10], 1)).toBe(20);
});
