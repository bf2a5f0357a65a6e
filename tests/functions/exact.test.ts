import { describe, expect, it } from 'vitest';
import { call } from '../../functions/call';
import { random, type Random } from '../random';
import { arccosine, arcsine, arctangent, big, ONE, PI, sineAndCosine, type BigNumber } from './big';

/**
 * Every closed-form function against the contract's formula as it stands, worked with 64 digits by a program that shares
 * nothing with ours. The inputs are where the problem is well conditioned: the answer then depends on them smoothly.
 * EXACT_TRIALS=10000 tries more of them.
 */
const TRIALS = Number(process.env['EXACT_TRIALS'] ?? 500);
const WITHIN = 1e-12;

const RADIANS = PI.div(180);
const square = (value: BigNumber) => value.times(value);

interface Formula {
  readonly title: string;
  readonly name: string;
  readonly args: (any: Random) => (number | string | null)[];
  /** By the numbers among the arguments, in their order. */
  readonly answer: (...numbers: BigNumber[]) => BigNumber | BigNumber[];
}

const spanAndRise = (any: Random): [number, number] => {
  const span = any.size(1, 1000);
  return [span, span * any.size(0.002, 3)];
};
const radiusOf = (span: BigNumber, rise: BigNumber) => square(span).div(4).plus(square(rise)).div(rise.times(2));
const turnOf = (span: BigNumber, rise: BigNumber) => arctangent(rise.times(2).div(span)).times(4);

/** Half the perimeter of an ellipse by the arithmetic-geometric mean: Abramowitz and Stegun, 17.6. */
function halfEllipse(one: BigNumber, other: BigNumber): BigNumber {
  const [long, short] = one.gt(other) ? [one, other] : [other, one];
  let [a, b] = [long, short];
  let sum = square(long).minus(square(short)).div(2);
  let power = ONE;
  while (a.minus(b).abs().gt(long.times('1e-40'))) {
    const half = a.minus(b).div(2);
    [a, b] = [a.plus(b).div(2), a.times(b).sqrt()];
    sum = sum.plus(power.times(square(half)));
    power = power.times(2);
  }
  return PI.times(square(long).minus(sum)).div(a);
}

function halfThreeCentered(a: BigNumber, b: BigNumber, d: BigNumber): BigNumber {
  const c = square(a).plus(square(b)).sqrt();
  const haunch = square(c).minus(a.minus(b).times(c)).div(a.times(2));
  const crown = square(c).plus(a.minus(b).times(c)).div(b.times(2));
  const turn = arctangent(crown.minus(b).div(a.minus(haunch)));
  return haunch
    .plus(d)
    .times(turn)
    .plus(crown.plus(d).times(PI.div(2).minus(turn)));
}

/** Ri, Ro and half of one segment's angle in radians. */
function ringOf(radius: BigNumber, face: BigNumber, angle: BigNumber, segments: BigNumber, margin: BigNumber) {
  return {
    inside: radius.minus(margin),
    outside: radius.plus(face).plus(margin),
    g: angle.div(segments).div(2).times(RADIANS),
    wide: angle.div(segments).gt(180),
  };
}
const ringArgs = (most: number) => (any: Random) => {
  const segments = any.whole(1, 12);
  return [
    any.size(1, 500),
    any.size(0.5, 12),
    any.between(0.5, Math.min(360, most * segments)),
    segments,
    any.between(0, 0.9),
  ];
};

const FORMULAS: readonly Formula[] = [
  { title: 'RADIUS', name: 'RADIUS', args: spanAndRise, answer: radiusOf },
  {
    title: 'RISE',
    name: 'RISE',
    args: (any) => {
      const span = any.size(1, 1000);
      return [span, (span / 2) * (1 + any.size(1e-6, 1e4))];
    },
    answer: (span, radius) => radius.minus(square(radius).minus(square(span).div(4)).sqrt()),
  },
  {
    title: 'SPAN',
    name: 'SPAN',
    args: (any) => {
      const radius = any.size(1, 1e4);
      return [radius * any.between(0.0001, 1.9999), radius];
    },
    answer: (rise, radius) =>
      square(radius)
        .minus(square(radius.minus(rise)))
        .sqrt()
        .times(2),
  },
  { title: 'ANGLE', name: 'ANGLE', args: spanAndRise, answer: (span, rise) => turnOf(span, rise).div(RADIANS) },
  {
    title: 'ARCLENGTH',
    name: 'ARCLENGTH',
    args: (any) => [...spanAndRise(any), any.between(0, 12)],
    answer: (span, rise, offset) => radiusOf(span, rise).plus(offset).times(turnOf(span, rise)),
  },
  {
    title: 'HEADLENGTH segmental, radial',
    name: 'HEADLENGTH',
    args: (any) => ['segmental', ...spanAndRise(any), any.between(0, 12)],
    answer: (span, rise, d) => radiusOf(span, rise).plus(d).times(turnOf(span, rise)),
  },
  {
    title: 'HEADLENGTH segmental, level',
    name: 'HEADLENGTH',
    args: (any) => ['segmental', ...spanAndRise(any), any.between(0.1, 12), 'level'],
    answer: (span, rise, d) => {
      const radius = radiusOf(span, rise);
      return arccosine(radius.minus(rise).div(radius.plus(d)))
        .times(radius.plus(d))
        .times(2);
    },
  },
  {
    title: 'HEADLENGTH segmental, legs',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['segmental', span, (span / 2) * any.size(0.004, 0.99), any.between(0, 12), 'legs'];
    },
    answer: (span, rise, d) => {
      const radius = radiusOf(span, rise).plus(d);
      return arcsine(span.div(2).plus(d).div(radius)).times(radius).times(2);
    },
  },
  {
    title: 'HEADLENGTH half round',
    name: 'HEADLENGTH',
    args: (any) => ['half round', any.size(1, 1000), null, any.between(0, 12)],
    answer: (span, d) => span.div(2).plus(d).times(PI),
  },
  {
    title: 'HEADLENGTH quarter round',
    name: 'HEADLENGTH',
    args: (any) => ['quarter round', any.size(1, 1000), null, any.between(0, 12)],
    answer: (span, d) => span.plus(d).times(PI).div(2),
  },
  {
    title: 'HEADLENGTH round',
    name: 'HEADLENGTH',
    args: (any) => ['round', any.size(1, 1000), null, any.between(0, 12)],
    answer: (span, d) => span.plus(d.times(2)).times(PI),
  },
  {
    title: 'HEADLENGTH elliptical',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['elliptical', span, span * any.size(0.01, 5), any.between(0, 12)];
    },
    answer: (span, rise, d) => halfEllipse(span.div(2), rise).plus(PI.times(d)),
  },
  {
    title: 'HEADLENGTH three-centered',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['three-centered', span, span * any.between(0.05, 0.49), any.between(0, 12)];
    },
    answer: (span, rise, d) => halfThreeCentered(span.div(2), rise, d).times(2),
  },
  {
    title: 'HEADLENGTH pointed',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['pointed', span, span * any.between(0.51, 4), any.between(0, 12)];
    },
    answer: (span, rise, d) => {
      const radius = square(span).div(4).plus(square(rise)).div(span);
      return arccosine(radius.minus(span.div(2)).div(radius.plus(d)))
        .times(radius.plus(d))
        .times(2);
    },
  },
  {
    title: 'HEADLENGTH quarter round on its own high leg',
    name: 'HEADLENGTH',
    args: (any) => ['quarter round', any.size(1, 1000), null, any.between(0, 12), 'legs'],
    answer: (span, d) => span.plus(d).times(PI.div(2).plus(arcsine(d.div(span.plus(d))))),
  },
  {
    title: 'HEADLENGTH half segmental on legs',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['half segmental', span, span * any.between(0.02, 0.98), any.between(0, 12), 'legs'];
    },
    answer: (span, rise, d) => {
      const outer = radiusOf(span.times(2), rise).plus(d);
      return outer.times(arcsine(span.plus(d).div(outer)).plus(arcsine(d.div(outer))));
    },
  },
  {
    title: 'HEADLENGTH radius corners',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['radius corners', span, span * any.between(0.01, 0.49), any.between(0, 12)];
    },
    answer: (span, r, d) => span.minus(r.times(2)).plus(PI.times(r.plus(d))),
  },
  {
    title: 'HEADLENGTH full ellipse',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['full ellipse', span, span * any.size(0.02, 5), any.between(0, 12)];
    },
    answer: (span, rise, d) => halfEllipse(span.div(2), rise.div(2)).plus(PI.times(d)).times(2),
  },
  {
    title: 'HEADLENGTH quarter ellipse',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['quarter ellipse', span, span * any.size(0.02, 5), any.between(0, 12)];
    },
    answer: (span, rise, d) => halfEllipse(span, rise).plus(PI.times(d)).div(2),
  },
  {
    title: 'HEADLENGTH four-centered',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      // A quarter of the span and rises where that rule can be, well clear of its limits.
      return ['four-centered', span, span * any.between(0.325, 0.42), any.between(0, 12), 'radial', span / 4];
    },
    answer: (span, h, d, r) => {
      const turn = PI.div(3);
      const { sine, cosine } = sineAndCosine(turn);
      const side = span.div(2).minus(r);
      const along = h.times(sine).minus(side.times(cosine));
      const crown = square(side)
        .plus(square(h))
        .plus(square(r))
        .minus(r.times(along).times(2))
        .div(r.minus(along).times(2));
      const x = crown.minus(r).times(cosine).minus(side);
      const upper = arccosine(x.div(crown.plus(d))).minus(turn);
      return r.plus(d).times(turn).plus(crown.plus(d).times(upper)).times(2);
    },
  },
  {
    title: 'HEADLENGTH gable on legs',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['gable', span, span * any.size(0.02, 3), any.between(0, 12), 'legs'];
    },
    // tan((90° − σ)/2) + tan σ = slope length / half the span.
    answer: (span, h, d) => {
      const half = span.div(2);
      const side = square(half).plus(square(h)).sqrt();
      return side.plus(d.times(side).div(half)).times(2);
    },
  },
  {
    title: 'HEADLENGTH gable, level',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['gable', span, span * any.size(0.02, 3), any.between(0, 12), 'level'];
    },
    answer: (span, h, d) => {
      const half = span.div(2);
      const side = square(half).plus(square(h)).sqrt();
      return side.plus(d.times(half.div(h).plus(h.div(half)))).times(2);
    },
  },
  {
    title: 'HEADLENGTH clipped corners on legs',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['clipped corners', span, span * any.between(0.02, 0.48), any.between(0, 12), 'legs'];
    },
    answer: (span, c, d) => {
      const root = ONE.times(2).sqrt();
      return span
        .minus(c.times(2))
        .plus(c.times(root).times(2))
        .plus(d.times(root.minus(1)).times(6));
    },
  },
  {
    title: 'HEADLENGTH shed on legs',
    name: 'HEADLENGTH',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['shed', span, span * any.size(0.02, 3), any.between(0, 12), 'legs'];
    },
    answer: (span, h, d) => {
      const side = square(span).plus(square(h)).sqrt();
      return side.plus(d.times(side).times(2).div(span));
    },
  },
  {
    title: 'HEADLENGTH octagon',
    name: 'HEADLENGTH',
    args: (any) => ['octagon', any.size(1, 1000), null, any.between(0, 12)],
    answer: (span, d) => span.plus(d.times(2)).times(ONE.times(2).sqrt().minus(1)).times(8),
  },
  {
    title: 'HEADRADIUS half segmental',
    name: 'HEADRADIUS',
    args: (any) => {
      const span = any.size(1, 1000);
      return ['half segmental', span, span * any.between(0.01, 0.99)];
    },
    answer: (span, rise) => square(span).plus(square(rise)).div(rise.times(2)),
  },
  {
    title: 'HEADMITER segmental',
    name: 'HEADMITER',
    args: (any) => {
      const span = any.size(5, 1000);
      return ['segmental', span, (span / 2) * any.between(0.05, 0.9), any.between(0.5, 12), any.between(0, 1)];
    },
    answer: (span, rise, face, reveal) => {
      const radius = radiusOf(span, rise);
      const half = span.div(2);
      const height = (d: BigNumber) =>
        square(radius.plus(d))
          .minus(square(half.plus(d)))
          .sqrt();
      const [d1, d2] = [reveal, reveal.plus(face)];
      const rose = height(d2).minus(height(d1));
      const mu = arctangent(rose.div(face));
      const off = (d: BigNumber) =>
        PI.div(2)
          .minus(arcsine(half.plus(d).div(radius.plus(d))))
          .minus(mu)
          .div(RADIANS);
      // The curved miter's height is √(A + B·d): farthest from the cut where its slope, B/2√, is the cut's.
      const b = radius.minus(half).times(2);
      const at = b.times(face).div(rose.times(2));
      const d = square(at)
        .minus(radius.minus(half).times(radius.plus(half)))
        .div(b);
      const gap = at
        .minus(height(d1))
        .minus(rose.times(d.minus(d1)).div(face))
        .times(sineAndCosine(mu).cosine);
      return [mu.div(RADIANS), off(d1), off(d2), gap];
    },
  },
  {
    title: 'MITER',
    name: 'MITER',
    args: (any) => {
      const span = any.size(5, 1000);
      return [span, (span / 2) * any.between(0.01, 0.95), any.between(0.5, 12), any.between(0, 1)];
    },
    answer: (span, rise, face, reveal) => {
      const radius = radiusOf(span, rise);
      const height = (offset: BigNumber) =>
        square(radius.plus(offset))
          .minus(square(span.div(2).plus(offset)))
          .sqrt();
      return arctangent(height(reveal.plus(face)).minus(height(reveal)).div(face)).div(RADIANS);
    },
  },
  {
    title: 'BLANKWIDTH',
    name: 'BLANKWIDTH',
    args: ringArgs(360),
    answer: (...of) => {
      const { inside, outside, g, wide } = ringOf(...(of as [BigNumber, BigNumber, BigNumber, BigNumber, BigNumber]));
      return outside.minus((wide ? outside : inside).times(sineAndCosine(g).cosine));
    },
  },
  {
    title: 'BLANKLENGTH, mitered',
    name: 'BLANKLENGTH',
    args: ringArgs(179),
    answer: (...of) => {
      const { outside, g } = ringOf(...(of as [BigNumber, BigNumber, BigNumber, BigNumber, BigNumber]));
      const { sine, cosine } = sineAndCosine(g);
      return outside.times(2).times(sine).div(cosine);
    },
  },
  {
    title: 'BLANKLENGTH, sawn',
    name: 'BLANKLENGTH',
    args: (any) => [...ringArgs(360)(any), 'sawn'],
    answer: (...of) => {
      const { outside, g, wide } = ringOf(...(of as [BigNumber, BigNumber, BigNumber, BigNumber, BigNumber]));
      return wide ? outside.times(2) : outside.times(2).times(sineAndCosine(g).sine);
    },
  },
  {
    title: 'GUIDES',
    name: 'GUIDES',
    args: (any) => [any.size(2, 500), any.size(0.5, 12), any.between(0, 0.9), any.between(0, 0.9)],
    answer: (radius, face, margin, clearance) => [
      radius.minus(margin).minus(clearance),
      radius.plus(face).plus(margin).plus(clearance),
    ],
  },
  {
    title: 'PLIES',
    name: 'PLIES',
    args: (any) => [any.size(2, 500), any.size(0.1, 10), any.between(20, 200)],
    answer: (radius, thickness, ratio) => {
      const count = thickness.times(ratio).div(radius).ceil();
      return [count, thickness.div(count)];
    },
  },
  {
    title: 'CUTSPERINCH',
    name: 'CUTSPERINCH',
    args: (any) => [any.size(100, 30000), any.whole(1, 12), any.size(0.1, 200), any.size(1, 500), any.size(1, 500)],
    answer: (rpm, knives, feed, held, edge) => rpm.times(knives).times(held).div(feed.times(12).times(edge)),
  },
  {
    title: 'FEEDRATE',
    name: 'FEEDRATE',
    args: (any) => [any.size(1, 200), any.size(100, 30000), any.whole(1, 12)],
    answer: (cuts, rpm, knives) => rpm.times(knives).div(cuts.times(12)),
  },
  {
    title: 'MARKDEPTH',
    name: 'MARKDEPTH',
    args: (any) => [any.size(0.5, 1000), any.size(2.1, 20)],
    answer: (cuts, diameter) => {
      const radius = diameter.div(2);
      return radius.minus(
        square(radius)
          .minus(square(ONE.div(cuts)).div(4))
          .sqrt(),
      );
    },
  },
  {
    title: 'RUNTIME',
    name: 'RUNTIME',
    args: (any) => [any.size(1, 10000), any.size(0.1, 200), any.whole(1, 9), any.between(0, 60)],
    answer: (length, feed, passes, handling) => passes.times(length).div(feed.times(12)).plus(handling),
  },
  {
    title: 'BOARDFEET',
    name: 'BOARDFEET',
    args: (any) => [any.size(0.1, 4), any.size(1, 24), any.size(1, 240), any.whole(1, 500)],
    answer: (thickness, width, length, quantity) =>
      (thickness.lt(1) ? ONE : thickness).times(width).times(length).times(quantity).div(144),
  },
];

describe('worked again with 64 digits, the formula of', () => {
  it.each(FORMULAS)(
    `$title is right to ${WITHIN} on ${TRIALS} random inputs`,
    ({ title, name, args, answer }) => {
      const any = random(title.length * 104729 + title.charCodeAt(title.length - 1));
      for (let trial = 0; trial < TRIALS; trial++) {
        const given = args(any);
        const called = call(name, given);
        if ('error' in called) expect.fail(`${name}(${given.join(', ')}) was refused: ${called.message}`);
        const numbers = given.filter((value) => typeof value === 'number').map(big);
        const exact = [answer(...numbers)].flat();
        const actual = [called.value].flat(2) as number[];
        expect(actual.length).toBe(exact.length);
        exact.forEach((value, at) => {
          const error = big(actual[at]!).minus(value).abs().div(value.abs());
          if (error.gt(WITHIN))
            expect.fail(`${name}(${given.join(', ')}) gave ${actual[at]}, exact ${value.toString()}`);
        });
      }
    },
    60_000,
  );
});
