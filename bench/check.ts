/**
 * A quote checked against a takeoff: `npm run bench -- check [LINES]`. The quote is read from its text as well; four lines of
 * five have a wrong length, every second a wrong radius, so that the mistakes have to be looked for. Twice the lines must take
 * about twice as long.
 */
import { checkQuote, readQuote, summaryText } from '../src/check/quote';
import { blankOpening, type Opening, type Table } from '../src/schedule/opening';
import { defaultStandards } from '../src/standards';
import { takeoff, type Takeoff } from '../src/takeoff/takeoff';
import { checkSheet } from '../src/workbook/checkSheet';

const HEADS = ['segmental', 'half round', 'elliptical', 'three-centered', 'pointed'] as const;

function openings(count: number): Opening[] {
  return Array.from({ length: count }, (_, at): Opening => {
    const head = HEADS[at % HEADS.length]!;
    const span = 24 + ((at * 7) % 160) / 2;
    const rise = {
      segmental: span / 5,
      'half round': null,
      elliptical: span / 3,
      'three-centered': span / 3,
      pointed: span,
    }[head];
    return { ...blankOpening(at + 2), mark: `W${at + 1}`, quantity: 1 + (at % 4), head, span, rise };
  });
}

function quoteOf({ openings: rows }: Takeoff): Table {
  const lines = rows.map(({ opening, known, own, cost }, at) => {
    const curve = own!.curve;
    const length = [curve.length, curve.insideLength, known.span!, curve.centerLength, curve.length / 12][at % 5]!;
    const quantity = at % 10 === 3 ? 1 : known.quantity!;
    const price = cost!.unitPrice * (at % 10 === 7 ? 1.4 : 1);
    const radius = own!.crown && !own!.haunch ? own!.crown.ring[at % 2 === 0 ? 'radius' : 'inside'] : null;
    const mark = at % 3 === 0 ? ['', `Arch casing ${opening.mark}, poplar`] : [opening.mark, 'Arch casing'];
    return [...mark, quantity, radius, length, `$${price.toFixed(2)}`, (quantity * price).toFixed(2)];
  });
  return {
    name: 'quote',
    firstRow: 1,
    rows: [['Mark', 'Description', 'Qty', 'Radius', 'Length', 'Unit price', 'Extension'], ...lines],
  };
}

export function run(args: readonly string[]): void {
  const most = Number(args[0] ?? 5000);
  if (!(most >= 100)) throw new Error(`the number of lines must be at least 100; got ${args[0]}`);
  for (const count of [most / 4, most / 2, most].map(Math.round)) {
    const taken = takeoff(openings(count), defaultStandards());
    const table = quoteOf(taken);
    const times = [1, 2, 3, 4, 5].map(() => {
      const start = performance.now();
      const quote = readQuote(table, taken.standards);
      if (!quote.ok) throw new Error(quote.message);
      const read = performance.now();
      const check = checkQuote(quote.value, taken);
      summaryText(check);
      const end = performance.now();
      checkSheet(check, true);
      const sheet = performance.now() - end;
      return { read: read - start, check: end - read, sheet, differs: check.counts.differs };
    });
    const best = times.reduce((one, other) => (one.read + one.check < other.read + other.check ? one : other));
    const first = times[0]!;
    console.log(
      `${String(count).padStart(6)} lines, ${best.differs} differ: read ${best.read.toFixed(0)} ms, check ${best.check.toFixed(0)} ms, Check sheet ${best.sheet.toFixed(0)} ms` +
        ` (best of 5; first ${(first.read + first.check).toFixed(0)} ms)`,
    );
  }
}
