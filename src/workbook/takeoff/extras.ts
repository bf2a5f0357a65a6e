import { addUp } from '../../rounding';
import { EXTRA_KINDS, EXTRA_PRICE, notPricedYet, type Extra, type ExtraKind } from '../../extras';
import type { Table } from '../../schedule/opening';
import { cellName } from '../../standards';
import { allExtras, extrasTotal, type ExtraLine } from '../../takeoff/extras';
import type { Takeoff } from '../../takeoff/takeoff';
import { headingCell } from '../columnHeads';
import { columnFormat } from '../format';
import { quote } from '../../formulaText';
import type { Cell } from '../sheet';
import type { ColumnKey } from './columns';
import { bodyOf, cellsOfRow, columnRange, rowWith } from './places';
import { isTakeoffHeading, placesIn } from './read';

/*
 * Extras stand below the Takeoff's total, a row for each opening and kind: the row of an opening has no columns to spare, and what
 * is sold from a price list is none of the opening's own figures. Each follows its opening by number.
 */

/** In the first column, where an opening has its number: by it such a row is known. */
const ROW_LABEL = 'Extra';
const GONE = 'Its opening is not in the Takeoff.';
const MONEY = columnFormat('money', 'in');

/** How a row says whose extras it counts. */
export function ofNumber(no: number): string {
  return `of No. ${no}`;
}

/** Where the extras of a takeoff stand, for formulas on other sheets. */
export function extrasRanges(takeoff: Takeoff) {
  const first = bodyOf(takeoff.openings.length).last + 3;
  const last = first + Math.max(1, allExtras(takeoff).length) - 1;
  const range = (key: ColumnKey) => `Takeoff!${columnRange(key, { first, last })}`;
  return { kinds: range('head'), numbers: range('place'), quantities: range('quantity') };
}

/** The rows below the total, which stands in row `total` (from 1); none where no opening has extras. */
export function* extrasRows(takeoff: Takeoff, total: number): Generator<(Cell | null)[]> {
  const lines = allExtras(takeoff);
  if (lines.length === 0) return;
  yield rowWith({
    no: headingCell('Extras'),
    mark: headingCell('Mark'),
    quantity: headingCell('Quantity'),
    head: headingCell('Extra'),
    span: headingCell('Each'),
    rise: headingCell('In the list'),
    unitPrice: headingCell('Unit price'),
    price: headingCell('Price'),
    lookAt: headingCell('Look at'),
  });
  const first = total + 2;
  for (const [at, line] of lines.entries()) yield extraRow(line, first + at, takeoff.openings.length);
  const last = first + lines.length - 1;
  const price = (row: number) => cellsOfRow(row).price;
  const extras = extrasTotal(lines);
  const open = lines.filter((line) => line.price === null).length;
  const prices = `${price(first)}:${price(last)}`;
  const sum = (value: Cell['value'], formula: string): Cell => ({ value, formula, style: 'total', format: MONEY });
  yield rowWith({
    no: { value: 'Extras in all', style: 'total' },
    price: sum(extras ?? '', `IF(COUNT(${prices})=0,"",ROUND(SUM(${prices}),2))`),
    lookAt: {
      value: open === 0 ? '' : `Not priced: ${open}.`,
      formula: `IF(COUNT(${prices})=ROWS(${prices}),"","Not priced: "&(ROWS(${prices})-COUNT(${prices}))&".")`,
      style: 'attention',
    },
  });
  yield rowWith({
    no: { value: 'Openings and extras', style: 'total' },
    price: sum(addUp([takeoff.totals.price, extras ?? 0]), `ROUND(${price(total)}+N(${price(last + 1)}),2)`),
  });
}

function extraRow({ no, mark, kind, each, listed, quantity, unitPrice, price }: ExtraLine, row: number, count: number) {
  const at = cellsOfRow(row);
  const body = bodyOf(count);
  const [numbers, quantities, marks] = [
    columnRange('no', body),
    columnRange('quantity', body),
    columnRange('mark', body),
  ];
  const setting = cellName(EXTRA_PRICE[kind]);
  const openings = `SUMIF(${numbers},${no},${quantities})`;
  return rowWith({
    no: { value: ROW_LABEL, style: 'text', format: '@' },
    mark: { value: mark, formula: `IFERROR(INDEX(${marks},MATCH(${no},${numbers},0))&"","")`, style: 'figure' },
    place: { value: ofNumber(no), style: 'note', format: '@' },
    quantity: { value: quantity ?? '', formula: `IF(${openings}=0,"",${at.span}*${openings})`, style: 'figure' },
    head: { value: kind, style: 'fixed', format: '@' },
    span: { value: each, style: 'input', format: '0' },
    rise: { value: listed, style: 'note', format: '0' },
    unitPrice: {
      ...{ value: unitPrice ?? '', style: 'figure', format: MONEY },
      formula: `IF(ROUND(${setting},2)>0,ROUND(${setting},2),"")`,
    },
    price: {
      ...{ value: price ?? '', style: 'figure', format: MONEY },
      formula: `IF(OR(${at.quantity}="",${at.unitPrice}=""),"",ROUND(${at.quantity}*${at.unitPrice},2))`,
    },
    lookAt: {
      ...{ value: unitPrice === null ? notPricedYet(kind) : '', style: 'attention' },
      formula: `IF(COUNTIF(${numbers},${no})=0,${quote(GONE)},IF(${at.unitPrice}="",${quote(notPricedYet(kind))},""))`,
    },
  });
}

/** What the extras of a Takeoff sheet say as they stand. */
export interface ExtraRow extends Extra {
  readonly listed: number;
  readonly no: number;
  readonly mark: string;
  /** Null: not priced. */
  readonly price: number | null;
  readonly said: string;
  /** From 1. */
  readonly sheetRow: number;
}

/** The extras below the total of a Takeoff sheet, each with its opening's number. */
export function readExtras({ rows, firstRow }: Table): ExtraRow[] {
  const places = placesIn(rows.find(isTakeoffHeading) ?? []);
  return rows.flatMap((cells, at): ExtraRow[] => {
    const of = (key: ColumnKey) => cells[places.get(key)!];
    if (of('no') !== ROW_LABEL) return [];
    const no = Number(/^of No\. (\d+)$/.exec(String(of('place') ?? ''))?.[1]);
    const kind = EXTRA_KINDS.find((each): each is ExtraKind => each === of('head'));
    const [each, given] = [of('span'), of('rise')];
    if (!Number.isInteger(no) || kind === undefined || typeof each !== 'number') return [];
    const listed = typeof given === 'number' ? given : each;
    const price = of('price');
    return [
      {
        ...{ no, kind, each, listed, mark: String(of('mark') ?? ''), sheetRow: firstRow + at },
        price: typeof price === 'number' ? price : null,
        said: String(of('lookAt') ?? ''),
      },
    ];
  });
}
