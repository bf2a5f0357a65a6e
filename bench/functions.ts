/**
 * Calls a second of each worksheet function, arguments read and checked as a cell's are, beside the same formula written
 * inline on plain numbers. Inputs change from call to call; the answers are summed, so that no call can be left out.
 */
import { FUNCTIONS } from '../functions/registry';

const SECONDS_EACH = 0.25;
const DEGREES = 180 / Math.PI;

interface Contest {
  readonly name: string;
  /** Arguments of the n-th call. */
  readonly args: (n: number) => unknown[];
  /** The same by hand; left out where there is no formula to write inline. */
  readonly inline?: (n: number) => number;
}

const span = (n: number) => 24 + (n % 97);
const rise = (n: number) => 4 + (n % 13) / 8;
const radiusOf = (n: number) => (span(n) ** 2 / 4 + rise(n) ** 2) / (2 * rise(n));
const quantities = (n: number) => [[(n % 50) + 1], [((n * 7) % 40) + 1], [Math.floor(n / 50) + 1]];

const CONTESTS: readonly Contest[] = [
  { name: 'RADIUS', args: (n) => [span(n), rise(n)], inline: radiusOf },
  {
    name: 'RISE',
    args: (n) => [span(n), 200],
    inline: (n) => 200 - Math.sqrt(200 ** 2 - span(n) ** 2 / 4),
  },
  { name: 'SPAN', args: (n) => [rise(n), 200], inline: (n) => 2 * Math.sqrt(rise(n) * (400 - rise(n))) },
  {
    name: 'ANGLE',
    args: (n) => [span(n), rise(n)],
    inline: (n) => 4 * Math.atan((2 * rise(n)) / span(n)) * DEGREES,
  },
  {
    name: 'ARCLENGTH',
    args: (n) => [span(n), rise(n), 3.5],
    inline: (n) => (radiusOf(n) + 3.5) * 4 * Math.atan((2 * rise(n)) / span(n)),
  },
  {
    name: 'ORDINATES',
    args: (n) => [span(n), rise(n), 1],
    inline: (n) => {
      const [half, radius] = [span(n) / 2, radiusOf(n)];
      const rows: [number, number][] = [];
      for (let x = 0; x < half; x++) rows.push([x, Math.sqrt(radius ** 2 - x ** 2) - radius + rise(n)]);
      rows.push([half, 0]);
      return rows[0]![0];
    },
  },
  {
    name: 'HEADLENGTH',
    args: (n) => ['segmental', span(n), rise(n), 3.5, 'legs'],
    inline: (n) => {
      const outside = radiusOf(n) + 3.5;
      return 2 * outside * Math.asin((span(n) / 2 + 3.5) / outside);
    },
  },
  { name: 'HEADLENGTH', args: (n) => ['elliptical', span(n), rise(n), 3.5] },
  { name: 'HEADARCS', args: (n) => ['elliptical', span(n), rise(n) + n / 1e6] },
  { name: 'HEADRADIUS', args: (n) => ['segmental', span(n), rise(n)] },
  { name: 'HEADMITER', args: (n) => ['segmental', span(n), rise(n), 3.5, 0.1875] },
  {
    name: 'MITER',
    args: (n) => [span(n), rise(n), 3.5, 0.1875],
    inline: (n) => {
      const [half, radius] = [span(n) / 2, radiusOf(n)];
      const height = (offset: number) => Math.sqrt((radius + offset) ** 2 - (half + offset) ** 2);
      return Math.atan((height(3.6875) - height(0.1875)) / 3.5) * DEGREES;
    },
  },
  {
    name: 'SEGMENTS',
    args: (n) => [span(n), 3.5, 180, 6],
    inline: (n) => Math.ceil(Math.max(3, Math.PI / 2 / Math.acos((span(n) - 2.5) / span(n)))),
  },
  {
    name: 'BLANKWIDTH',
    args: (n) => [span(n), 3.5, 180, 5],
    inline: (n) => span(n) + 3.5 - span(n) * Math.cos(Math.PI / 10),
  },
  {
    name: 'BLANKLENGTH',
    args: (n) => [span(n), 3.5, 180, 5],
    inline: (n) => 2 * (span(n) + 3.5) * Math.tan(Math.PI / 10),
  },
  {
    name: 'NEST',
    args: (n) => [span(n), 3.5, 180, 5, 12, 0, 0.125],
    inline: (n) => {
      const [inside, outside, g] = [span(n), span(n) + 3.5, Math.PI / 10];
      const width = outside - inside * Math.cos(g);
      const pitch = Math.sqrt((outside + 0.125) ** 2 - (inside * Math.sin(g)) ** 2) - inside * Math.cos(g);
      return 1 + Math.floor((12 - width) / pitch);
    },
  },
  { name: 'GUIDES', args: (n) => [span(n), 3.5], inline: (n) => [span(n) - 1 / 32, span(n) + 3.5 + 1 / 32][0]! },
  { name: 'PLIES', args: (n) => [span(n), 0.75], inline: (n) => Math.ceil(75 / span(n)) },
  { name: 'CUTSPERINCH', args: (n) => [7000, 1, rise(n)], inline: (n) => 7000 / (12 * rise(n)) },
  { name: 'FEEDRATE', args: (n) => [span(n), 7000, 1], inline: (n) => 7000 / (12 * span(n)) },
  {
    name: 'MARKDEPTH',
    args: (n) => [span(n), 5],
    inline: (n) => 2.5 - Math.sqrt(6.25 - 1 / span(n) ** 2 / 4),
  },
  { name: 'RUNTIME', args: (n) => [span(n), rise(n), 2, 1], inline: (n) => (2 * span(n)) / (12 * rise(n)) + 1 },
  {
    name: 'BOARDFEET',
    args: (n) => [rise(n), 6, span(n)],
    inline: (n) => (Math.max(1, rise(n)) * 6 * span(n)) / 144,
  },
  {
    name: 'PERBOARD',
    args: (n) => [144, span(n), 0.125],
    inline: (n) => Math.floor(144.125 / (span(n) + 0.125)),
  },
  { name: 'BOARDS', args: (n) => [[[24.5], [17], [31]], quantities(n), 96, 0.125] },
  { name: 'STOCKYIELD', args: (n) => [[[24.5], [17], [31]], quantities(n), 96, 0.125] },
  { name: 'CUTPLAN', args: (n) => [[[24.5], [17], [31]], quantities(n), 96, 0.125] },
  { name: 'INCHES', args: (n) => [`${n % 9}'-${n % 12} 1/2"`] },
  { name: 'FEETINCHES', args: (n) => [span(n) + 0.37] },
  { name: 'LENGTHCHECK', args: (n) => [span(n), 'segmental', span(n), rise(n), 3.5, 0.1875] },
];

/** Calls a second, best of three, and a sum that keeps the calls from being optimized away. */
function rate(work: (n: number) => unknown): { perSecond: number; sum: number } {
  let [best, sum, n] = [0, 0, 0];
  for (let round = 0; round < 3; round++) {
    const began = performance.now();
    const ends = began + (SECONDS_EACH * 1000) / 3;
    const from = n;
    do {
      for (let turn = 0; turn < 20; turn++, n++) {
        const answer = work(n);
        sum += typeof answer === 'number' ? answer : 1;
      }
    } while (performance.now() < ends);
    best = Math.max(best, ((n - from) * 1000) / (performance.now() - began));
  }
  return { perSecond: best, sum };
}

export async function run(args: readonly string[]): Promise<void> {
  const chosen = CONTESTS.filter(({ name }) => args.length === 0 || args.includes(name));
  let sum = 0;
  console.log('function        calls/s    inline/s   times slower   µs a call');
  for (const { name, args: argsOf, inline } of chosen) {
    const { run: call } = FUNCTIONS.find((one) => one.name === name)!;
    const ours = rate((n) => call(...argsOf(n)));
    const byHand = inline ? rate(inline) : null;
    sum += ours.sum + (byHand?.sum ?? 0);
    const column = (text: string, width: number) => text.padStart(width);
    console.log(
      name.padEnd(12) +
        column(Math.round(ours.perSecond).toLocaleString('en-US'), 11) +
        column(byHand ? Math.round(byHand.perSecond).toLocaleString('en-US') : '', 12) +
        column(byHand ? (byHand.perSecond / ours.perSecond).toFixed(1) : '', 15) +
        column((1e6 / ours.perSecond).toFixed(2), 12),
    );
  }
  if (!Number.isFinite(sum)) throw new Error('a function gave no number');
}
