import { describe, expect, it } from 'vitest';
import { ENDS, HEAD_SHAPES } from '../../src/head/head';
import { readEnds, readHead, readHeadWords } from '../../src/head/words';
import { refusalOf, valueOf } from '../value';

describe('the shape of a head is read from', () => {
  it.each(HEAD_SHAPES)('its own name, %s, in any case and with any marks', (shape) => {
    for (const text of [shape, shape.toUpperCase(), shape.replace(/[ -]/g, ''), `  ${shape.replace(/[ -]/g, '_')}. `]) {
      expect(valueOf(readHead(text))).toBe(shape);
    }
  });

  it.each([
    ['half-round', 'half round'],
    ['HR', 'half round'],
    ['H.R.', 'half round'],
    ['1/2 round', 'half round'],
    ['½ Round', 'half round'],
    ['½-rd', 'half round'],
    ['semicircle', 'half round'],
    ['Semi-Circular', 'half round'],
    ['Round top', 'half round'],
    ['round arch', 'half round'],
    ['Half Round Head', 'half round'],
    ['Rnd. tops', 'half round'],
    ['round arches', 'half round'],
    ['Circle top', 'half round'],
    ['circle-head windows', 'half round'],
    ['QR', 'quarter round'],
    ['1/4 Rnd', 'quarter round'],
    ['¼ round', 'quarter round'],
    ['full circle', 'round'],
    ['Circle', 'round'],
    ['round window', 'round'],
    ['Circular openings', 'round'],
    ['gothic', 'pointed'],
    ['Gothic Arch', 'pointed'],
    ['lancet', 'pointed'],
    ['eyebrow', 'segmental'],
    ['Eye-brow', 'segmental'],
    ['Seg.', 'segmental'],
    ['segment head', 'segmental'],
    ['basket handle', 'three-centered'],
    ['3-centered', 'three-centered'],
    ['three centred arch', 'three-centered'],
    ['Ellipse', 'elliptical'],
    ['ellip.', 'elliptical'],
    ['semi-elliptical arch', 'elliptical'],
    ['Sq. head', 'straight'],
    ['flat', 'straight'],
    ['Rectangular', 'straight'],
    ['eyebrow on legs', 'segmental'],
    ['Eyebrow w/ legs', 'segmental'],
    ['half round top w/ legs', 'half round'],
    ['Half round with side legs', 'half round'],
    ['drop pointed', 'pointed'],
    ['equilateral arch', 'pointed'],
    ['Tudor arch', 'four-centered'],
    ['4-centred', 'four-centered'],
    ['Flat top with radius corners', 'radius corners'],
    ['eased', 'radius corners'],
    ['oval window', 'full ellipse'],
    ['half eyebrow', 'half segmental'],
    ['raked arch', 'half segmental'],
    ['¼ ellipse', 'quarter ellipse'],
    ['Peak', 'gable'],
    ['dog-eared', 'clipped corners'],
    ['sloped head', 'shed'],
    ['Octagonal window', 'octagon'],
    ['horseshoe at spring', 'segmental'],
  ])('%s: %s', (text, shape) => {
    expect(valueOf(readHead(text))).toBe(shape);
  });

  it.each(['', '  ', 'half', 'roundish', '36', 'arch 5', 'circular arch', 'full circle top', '???'])(
    'but not from "%s"',
    (text) => {
      const sentence = refusalOf(readHead(text));
      expect(sentence).toContain('head must be one of segmental, half round, quarter round, round, elliptical,');
      expect(sentence).toContain(text.trim() === '' ? 'got nothing' : `got "${text}"`);
    },
  );
});

it('text longer than 60 characters names no shape, and is quoted no further than a sentence bears', () => {
  expect(valueOf(readHead('arch head'))).toBe('segmental');
  expect(valueOf(readHead(`arch${' '.repeat(52)}head`))).toBe('segmental');
  expect(readHead(`arch${' '.repeat(53)}head`).ok).toBe(false);
  expect(valueOf(readHeadWords(`eyebrow${' '.repeat(45)} on legs`)).ends).toBe('legs');
  expect(readHeadWords(`eyebrow${' '.repeat(46)} on legs`).ok).toBe(false);
  expect(refusalOf(readHead(`arch${' head'.repeat(30)}`))).toMatch(/got "arch( head){11} …"$/);
});

describe('how the arc stops is read from', () => {
  it.each(ENDS)('its own name, %s', (ends) => {
    expect(valueOf(readEnds(ends.toUpperCase()))).toBe(ends);
  });

  it.each([
    ['mitered legs', 'legs'],
    ['Mitred to legs', 'legs'],
    ['leg', 'legs'],
    ['level cut', 'level'],
    ['on the spring line', 'level'],
    ['Horizontal', 'level'],
    ['radial ends', 'radial'],
  ])('%s: %s', (text, ends) => {
    expect(valueOf(readEnds(text))).toBe(ends);
  });

  it.each(['', 'butt', 'plumb?'])('but not from "%s"', (text) => {
    expect(refusalOf(readEnds(text))).toContain(
      'ends must be one of radial, level, legs, mitered, over legs, between legs, square; got',
    );
  });
});

it('"on legs" behind a head says how the arc stops, "equilateral" how high it is', () => {
  expect(valueOf(readHeadWords('eyebrow on legs'))).toMatchObject({ shape: 'segmental', ends: 'legs', riseOf: null });
  expect(valueOf(readHeadWords('eyebrow'))).toMatchObject({ ends: null });
  const { riseOf, shape } = valueOf(readHeadWords('Equilateral gothic'));
  expect(shape).toBe('pointed');
  expect(valueOf(readHeadWords('gothic')).riseOf).toBeNull();
  // Struck from both spring points with the span: √(36² − 18²). M. H. Bloxam, Principles of Gothic Ecclesiastical Architecture.
  expect(riseOf!(36)).toBeCloseTo(Math.sqrt(36 ** 2 - 18 ** 2), 12);
});

// Chord of a circle of 30 across, 24 above its lowest point: 2·√(24·6) (Euclid III.35).
it('a horseshoe by its widest width has the span at its spring line, for a rise past the widest place', () => {
  const { shape, spanOf } = valueOf(readHeadWords('horseshoe width at widest'));
  expect(shape).toBe('segmental');
  expect(valueOf(spanOf!(30, 24))).toBe(24);
  expect([spanOf!(30, 15.01).ok, spanOf!(30, 29.99).ok]).toEqual([true, true]);
  for (const rise of [10, 15, 30, 31]) {
    expect(refusalOf(spanOf!(30, rise))).toBe(
      `rise of a horseshoe 30 wide at its widest must be more than 15 and less than 30; got ${rise}`,
    );
  }
});

describe('curves that are not made here are refused by name, with what is needed', () => {
  it.each([
    ['ogee', 'give a full-size drawing'],
    ['Ogee arch', 'give a full-size drawing'],
    ['parabolic', 'give a full-size drawing, or say elliptical or segmental'],
    ['catenary arch', 'give a full-size drawing, or say elliptical or segmental'],
    ['horseshoe', '"horseshoe at spring"'],
    ['Horseshoe arch', '"horseshoe at spring"'],
    ['curved in plan', 'a curve in plan'],
    ['jamb extension', 'jamb extensions'],
  ])('%s', (text, needed) => {
    expect(refusalOf(readHead(text))).toContain(needed);
  });
});
