import type { Casing } from '../../../src/check/casing';
import { knownLengths } from '../../../src/check/lengthMistakes';
import { knownQuantities } from '../../../src/check/quantityMistakes';
import { knownRadii } from '../../../src/check/radiusMistakes';
import { feetInches, shopInches } from '../../../src/feetInches';
import type { CellValue, Table } from '../../../src/schedule/opening';
import type { OpeningTakeoff, Takeoff } from '../../../src/takeoff/takeoff';
import type { Unit } from '../../../src/unit';
import type { Random } from '../../random';
import { valueOf } from '../../value';

/** One line of a made quote and what was done to it. */
export interface MadeLine {
  readonly mark: string;
  readonly species: string;
  readonly head: string;
  quantity: number;
  radius: number | null;
  length: number;
  unitPrice: number;
  extension: number;
  /** What was planted; null: the line is right, or off by less than the tolerance. */
  planted: Planted | null;
}

export interface Planted {
  readonly about: 'opening' | 'quantity' | 'radius' | 'length' | 'extension' | 'unit price';
  readonly mistake: string;
}

const cents = (amount: number) => Math.round(amount * 100) / 100;

/** A right line for a complete opening, priced within a third of the band. */
export function rightLine({ opening, inputs, own, cost }: OpeningTakeoff, random: Random): MadeLine {
  const unitPrice = cents(cost!.unitPrice * random.between(0.97, 1.03));
  const { quantity } = inputs!;
  const radius = own!.crown && !own!.haunch ? own!.crown.ring.inside : null;
  const { length } = own!.curve;
  return {
    mark: opening.mark,
    species: inputs!.species.toLowerCase(),
    head: inputs!.head,
    quantity,
    radius,
    length,
    unitPrice,
    extension: cents(quantity * unitPrice),
    planted: null,
  };
}

export function casingOf({ inputs, own }: OpeningTakeoff): Casing {
  const { face, reveal, ends } = inputs!;
  return { head: own!.curve.head, face, reveal, ends };
}

/** Makes one mistake in a right line. The opening's own figures say whether it is above the tolerance. */
export function plant(line: MadeLine, row: OpeningTakeoff, takeoff: Takeoff, random: Random): void {
  const kind = random.pick(['quantity', 'radius', 'length', 'length', 'length', 'extension', 'unit price'] as const);
  const { tolerance, priceBand } = takeoff.standards;
  if (kind === 'quantity') {
    const known = knownQuantities(row.inputs!.quantity);
    const { mistake, figure } = random.pick(known);
    line.quantity = figure;
    line.planted = { about: kind, mistake };
    line.extension = cents(figure * line.unitPrice);
  } else if (kind === 'radius' && line.radius !== null) {
    const { mistake, figure, slip } = random.pick(knownRadii(casingOf(row)));
    if (atTheEdge(figure, line.radius, tolerance)) return;
    if (Math.abs(figure - line.radius) > tolerance) line.planted = { about: kind, mistake: slip ? '' : mistake };
    line.radius = figure;
  } else if (kind === 'extension') {
    const off = random.pick([-1, 1]) * cents(random.between(0.05 * line.quantity + 0.02, line.extension / 2));
    line.extension = cents(line.extension + off);
    line.planted = { about: kind, mistake: '' };
  } else if (kind === 'unit price') {
    const off = random.between(priceBand + 0.001, 0.8) * random.pick([-1, 1]);
    line.unitPrice = cents(row.cost!.unitPrice * (1 + off));
    line.extension = cents(line.quantity * line.unitPrice);
    if (Math.abs(line.unitPrice / row.cost!.unitPrice - 1) > priceBand + 1e-6)
      line.planted = { about: kind, mistake: '' };
  } else {
    const { mistake, figure, slip } = random.pick(knownLengths(casingOf(row)));
    if (atTheEdge(figure, line.length, tolerance)) return;
    if (Math.abs(figure - line.length) > tolerance) line.planted = { about: 'length', mistake: slip ? '' : mistake };
    line.length = figure;
  }
}

/** Written to a sixty-fourth, a figure at the very edge of the tolerance may fall on either side. */
function atTheEdge(figure: number, right: number, tolerance: number): boolean {
  return Math.abs(Math.abs(figure - right) - tolerance) < 1 / 64;
}

/** The lines as a table, each figure written in one of the ways that quotes have. */
export function tableOf(lines: readonly MadeLine[], random: Random, unit: Unit = 'in'): Table {
  const rows: CellValue[][] = [
    ['Quotation'],
    [],
    random.pick([
      ['Mark', 'Description', 'Qty', 'Radius', 'Length', 'Unit price', 'Extension'],
      ['Item', 'Desc.', 'Quantity', 'Rad.', 'Arc length', 'Price each', 'Ext.'],
      ['Tag', 'Particulars', 'Pcs', 'R', 'Length each', 'Unit cost ($)', 'Line total'],
    ]),
    ...lines.map((line) => [
      ...named(line, random),
      random.pick([line.quantity, `${line.quantity} ea`, String(line.quantity)]),
      line.radius === null ? null : written(line.radius, random, unit),
      written(line.length, random, unit),
      money(line.unitPrice, random),
      money(line.extension, random),
    ]),
  ];
  return { name: 'quote.csv', firstRow: 1, rows };
}

/** The same lines priced by the foot: a length in feet of one piece or of all, and what a foot costs. Right lines only. */
export function tableByFoot(lines: readonly MadeLine[], random: Random): Table {
  const heading = random.pick(['$/LF', 'Price per LF', 'Rate/ft', 'Price per foot']);
  const rows = lines.map((line): CellValue[] => {
    const pieces = random.pick([1, line.quantity]);
    const feet = Number(((pieces * line.length) / 12).toFixed(2));
    const rate = cents(line.unitPrice / (line.length / 12));
    // Some figure with the feet as they are shown, some with all their decimals.
    const exact = random.pick([feet, (pieces * line.length) / 12]);
    return [
      ...named(line, random),
      line.quantity,
      feet,
      money(rate, random),
      cents((line.quantity / pieces) * exact * rate),
    ];
  });
  return { name: 'quote.csv', firstRow: 1, rows: [['Mark', 'Description', 'Qty', 'LF', heading, 'Amount'], ...rows] };
}

/** The same table with one more column, of figures, under a heading that means nothing. */
export function withUnknown({ rows, ...table }: Table, random: Random): Table {
  const heading = random.pick(['Zorp', 'Ref. 2', 'Factor', 'Q-val', '']);
  const at = rows.findIndex((row) => row.length > 2);
  const more = (row: readonly CellValue[], place: number): CellValue =>
    place < at || row.length < 3 ? null : place === at ? heading : random.pick([43.375, '68 1/8', '12.5', 7]);
  return { ...table, rows: rows.map((row, place) => [...row, more(row, place)]) };
}

/** Charges and sums below the lines, all right but for `off`, which is added to the subtotal and what follows from it. */
export function withSums({ rows, ...table }: Table, lines: readonly MadeLine[], off: number): Table {
  const [, , headings] = rows;
  const row = (text: string, amount: number): CellValue[] => {
    return headings!.map((_heading, at) => (at === 1 ? text : at === 6 ? amount : null));
  };
  const subtotal = cents(lines.reduce((sum, { extension }) => sum + extension, 0) + off);
  const discount = -cents(subtotal * 0.05);
  const tax = cents((subtotal + discount) * 0.07);
  const sums: [string, number][] = [
    ['Subtotal', subtotal],
    ['Discount 5%', discount],
    ['Sales tax 7%', tax],
    ['Freight', 145],
    ['Total', cents(subtotal + discount + tax + 145)],
  ];
  return { ...table, rows: [...rows, ...sums.map(([text, amount]) => row(text, amount))] };
}

function named({ mark, species, head }: MadeLine, random: Random): [CellValue, CellValue] {
  const spaced = mark.replace(/^([A-Z])(\d)/, '$1 $2');
  return random.pick<[CellValue, CellValue]>([
    [mark, `Casing, ${species}`],
    [mark.toLowerCase(), `${head} casing`],
    [spaced.replace(' ', '-'), 'arch head'],
    ['', `Arch casing ${mark}, ${species}`],
    ['', `curved casing for opening ${spaced} (radius per takeoff)`],
  ]);
}

function written(inches: number, random: Random, unit: Unit): CellValue {
  if (unit === 'mm') return random.pick([inches, `${inches.toFixed(2)} mm`, String(Number(inches.toFixed(3)))]);
  return random.pick([
    () => inches,
    () => String(Number(inches.toFixed(4))),
    () => valueOf(shopInches(inches, 64)),
    () => valueOf(feetInches(inches, 64)),
    () => `${(inches * 25.4).toFixed(2)} mm`,
  ])();
}

function money(amount: number, random: Random): CellValue {
  const text = amount.toFixed(2);
  return random.pick<CellValue>([amount, text, `$${text.replace(/\B(?=(\d{3})+\.)/g, ',')}`, `$ ${text}`]);
}
