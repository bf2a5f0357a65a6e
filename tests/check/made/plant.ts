import type { Random } from '../../random';
import type { Column, Layout } from './layouts';
import type { Line } from './line';
import { LENGTH_KINDS, LINE_KINDS } from './mistakes';
import { cents } from './money';

/** Unit price and amount from the length that the line has. */
export function price(line: Line, { columns }: Layout): void {
  const { length, quantity } = line;
  if (columns.includes('rate per foot')) {
    const each = Number((length / 12).toFixed(2));
    const all = Number(((quantity * length) / 12).toFixed(2));
    line.extension = cents((columns.includes('length of all') ? all : quantity * each) * line.rate);
    line.unitPrice = cents(line.extension / quantity);
    return;
  }
  line.unitPrice = cents((length / 12) * line.rate);
  if (columns.includes('list price')) line.unitPrice = cents(cents(line.unitPrice / 0.85) * 0.85);
  if (line.pair) line.unitPrice = cents(2 * line.unitPrice) / 2;
  line.extension = cents(quantity * line.unitPrice);
}

/** Makes a mistake in about every fifth line, and now and then one that runs over several. */
export function plantIn(lines: Line[], layout: Layout, random: Random): void {
  const { columns } = layout;
  const gives = (needed: Column) =>
    columns.includes(needed) ||
    (needed === 'length each' && (columns.includes('length of all') || (layout.says ?? []).includes('length')));
  const kinds = LINE_KINDS.filter(({ needs }) => needs.every(gives));
  const byFoot = columns.includes('rate per foot');
  for (const line of lines) {
    if (random.between(0, 1) > 0.2) continue;
    const isLength = random.pick([true, false]);
    const own = kinds.filter((one) => LENGTH_KINDS.includes(one) === isLength);
    const kind = random.pick(own.length > 0 ? own : kinds);
    const before = { ...line };
    if (!kind.make(line, random)) {
      Object.assign(line, before);
      continue;
    }
    if (
      byFoot &&
      ['extension', 'unit price'].some((one) => kind.needs.includes(one as Column)) &&
      kind.needs.includes('unit price')
    )
      Object.assign(line, before);
    else line.planted = kind;
    if (line.planted === null) continue;
    if (LENGTH_KINDS.includes(kind) ? byFoot || random.pick([true, false]) : !kind.needs.includes('extension')) {
      if (line.quantity !== before.quantity || LENGTH_KINDS.includes(kind)) price(line, layout);
    }
  }
  const alone = (line: Line | undefined) => line !== undefined && line.planted === null && line.of.length === 1;
  if (!gives('length each') || random.between(0, 1) > 0.3 || lines.length < 7) return;
  const from = random.whole(0, lines.length - 6);
  const some = lines.slice(from, from + 6);
  if (!some.every(alone)) return;
  const rights = some.map(({ length }) => length);
  const far = (one: number, other: number) => Math.abs(rights[one]! - rights[other]!) > 0.25;
  if (random.pick([true, false])) {
    if (!far(0, 1)) return;
    some.slice(0, 2).forEach((line, at) => {
      line.length = rights[1 - at]!;
      line.planted = { kind: 'rows swapped', named: /swapped/ };
    });
  } else {
    if (![0, 1, 2, 3].every((at) => far(at, at + 1))) return;
    some.slice(0, 4).forEach((line, at) => {
      line.length = rights[at + 1]!;
      line.planted = { kind: 'slipped by one row', named: /slipped/ };
    });
  }
  if (byFoot) for (const line of some) price(line, layout);
}
