import { describe, expect, it } from 'vitest';
import { normalHeading, readHeading, splitUnit } from '../../src/schedule/headingText';

describe('units of columns', () => {
  it.each([
    ['Width (in)', 'Width', 'in'],
    ['Width, mm', 'Width', 'mm'],
    ['Width mm', 'Width', 'mm'],
    ['Height ft-in', 'Height', 'ft-in'],
    ['Face in.', 'Face', 'in'],
    ['Width - in', 'Width', 'in'],
    ['Width', 'Width', null],
    ['R.O. (W)', 'R.O. (W)', null],
  ])('%s is %s in %s', (heading, name, unit) => expect(splitUnit(heading)).toEqual({ name, unit }));
});

describe('headings', () => {
  it.each([
    ['R.O. Width', 'ro width'],
    ['Rough  Opng.\nHt', 'rough opng ht'],
    ['Window #', 'window no'],
    ['No. Req’d', 'no reqd'],
  ])('%j is compared as %s', (heading, normal) => expect(normalHeading(heading)).toBe(normal));

  it('a bracket that names another thing is not dropped', () => {
    expect(readHeading('Width (glass)')).toBe(null);
    expect(readHeading('Width (see elevations)')).toMatchObject({ key: 'width', unit: null });
    expect(readHeading('Width (rough opening)')).toMatchObject({ key: 'roughWidth' });
  });
});
