import { median } from '../../median';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { dollars } from '../../quote/money';
import type { LineCheck } from './checkLine';
import { differs } from './finding';
import { priceOff } from './moneyFindings';

/** Fewer prices say nothing of one another. */
const FEWEST = 5;
/** A point that moved makes ten times or a tenth; right prices by the foot differ by less than this. */
const MOVED = 4;
/** About ten times by the foot is a moved point also where it is this little above our own prices: quotes differ in what is slow to make. */
const ABOUT_TEN = { from: 7, to: 14, besideOurs: 1.75 };

/**
 * A unit price whose decimal point moved shows beside the quote's other prices, whatever our own are: by the foot of molding, and
 * beside our own prices, it is several times, or a fraction of, what the quote charges elsewhere.
 */
export function pricedBesideOthers(
  lines: readonly LineCheck[],
  openings: readonly OpeningTakeoff[],
): readonly LineCheck[] {
  const rates = lines.map(({ line, places, part }) => {
    const own = places.length > 0 && part === 'head' && line.by === 'piece' ? places.map((at) => openings[at]!) : [];
    // A line for several openings has the price of their average.
    const average = (of: (one: OpeningTakeoff) => number | undefined) =>
      own.reduce((sum, one) => sum + (of(one) ?? NaN), 0) / own.length;
    const [length, ours] = [average((one) => one.own?.curve.length), average((one) => one.cost?.unitPrice)];
    return line.unitPrice === null || !(line.unitPrice > 0) || !(length > 0) || !(ours > 0)
      ? null
      : { byFoot: line.unitPrice / length, byOurs: line.unitPrice / ours };
  });
  const known = rates.filter((rate) => rate !== null);
  if (known.length < FEWEST) return lines;
  const [foot, own] = [median(known.map(({ byFoot }) => byFoot)), median(known.map(({ byOurs }) => byOurs))];
  return lines.map((check, at) => {
    const rate = rates[at] ?? null;
    if (rate === null) return check;
    const times = [rate.byFoot / foot, rate.byOurs / own] as const;
    const judged = withoutChance(check, times[1], openings);
    const moved = ([byFoot, byOurs]: readonly [number, number]) =>
      [byFoot, byOurs].every((one) => one >= MOVED && one <= 10 * MOVED) ||
      (byFoot >= ABOUT_TEN.from && byFoot <= ABOUT_TEN.to && byOurs >= ABOUT_TEN.besideOurs);
    const name = moved(times)
      ? 'price ten times too high'
      : moved([1 / times[0], 1 / times[1]])
        ? 'price a tenth of what it should be'
        : null;
    if (name === null) return judged;
    const price = check.line.unitPrice!;
    const found = differs(
      'unit price',
      `unit price ${dollars(price)} is ${times[0].toFixed(1)} times what the quote's other lines cost by the foot: ${name}`,
      {
        mistakes: [name],
        cause: name,
        quoted: price,
        stake: Math.abs(price * (check.line.quantity ?? 1)),
      },
    );
    // Where it is far from our own price as well, that money is said already.
    const findings = check.findings.map((one) =>
      one.about === 'unit price' ? { ...found, words: name, right: one.right, dollars: one.dollars } : one,
    );
    return {
      ...check,
      findings,
      verdict: 'differs',
      agreesIn: check.agreesIn.filter((one) => one !== 'price'),
      stake: Math.max(check.stake, found.stake),
    };
  });
}

/** How often a price is ours by a mistake that is put down to the count or a moved point. */
const TIMES: Readonly<Record<string, (pieces: number) => number>> = {
  'price ten times ours': () => 10,
  'price a tenth of ours': () => 1 / 10,
  'price a hundred times ours': () => 100,
  'the price of all pieces for one': (pieces) => pieces,
  'the price of one divided by the pieces': (pieces) => 1 / pieces,
};

/**
 * Of a price that is to ours as the quote's others are to ours, nothing is said of pieces or moved points: it fits such a mistake by
 * chance. `beside` is by how many times it is above that.
 */
function withoutChance(check: LineCheck, beside: number, openings: readonly OpeningTakeoff[]): LineCheck {
  const pieces = openings[check.places[0]!]!.known.quantity ?? 1;
  const isChance = (mistake: string) => {
    const times = TIMES[mistake]?.(pieces);
    return times !== undefined && Math.abs(Math.log(beside)) < Math.abs(Math.log(beside / times));
  };
  const findings = check.findings.map((one) => {
    const left = one.mistakes.filter((mistake) => !isChance(mistake));
    if (one.about !== 'unit price' || left.length === one.mistakes.length) return one;
    const cause = isChance(one.cause!) ? priceOff(one.quoted! - one.right!) : one.cause;
    return { ...one, mistakes: left, cause, text: one.text.replace(/: perhaps .*/, '') };
  });
  return { ...check, findings };
}
