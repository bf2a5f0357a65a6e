import { describe, expect, it } from 'vitest';
import { checkLength, type LengthQuestion } from '../../src/check/length';
import { knownLengths, LENGTH_MISTAKE_NAMES } from '../../src/check/lengthMistakes';
import { ARC_ENDS, HEAD_SHAPES } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { random } from '../random';
import { expectNear, refusalOf, valueOf } from '../value';

const REVEAL = 3 / 16;
const FACE = 3.5;
const OUT = REVEAL + FACE;

type Opening = Omit<LengthQuestion, 'quoted'>;

/** Span 36, rise 6: radius 30, turning through 4·atan(1/3). */
const SEGMENTAL: Opening = { head: 'segmental', span: 36, rise: 6, face: FACE, reveal: REVEAL };
const TURN = 4 * Math.atan(1 / 3);
const RIGHT = (30 + OUT) * TURN;
const LEGS: Opening = { ...SEGMENTAL, ends: 'legs' };
const LEVEL: Opening = { ...SEGMENTAL, ends: 'level' };
const legsLength = 2 * (30 + OUT) * Math.asin((18 + OUT) / (30 + OUT));
const levelLength = 2 * (30 + OUT) * Math.acos(24 / (30 + OUT));

const HIGH: Opening = { ...SEGMENTAL, rise: 24 };
const ROUND: Opening = { ...SEGMENTAL, head: 'round', rise: null };
const POINTED: Opening = { ...SEGMENTAL, head: 'pointed', rise: 18 * Math.sqrt(3) };
const ELLIPTICAL: Opening = { ...SEGMENTAL, head: 'elliptical', span: 72, rise: 24 };
const BASKET: Opening = { ...SEGMENTAL, head: 'three-centered', span: 72, rise: 24 };

/** Half the ellipse of half axes 36 and 24, and the bisector construction's three arcs over the same, to 15 digits. */
const HALF_ELLIPSE = 95.1926375357435;
const BASKET_HANDLE = 95.5158652592642;

/** Each mistake made by hand, from the plain formula of whoever makes it. */
const MADE: readonly [string, Opening, number][] = [
  ['measured along the inside edge', SEGMENTAL, (30 + REVEAL) * TURN],
  ['measured along the inside edge', LEGS, 2 * (30 + REVEAL) * Math.asin((18 + REVEAL) / (30 + REVEAL))],
  ['measured along the center', SEGMENTAL, (30 + REVEAL + FACE / 2) * TURN],
  ["measured along the opening's edge", SEGMENTAL, 30 * TURN],
  ['reveal left out', { ...SEGMENTAL, reveal: 0.5 }, (30 + FACE) * TURN],
  ['reveal taken off, not added', { ...SEGMENTAL, reveal: 0.5 }, (30 + FACE - 0.5) * TURN],
  ['reveal counted twice', { ...SEGMENTAL, reveal: 0.5 }, (30 + FACE + 1) * TURN],
  ['face counted twice', SEGMENTAL, (30 + REVEAL + 2 * FACE) * TURN],
  ['face counted twice', SEGMENTAL, (30 + 2 * OUT) * TURN],
  ['level ends where radial ends were meant', SEGMENTAL, levelLength],
  ['legs where radial ends were meant', SEGMENTAL, legsLength],
  ['radial ends where legs were meant', LEGS, RIGHT],
  ['level ends where legs were meant', LEGS, levelLength],
  ['radial ends where level ends were meant', LEVEL, RIGHT],
  ['legs where level ends were meant', LEVEL, legsLength],
  ['chord, not arc', SEGMENTAL, 36],
  ['chord, not arc', SEGMENTAL, 36 + 2 * REVEAL],
  ['chord, not arc', LEGS, 36 + 2 * OUT],
  ['chord, not arc', SEGMENTAL, 2 * (30 + OUT) * 0.6],
  ['diameter, not circumference', ROUND, 36 + 2 * OUT],
  ['half circle of this span', SEGMENTAL, Math.PI * (18 + OUT)],
  ['half circle of this span', SEGMENTAL, Math.PI * 18],
  ['half circle of this span', ELLIPTICAL, Math.PI * (36 + OUT)],
  ['full circle, not the arc', SEGMENTAL, 2 * Math.PI * (30 + OUT)],
  ['rise read as radius', SEGMENTAL, Math.PI * (6 + OUT)],
  ['rise read as radius', SEGMENTAL, (6 + OUT) * TURN],
  ['span read as radius', SEGMENTAL, (36 + OUT) * TURN],
  ['diameter read as radius', SEGMENTAL, (60 + OUT) * TURN],
  ['radius read as diameter', SEGMENTAL, (15 + OUT) * TURN],
  ['the lesser arc of this radius', HIGH, 2 * (18.75 + OUT) * Math.asin(18 / 18.75)],
  ['span and rise grown, not a parallel curve', SEGMENTAL, arc(36 + 2 * OUT, 6 + OUT)],
  ['sides not run on to the center line', POINTED, ((36 + OUT) * 2 * Math.PI) / 3],
  ['length of the ellipse by a rough formula', ELLIPTICAL, (Math.PI * (36 + 24)) / 2 + Math.PI * OUT],
  ['length of the ellipse by a rough formula', ELLIPTICAL, Math.PI * Math.hypot(36, 24) * Math.SQRT1_2 + Math.PI * OUT],
  ['reckoned as a segmental arc', ELLIPTICAL, (39 + OUT) * 4 * Math.atan(24 / 36)],
  ['reckoned as an ellipse', BASKET, HALF_ELLIPSE + Math.PI * OUT],
  ['reckoned as three-centered', ELLIPTICAL, BASKET_HANDLE + Math.PI * OUT],
  ['one half of the head only', SEGMENTAL, RIGHT / 2],
  ['the head counted twice', SEGMENTAL, RIGHT * 2],
  ['feet read as inches', SEGMENTAL, RIGHT / 12],
  ['inches read as feet', SEGMENTAL, RIGHT * 12],
  ['millimeters read as inches', SEGMENTAL, RIGHT * 25.4],
  ['inches read as millimeters', SEGMENTAL, RIGHT / 25.4],
  ['centimeters read as millimeters', SEGMENTAL, RIGHT / 10],
  ['millimeters read as centimeters', SEGMENTAL, RIGHT * 10],
  ['25 mm taken for an inch', SEGMENTAL, (RIGHT * 25.4) / 25],
  ['25 mm taken for an inch', SEGMENTAL, (RIGHT * 25) / 25.4],
  // The right length is 43.356 in, 3'-7.356", 3.613 ft.
  ['two digits changed places', SEGMENTAL, RIGHT - 43 + 34],
  ['decimal feet read as feet and inches', SEGMENTAL, 36 + (RIGHT / 12 - 3) * 10],
  ['decimal feet read as feet and inches', SEGMENTAL, 42],
  ['feet and inches read as decimal feet', SEGMENTAL, 12 * 3.7],
  ['fraction dropped', SEGMENTAL, 43],
  ['rounded to whole feet', SEGMENTAL, 48],
  ['rounded to whole feet', LEGS, 48],
];

function arc(span: number, rise: number): number {
  return ((span ** 2 / 4 + rise ** 2) / (2 * rise)) * 4 * Math.atan((2 * rise) / span);
}

describe('a quoted length', () => {
  it.each(MADE)('with the mistake "%s" made in it is known by that mistake (%#)', (mistake, opening, quoted) => {
    const verdict = valueOf(checkLength({ ...opening, quoted, tolerance: 1 / 64 }));
    expect(verdict.verdict).toBe('mistake');
    expect(verdict.mistakes).toContain(mistake);
    expect(verdict.text.split(' or ')).toContain(mistake);
  });

  it('has every mistake on the list made above', () => {
    const made = MADE.map(([mistake]) => mistake);
    expect(LENGTH_MISTAKE_NAMES.filter((name) => !made.includes(name))).toEqual([]);
  });

  it('that is the outside (long-point) length agrees, also off by the tolerance', () => {
    for (const off of [0, 1 / 8, -1 / 8]) {
      const verdict = valueOf(checkLength({ ...SEGMENTAL, quoted: RIGHT + off }));
      expect(verdict).toMatchObject({ verdict: 'agrees', mistakes: [], text: 'agrees' });
      expectNear(verdict.right, 43.3558872049475, 1e-14);
    }
    expect(valueOf(checkLength({ ...SEGMENTAL, quoted: RIGHT + 0.2 })).verdict).not.toBe('agrees');
    expect(valueOf(checkLength({ ...SEGMENTAL, quoted: RIGHT + 0.2, tolerance: 0.25 })).verdict).toBe('agrees');
  });

  it('that nothing explains is said to be short or long by how much, to the nearest sixteenth', () => {
    expect(valueOf(checkLength({ ...SEGMENTAL, quoted: RIGHT - 12.26 })).text).toBe('unexplained: 12 1/4 short');
    const long = valueOf(checkLength({ ...SEGMENTAL, quoted: RIGHT + 10.5 }));
    expect(long.text).toBe('unexplained: 10 1/2 long');
    expectNear(long.difference, 10.5, 1e-12);
    expect(valueOf(checkLength({ ...SEGMENTAL, quoted: RIGHT - 0.02, tolerance: 0.001 })).text).toBe(
      'unexplained: 0.02 short',
    );
  });

  it('that two mistakes explain equally well names both, the nearest first', () => {
    // 36 is the opening's chord and a whole number of feet.
    expect(valueOf(checkLength({ ...SEGMENTAL, quoted: 36 })).text).toBe('chord, not arc or rounded to whole feet');
  });

  it('that a level cut or another measure leaves right, as at a half round, is not accused', () => {
    const half: Opening = { head: 'half round', span: 36, rise: null, face: FACE, reveal: REVEAL, ends: 'legs' };
    const head = valueOf(makeHead('half round', 36, null));
    const known = knownLengths({ head, face: FACE, reveal: REVEAL, ends: 'legs' }).map(({ mistake }) => mistake);
    expect(known.filter((name) => /meant|half circle|grown/.test(name))).toEqual([]);
    expect(valueOf(checkLength({ ...half, quoted: Math.PI * (18 + OUT) })).text).toBe('agrees');
  });

  it('has a reveal of 0, radial ends and a tolerance of 1/8 where they are left out', () => {
    const quoted = (30 + FACE) * TURN + 1 / 8;
    expect(valueOf(checkLength({ head: 'segmental', span: 36, rise: 6, face: FACE, quoted })).text).toBe('agrees');
    expect(
      valueOf(
        checkLength({
          head: 'segmental',
          span: 36,
          rise: 6,
          face: FACE,
          quoted,
          reveal: null,
          ends: null,
          tolerance: null,
        }),
      ).text,
    ).toBe('agrees');
  });

  it.each<[Partial<LengthQuestion>, string]>([
    [{ quoted: 0 }, 'quoted must be more than 0; got 0'],
    [{ quoted: NaN }, 'quoted must be a number; got NaN'],
    [{ face: -1 }, 'face must be more than 0; got -1'],
    [{ rise: -1 }, 'rise must be more than 0; got -1'],
    [{ rise: null }, 'rise is missing; a segmental head needs it'],
    [{ tolerance: -0.1 }, 'tolerance must be 0 or more; got -0.1'],
  ])('is refused with %j', (change, sentence) => {
    expect(refusalOf(checkLength({ ...SEGMENTAL, quoted: 43, ...change }))).toBe(sentence);
  });
});

describe('mistakes planted at random', () => {
  it('in 3,000 casings are all found when the figure is written to a sixteenth, and right figures never accused', () => {
    const from = random(71);
    let planted = 0;
    for (let at = 0; at < 3_000; at++) {
      const shape = from.pick(HEAD_SHAPES.slice(0, 8));
      const span = from.whole(160, 1_600) / 8;
      const rise =
        {
          segmental: span * from.between(0.05, 0.9),
          elliptical: span * from.between(0.2, 0.7),
          'three-centered': span * from.between(0.15, 0.49),
          pointed: span * from.between(0.51, 1.2),
        }[shape as string] ?? null;
      const opening = {
        head: shape,
        span,
        rise,
        face: from.whole(16, 48) / 8,
        reveal: from.whole(1, 4) / 8,
        ends: from.pick(ARC_ENDS),
      };
      const head = valueOf(makeHead(shape, span, rise));
      const right = valueOf(head.length(opening.face + opening.reveal, opening.ends));
      const sixteenth = (figure: number) => Math.max(1, Math.round(figure * 16)) / 16;
      expect(valueOf(checkLength({ ...opening, quoted: sixteenth(right) })).verdict).toBe('agrees');

      const known = knownLengths({ ...opening, head });
      // A slip of the pen is named only where no other mistake gives nearly the same.
      const { mistake, figure, slip } = from.pick(known);
      const verdict = valueOf(checkLength({ ...opening, quoted: sixteenth(figure) }));
      if (Math.abs(sixteenth(figure) - right) <= 1 / 8) expect(verdict.verdict).toBe('agrees');
      else {
        planted++;
        if (slip) expect(verdict.verdict).toBe('mistake');
        else expect(verdict.mistakes).toContain(mistake);
      }
    }
    expect(planted).toBeGreaterThan(2_500);
  });
});
