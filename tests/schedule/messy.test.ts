import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSchedule, type Schedule } from '../../src/schedule';
import type { CellValue } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { random, type Random } from '../random';
import { valueOf } from '../value';

/** A schedule as builders' offices write them, and what it says. */
interface Messy {
  readonly rows: CellValue[][];
  readonly openings: readonly Known[];
}
interface Known {
  readonly mark: string;
  readonly quantity: number;
  readonly span: number;
  readonly rise: number;
}

type UnitWord = 'in' | 'mm' | 'ft' | 'ft-in';

/** What a rough opening is wider by, and written metric lengths are rounded to, in inches. */
const ALLOWANCE = defaultStandards().roughWidth;
const TENTH_MM = 0.05 / 25.4;

const sixteenths = (from: Random, least: number, most: number) => from.whole(least * 16, most * 16) / 16;

function onTape(inches: number, from: Random): string {
  const whole = Math.floor(inches);
  const over = Math.round((inches - whole) * 16);
  return over === 0 ? String(whole) : `${whole}${from.pick([' ', '-'])}${over}/16`;
}

function feetAnd(inches: number, mark: string, from: Random): string {
  return `${Math.floor(inches / 12)}${mark}-${onTape(inches % 12, from)}`;
}

/** A length in one of the ways that are written in a column of the unit; `named`: its heading says so, or a note does. */
function written(inches: number, unit: UnitWord, named: boolean, from: Random): CellValue {
  const metric = (inches * 25.4).toFixed(1);
  const marked = [
    `${onTape(inches, from)}"`,
    `${feetAnd(inches, "'", from)}"`,
    `${feetAnd(inches, '’', from)}”`,
    // Beside bare figures in no unit that anyone gives it would be asked about.
    ...(named ? [`${metric} mm`] : []),
  ];
  const bare: Record<UnitWord, readonly CellValue[]> = {
    in: [inches, String(inches), onTape(inches, from)],
    mm: [Number(metric), metric, metric.replace('.', ',')],
    ft: [inches / 12],
    'ft-in': [feetAnd(inches, '', from)],
  };
  return from.pick([...bare[unit], ...bare[unit], from.pick(marked)]);
}

/** Headings in one, two or three rows, the unit in them, in a row below, in a note or in the group above. */
function messy(from: Random): Messy {
  const unit = from.pick(['in', 'mm', 'ft', 'ft-in'] as const);
  const unitIn = from.pick(unit === 'in' ? ['nothing', 'heading', 'row'] : ['heading', 'row', 'note', 'group']);
  const widths = from.pick(['own', 'rough', 'rough group', 'rough in three rows', 'rough note', 'size']);
  const rough = widths.startsWith('rough');
  const glass = from.pick([true, false]);
  const named = (heading: string) => (unitIn === 'heading' ? `${heading} (${unit})` : heading);
  const over = (group: string) => (unitIn === 'group' ? `${group} (${unit})` : group);
  const groups = {
    own: 'Dimensions',
    'rough group': from.pick(['Rough opening', 'R.O.']),
    size: 'Dimensions',
  } as const;
  const group = over((groups as Record<string, string>)[widths] ?? (unitIn === 'group' ? 'Dimensions' : ''));
  const [width, height] = widths === 'rough' ? ['R.O. Width', 'R.O. Ht'] : ['Width', 'Height'];

  const columns: [group: string, heading: string][] = [
    ['', 'Mark'],
    ['', 'Qty'],
    ['', 'Head'],
    ...(widths === 'size'
      ? [[group, named('Size')] as [string, string]]
      : [[group, named(width)] as [string, string], ['', named(height)] as [string, string]]),
    [unitIn === 'group' ? over('Arch') : '', named('Rise')],
    ...(glass
      ? [[from.pick(['Glass', 'Sash']), named('Width')] as [string, string], ['', named('Height')] as [string, string]]
      : []),
    ['', 'Remarks'],
  ];
  const isNamed = unitIn !== 'nothing';
  const headings = columns.map(([, heading]) => heading);
  const rows: CellValue[][] = [];
  if (from.pick([true, false]))
    rows.push([from.pick(['Lake house', 'Job 1042', 'Rev. 2']), '', '', from.pick(['', 'Issued for bid', 'Sheet A5'])]);
  if (unitIn === 'note') rows.push([`All dimensions in ${unit === 'ft-in' ? 'feet and inches' : unit}`]);
  if (widths === 'rough note') rows.push(['All sizes are rough openings']);
  if (from.pick([true, false])) rows.push([]);
  if (widths === 'rough in three rows') {
    const wide = (word: string, else_: string[]) =>
      columns.map((_, at) => (at === 3 || at === 4 ? word : (else_[at] ?? '')));
    rows.push(
      wide(over('Rough'), []),
      wide(
        'Opening',
        columns.map(([above], at) => (at > 4 ? above : '')),
      ),
      headings,
    );
  } else {
    if (columns.some(([above]) => above !== '')) rows.push(columns.map(([above]) => above));
    rows.push(headings);
  }
  if (unitIn === 'row') rows.push(headings.map((heading) => (/Width|Ht|Height|Size|Rise/.test(heading) ? unit : '')));

  const openings = Array.from({ length: from.whole(1, 5) }, (_, at): Known => {
    const span = sixteenths(from, 24, 90);
    return {
      mark: `W${at + 1}`,
      quantity: from.whole(1, 6),
      span,
      rise: Math.max(2, Math.round(span * from.between(1.6, 6)) / 16),
    };
  });
  for (const { mark, quantity, span, rise } of openings) {
    const high = sixteenths(from, 60, 90);
    const wide = span + (rough ? ALLOWANCE : 0);
    const side = (inches: number) => (unit === 'mm' ? (inches * 25.4).toFixed(1) : `${feetAnd(inches, "'", from)}"`);
    const sized =
      widths === 'size'
        ? [`${side(wide)} x ${side(high)}`]
        : [written(wide, unit, isNamed, from), written(high, unit, isNamed, from)];
    const ofGlass = glass ? [written(span - 3, unit, isNamed, from), written(high - 3, unit, isNamed, from)] : [];
    rows.push([
      mark,
      from.pick([quantity, `${quantity} ea`, `(${quantity})`]),
      'segmental',
      ...sized,
      written(rise, unit, isNamed, from),
      ...ofGlass,
    ]);
    if (from.between(0, 1) < 0.1) rows.push([...headings.slice(1).map(() => ''), 'paint grade']);
    if (from.between(0, 1) < 0.1) rows.push([...headings]);
  }
  if (from.pick([true, false])) rows.push(['Total', openings.reduce((sum, { quantity }) => sum + quantity, 0)]);
  return { rows, openings };
}

function read(rows: CellValue[][]): Schedule {
  return valueOf(readSchedule({ name: 'messy', firstRow: 1, rows }, defaultStandards()));
}

describe('a messy schedule', () => {
  it('is read as it was meant, each opening with its own width, rise and count, and no row is lost', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { rows, openings } = messy(random(seed));
        const schedule = read(rows);
        const numbers = [...schedule.openings, ...schedule.passedOver].map(({ row }) => row).sort((a, b) => a - b);
        expect(numbers).toEqual(rows.map((_, at) => at + 1));
        expect(schedule.openings.map(({ mark, quantity, problems }) => [mark, quantity, problems])).toEqual(
          openings.map(({ mark, quantity }) => [mark, quantity, []]),
        );
        schedule.openings.forEach(({ span, rise }, at) => {
          expect(Math.abs(span! - openings[at]!.span)).toBeLessThanOrEqual(TENTH_MM + 1e-9);
          expect(Math.abs(rise! - openings[at]!.rise)).toBeLessThanOrEqual(TENTH_MM + 1e-9);
        });
      }),
      { numRuns: 600 },
    );
  });
});
